using System.Text.Json;

namespace Warmup.Cli.Tests;

/// <summary>
/// <c>warmup scales</c>: its searches, one scale shown, tunings written and read. Expectations: derived scales and their parents (common
/// practice), just ratios (published), worked out by hand.
/// </summary>
public sealed class ScalesCommandTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("Mohanam", "Hindolam", "--contains", "S R2 G3 P D2")]
    [InlineData("Major pentatonic", "Hindolam", "--equals", "Mohanam")]
    [InlineData("Mohanam", "Bilahari", "--equals", "1 2 3 5 6")]
    [InlineData("Hamsadhwani", "Mohanam", "--near", "mohanam")]
    [InlineData("Hindolam", "Saraswati", "--notes", "5")]
    [InlineData("Bilahari", "Mohanam", "--notes", "5-7")]
    [InlineData("Malahari", "Mohanam", "--parent", "15")]
    [InlineData("Sriranjani", "Mohanam", "--without-p")]
    [InlineData("Bilahari", "Mohanam", "--kind", "audava-sampurna")]
    [InlineData("Suddha Dhanyasi", "Suddha Saveri", "--find", "suddha", "--contains", "G2")]
    [InlineData("Hamsadhwani", "Mohanam", "--holding", "S R G P N")]
    [InlineData("Hamsadhwani", "Dhirashankarabharanam", "--holding", "S R2 G P N", "--notes", "5")]
    public void Scales_are_searched(string found, string other, params string[] options)
    {
        var (code, output, error) = Shell.Run(["scales", "--json", .. options]);
        Assert.Equal((0, string.Empty), (code, error));
        using var json = JsonDocument.Parse(output);
        var names = json.RootElement.GetProperty("scales").EnumerateArray().Select(r => r.GetProperty("name").GetString()).ToList();
        Assert.Contains(found, names);
        Assert.DoesNotContain(other, names);
    }

    [Theory]
    [InlineData("'X9'", "--contains", "S X9")]
    [InlineData("Mohanam", "--equals", "mohanim")]
    [InlineData("--holding, column 5: 'X'", "--holding", "S R X")]
    [InlineData("--notes must be", "--notes", "five")]
    [InlineData("--notes must be", "--notes", "5-6-7")]
    [InlineData("between 2 and 12 such as 5, or two such as 5-7, not '1'", "--notes", "1")]
    [InlineData("between 1 and 72, not '73'", "--parent", "73")]
    [InlineData("between 1 and 72, not '0'", "--parent", "0")]
    [InlineData("audava", "--kind", "pentatonic")]
    [InlineData("Mohanam", "--show", "mohanim")]
    [InlineData("--tonic", "--show", "mohanam", "--tonic", "H3")]
    [InlineData("--tuning", "--show", "mohanam", "--tuning", "meantone")]
    [InlineData("nowhere.scl", "--tuning", "nowhere.scl")]
    [InlineData(".scl", "--out", "tuning.txt")]
    public void Wrong_input_is_one_line_with_the_fix(string expected, params string[] options)
    {
        var (code, _, error) = Shell.Run(["scales", .. options]);
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public void One_scale_is_shown_with_its_notes_tuned()
    {
        var (code, output, error) = Shell.Run("scales", "--show", "mohanam", "--tonic", "220Hz", "--tuning", "just");
        Assert.Equal((0, string.Empty), (code, error));
        string[] expected = ["parent 28", "audava", "two public lists agree", "220 Hz: A3", "P_ S S S_", "275.00", "5/4", "386.314", "C#4", "from G3: Hindolam", "not the raga"];
        Assert.All(expected, part => Assert.Contains(part, output, StringComparison.Ordinal));
    }

    [Fact]
    public void One_scale_is_shown_as_JSON()
    {
        var (code, output, _) = Shell.Run("scales", "--show", "Bhairavi", "--tonic", "5.5", "--tuning", "just: 27/16", "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(output);
        Assert.Equal("D2", json.RootElement.GetProperty("foreignNotes")[0].GetString());
        var notes = json.RootElement.GetProperty("notes").EnumerateArray().ToList();
        Assert.Equal(["S", "R2", "G2", "M1", "P", "D1", "D2", "N2", "S'"], notes.Select(n => n.GetProperty("svara").GetString()));
        Assert.Equal("27/16", notes[6].GetProperty("ratio").GetString());
        Assert.Equal(0, notes[4].GetProperty("beatHz").GetDouble());
    }

    [Fact]
    public void A_scale_written_out_is_shown_too()
    {
        var (code, output, _) = Shell.Run("scales", "--show", "semitones: 0 3 5 8 10");
        Assert.Equal(0, code);
        Assert.Contains("S G2 M1 D1 N2 S'", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tuning_is_written_kept_and_read_back()
    {
        var path = _shell.At("own.scl");
        Assert.Equal(0, Shell.Run("scales", "--tuning", "just: 10/9", "--out", path).Code);
        Assert.Contains(" 10/9\n", File.ReadAllText(path), StringComparison.Ordinal);
        var (code, _, error) = Shell.Run("scales", "--tuning", "just", "--out", path);
        Assert.Equal(2, code);
        Assert.Contains("--force", error, StringComparison.Ordinal);

        var (_, output, _) = Shell.Run("scales", "--show", "mohanam", "--tuning", path, "--json");
        using var json = JsonDocument.Parse(output);
        Assert.Equal("10/9", json.RootElement.GetProperty("notes")[1].GetProperty("ratio").GetString());
        Assert.Equal(0, Shell.Run(_shell.Drill(("--tuning", path))).Code);
    }

    [Theory]
    [InlineData("d\n1\n-3/2\n", "line 3, column 1")]
    [InlineData("five\n5\n240.\n480.\n720.\n960.\n2/1\n", "12")]
    public void A_broken_tuning_names_the_file_and_the_place(string content, string expected)
    {
        File.WriteAllText(_shell.At("broken.scl"), content);
        var (code, _, error) = Shell.Run(_shell.Drill(("--tuning", _shell.At("broken.scl"))));
        Assert.Equal(2, code);
        Assert.Contains("broken.scl", error, StringComparison.Ordinal);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drill_is_sung_in_the_syllables_asked_for()
    {
        Assert.Equal(0, Shell.Run(_shell.Drill(("--out", _shell.At("a.musicxml")), ("--syllables", "tamil"))).Code);
        Assert.Contains("<text>ரி</text>", File.ReadAllText(_shell.At("a.musicxml")), StringComparison.Ordinal);
        var (code, _, error) = Shell.Run(_shell.Drill(("--syllables", "klingon")));
        Assert.Equal(2, code);
        Assert.Contains("solfa", error, StringComparison.Ordinal);
    }
}
