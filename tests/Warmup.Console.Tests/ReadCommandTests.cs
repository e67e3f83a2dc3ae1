using System.Text.Json;

namespace Warmup.Cli.Tests;

public sealed class ReadCommandTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void A_drill_comes_back_with_its_exercise_and_goes_to_another_scale()
    {
        Assert.Equal(0, Shell.Run(_shell.Drill(("--pattern", "alankara-2"), ("--out", _shell.At("a.musicxml")))).Code);
        var (code, output, error) = Shell.Run("read", "--file", _shell.At("a.musicxml"), "--explain", "--to-scale", "hamsadhwani", "--out", _shell.At("b.musicxml"));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("(alankara-2)", output, StringComparison.Ordinal);
        Assert.Contains("Hamsadhwani, S = G3", Shell.Run("read", "--file", _shell.At("b.musicxml")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Typed_lines_are_checked_against_singers()
    {
        Assert.Equal(0, Shell.Run("demo", "--out", _shell.At("demo")).Code);
        File.WriteAllText(_shell.At("a.txt"), "Scale: mohanam\nTonic: C6\nS R G P D S'\n");
        var (code, output, _) = Shell.Run("read", "--file", _shell.At("a.txt"), "--singers", _shell.At("demo/singers.json"));
        Assert.Equal(1, code);
        Assert.Contains("--to-tonic", output, StringComparison.Ordinal);
    }

    /// <summary>Each printed remedy is followed as it is printed: what it was printed for is gone.</summary>
    [Theory]
    [InlineData("Scale: mohanam\nTonic: C6\nS R G P D S'\n")]
    [InlineData("Scale: 15\nTonic: G3\nTempo: 30\nS R G M P D N S' S' N D P M G R S\nS , , , R , , , G , , , M , , , P , , , D , , ,\nS R G M\n")]
    [InlineData("Scale: 15\nTonic: G3\nTempo: 300\nSpeed: 3\nS R G M P D N S'\nS' N D P M G R S\n")]
    public void What_would_help_can_be_typed_as_it_is_printed(string text)
    {
        Assert.Equal(0, Shell.Run("demo", "--out", _shell.At("demo")).Code);
        File.WriteAllText(_shell.At("a.txt"), text);
        string[] command = ["read", "--file", _shell.At("a.txt"), "--singers", _shell.At("demo/singers.json"), "--json"];
        using var before = JsonDocument.Parse(Shell.Run(command).Out);
        var followed = new HashSet<string>();
        foreach (var finding in Findings(before).ToList())
        {
            var remedies = finding.TryGetProperty("withoutRemedy", out var without) ? without.GetProperty("alone") : finding.GetProperty("remedies");
            foreach (var remedy in remedies.EnumerateArray().Take(1))
            {
                string[] options = [.. remedy.GetProperty("options").EnumerateArray().Select(o => o.GetString()!)];
                Assert.NotEmpty(options);
                if (!followed.Add(string.Join(' ', options)))
                {
                    continue;
                }

                using var after = JsonDocument.Parse(Shell.Run([.. command, .. options]).Out);
                Assert.DoesNotContain(Findings(after), f => Key(f) == Key(finding));
            }
        }

        Assert.NotEmpty(followed);

        static IEnumerable<JsonElement> Findings(JsonDocument report) => report.RootElement.GetProperty("sections")[0].GetProperty("findings").EnumerateArray();
        static string Key(JsonElement finding) => $"{finding.GetProperty("singer")} {finding.GetProperty("code")} {finding.GetProperty("line")}";
    }

    [Fact]
    public void A_section_a_tala_and_syllables_are_chosen()
    {
        Assert.Equal(0, Shell.Run(_shell.Drill(("--pattern", "alankara-2"), ("--out", _shell.At("a.mid")))).Code);
        var (code, _, error) = Shell.Run("read", "--file", _shell.At("a.mid"), "--section", "1", "--tala", "rupaka", "--speed", "2", "--syllables", "solfa", "--lines", "2", "--out", _shell.At("b.musicxml"));
        Assert.Equal((0, string.Empty), (code, error));
        var output = Shell.Run("read", "--file", _shell.At("b.musicxml")).Out;
        Assert.Contains("Rupaka", output, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("a letter is 1/2 akshara", output, StringComparison.Ordinal);
        Assert.Contains("--section must be a whole number between 1 and 1", Shell.Run("read", "--file", _shell.At("a.mid"), "--section", "2").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_report_as_JSON_has_lines_rules_and_remarks()
    {
        File.WriteAllText(_shell.At("a.txt"), "S R G / R G M\nand so on\n");
        using var json = JsonDocument.Parse(Shell.Run("read", "--file", _shell.At("a.txt"), "--explain", "--json").Out);
        var root = json.RootElement;
        Assert.Equal("urn:warmup:read:1", root.GetProperty("schema").GetString());
        Assert.Equal(["S R G", "R G M"], root.GetProperty("sections")[0].GetProperty("lines").EnumerateArray().Select(l => l.GetString()!));
        Assert.Equal("line 2", root.GetProperty("remarks")[0].GetProperty("place").GetString());
    }

    [Fact]
    public void A_plan_takes_the_drill_of_a_file()
    {
        Assert.Equal(0, Shell.Run("demo", "--out", _shell.At("demo")).Code);
        File.WriteAllText(_shell.At("own.txt"), "From the mail\nS R G R / R G P G / G P D P\n");
        var (code, _, error) = Shell.Run(
            "plan", "--singers", _shell.At("demo/singers.json"), "--scales", "mohanam", "--start", "2026-12-01", "--days", "3", "--minutes", "10", "--add", _shell.At("own.txt"), "--out", _shell.At("plan"));
        Assert.True(code is 0 or 1 && error.Length == 0, error);
        Assert.Contains("From the mail", File.ReadAllText(_shell.At("plan/plan.json")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("S R x G", "a.txt, line 1, column 5")]
    [InlineData("<score-partwise>", "a.txt, line 1, column")]
    [InlineData("MThd", "a.txt, byte 4")]
    public void A_broken_file_is_refused_with_its_place(string text, string words)
    {
        File.WriteAllText(_shell.At("a.txt"), text);
        var (code, _, error) = Shell.Run("read", "--file", _shell.At("a.txt"));
        Assert.Equal(2, code);
        Assert.Contains(words, error, StringComparison.Ordinal);
    }
}
