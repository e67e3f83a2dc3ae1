namespace Warmup.Cli.Tests;

/// <summary>The options of a semitone climb and of eduppu. Source: common practice in choirs and of the tala, and the sheets' own words.</summary>
public sealed class ClimbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private (int Code, string Text, string Error) Sheet(params string[] options)
    {
        var path = Path.Combine(_folder, "a.txt");
        var (code, _, error) = Shell.Run(["drill", "--scale", "major", "--tonic", "C4", "--tempo", "100", "--out", path, "--force", .. options]);
        return (code, code == ExitCode.Fine ? File.ReadAllText(path) : string.Empty, error);
    }

    [Fact]
    public void The_sheet_names_the_tonic_of_each_round_and_each_cue()
    {
        var (code, text, _) = Sheet("--pattern", "run.notes(1 5).there-and-back", "--climb", "2", "--title", "Five notes");
        Assert.Equal(ExitCode.Fine, code);
        string[] expected = ["on C4", "cue on Db4", "on Db4", "cue on D4", "on D4", "cue on Db4", "on Db4", "cue on C4", "on C4"];
        var found = text.Split('\n').Select(l => l.Trim()).Where(l => l.StartsWith("Five notes on ", StringComparison.Ordinal) || l.StartsWith("cue on ", StringComparison.Ordinal));
        Assert.Equal(expected, found.Select(l => l.Replace("Five notes ", string.Empty, StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("note", 5)]
    [InlineData("chord", 5)]
    [InlineData("none", 3)]
    public void A_note_a_chord_or_nothing_is_heard_between(string cue, int sections)
    {
        var (code, text, _) = Sheet("--pattern", "ladder.take(1)", "--climb", "1", "--cue", cue);
        Assert.Equal((ExitCode.Fine, sections), (code, text.Split('\n').Count(l => l.StartsWith("Scale ", StringComparison.Ordinal))));
    }

    [Theory]
    [InlineData("--climb must be a whole number between 1 and 24", "--climb", "0")]
    [InlineData("--climb must be a whole number between 1 and 24", "--climb", "five")]
    [InlineData("--cue must be note or chord or none", "--climb", "2", "--cue", "organ")]
    [InlineData("add --climb 5", "--cue", "chord")]
    [InlineData("leave --drone out", "--climb", "2", "--drone", "sruti-box")]
    [InlineData("C7, the highest tonic", "--climb", "24", "--tonic", "C6")]
    public void What_cannot_climb_is_refused_with_the_fix(string message, params string[] options)
    {
        var (code, _, error) = Shell.Run(["drill", "--scale", "major", "--pattern", "ladder", "--tempo", "60", "--out", Path.Combine(_folder, "a.txt"), .. options.Contains("--tonic") ? [] : (string[])["--tonic", "C4"], .. options]);
        Assert.NotEqual(ExitCode.Fine, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_begins_after_the_beat()
    {
        var (code, text, _) = Sheet("--pattern", "[S R G M]", "--eduppu", "1/2", "--delivery", "line-by-line");
        Assert.Equal(ExitCode.Fine, code);
        Assert.Contains("Eduppu  1/2 akshara after the beat", text, StringComparison.Ordinal);
        Assert.Contains("1/4 or 1/2 or 3/4 or 1", Sheet("--pattern", "ladder", "--eduppu", "1/3").Error, StringComparison.Ordinal);
        Assert.Contains("--tala", Sheet("--pattern", "ladder", "--eduppu", "1", "--tala", "free").Error, StringComparison.Ordinal);
    }

    private const string Class = """
        { "schema": "urn:warmup:singers:1", "singers": [
          { "alias": "Wren", "low": "A3", "high": "C5", "sustainedSeconds": 30, "experience": "beginner" } ] }
        """;

    private (int Code, string Output) Check(params string[] options)
    {
        var singers = Path.Combine(_folder, "class.json");
        File.WriteAllText(singers, Class);
        var (code, output, _) = Shell.Run(
            ["check", "--scale", "major", "--pattern", "[S R G M P M G R S]", "--tala", "4/4", "--tempo", "120", "--delivery", "line-by-line", "--singers", singers, .. options.Contains("--tonic") ? [] : (string[])["--tonic", "C4"], .. options]);
        return (code, output);
    }

    [Fact]
    public void A_check_holds_every_round_against_the_range()
    {
        // From C4 the fifth note is G4; C5, the highest comfortable note, is five semitones above it.
        Assert.Equal(ExitCode.Fine, Check("--climb", "5").Code);
        var (code, output) = Check("--climb", "6");
        Assert.Equal(ExitCode.DoesNotFit, code);
        Assert.Contains("Wren, line 1 on Gb4: P (Db5) lies 1.0 semitones above the highest comfortable note C5", output, StringComparison.Ordinal);
        Assert.Contains("climb 5 semitones (--climb 5)", output, StringComparison.Ordinal);
        Assert.Contains("begin on B3 (--tonic B3)", output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Fine, Check("--climb", "6", "--tonic", "B3").Code);
    }

    [Fact]
    public void A_check_as_json_has_every_rounds_findings()
    {
        var (code, output) = Check("--climb", "7", "--json");
        Assert.Equal(ExitCode.DoesNotFit, code);
        using var report = System.Text.Json.JsonDocument.Parse(output);
        var findings = report.RootElement.GetProperty("singers")[0].GetProperty("findings");

        // Beyond C5 lie the rounds on Gb4, G4 and Gb4 again, the cues left out: sections 13, 15 and 17.
        Assert.Equal([13, 15, 17], findings.EnumerateArray().Select(f => f.GetProperty("section").GetInt32()));
    }
}
