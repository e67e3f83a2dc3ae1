using System.Text.Json;
using Warmup.Samples;

namespace Warmup.Cli.Tests;

/// <summary>Source: the measurements in the class's file, and the documented 90 days.</summary>
public sealed class SingersHistoryTests : IDisposable
{
    private const string Table = """
        alias,date,low,high,sustainedSeconds,fullHigh,voice
        Robin,2026-03-01,C4,A4,8,,child 8-9
        Robin,2026-06-02,B3,C5,9.5,D5,
        Wren,,A3,E5,14,,
        """;

    private readonly Shell _shell = new();

    public SingersHistoryTests() => File.WriteAllText(_shell.At("class.csv"), Table);

    public void Dispose() => _shell.Dispose();

    private (int Code, string Out, string Error) Run(params string[] options) => Shell.Run(["singers", "--singers", _shell.At("class.csv"), .. options]);

    [Fact]
    public void Each_measurement_has_a_line_with_the_change()
    {
        var (code, output, _) = Run("--history");
        Assert.Equal(0, code);
        var lines = output.Split('\n').Where(l => l.Contains("2026-0", StringComparison.Ordinal) || l.Contains("no date", StringComparison.Ordinal)).ToList();
        Assert.Equal(3, lines.Count);

        // From A3 to E5 there are 19 semitones inclusive of both ends, C4 to A4 has 10, B3 to C5 14, and C#5 and D5 are two more.
        Assert.Contains("| ...==========", lines[0], StringComparison.Ordinal);
        Assert.Contains("| ..==============-- ", lines[1], StringComparison.Ordinal);
        Assert.Contains("low -1, high +3, tone +1.5", lines[1], StringComparison.Ordinal);
        Assert.Contains("| ==================== ", lines[2], StringComparison.Ordinal);
        Assert.DoesNotContain("measure Robin anew", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-08-30", false)] // 89 days after 2026-06-02
    [InlineData("2026-08-31", true)]
    public void A_child_is_to_be_measured_anew_after_90_days_counted_to_the_day_that_is_given(string on, bool due)
    {
        foreach (var options in (string[][])[["--on", on], ["--history", "--on", on]])
        {
            var (_, output, _) = Run(options);
            Assert.Equal(due, output.Contains("measure Robin anew", StringComparison.Ordinal));
            Assert.DoesNotContain("measure Wren anew", output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_report_as_JSON_says_the_same()
    {
        var (code, output, _) = Run("--history", "--on", "2026-08-31", "--json");
        Assert.Equal(0, code);
        using var report = JsonDocument.Parse(output);
        var singers = report.RootElement.GetProperty("singers");
        Assert.Equal(
            ["2026-03-01 C4 A4 8", "2026-06-02 B3 C5 9.5"],
            singers[0].GetProperty("measurements").EnumerateArray().Select(m => $"{m.GetProperty("date")} {m.GetProperty("low")} {m.GetProperty("high")} {m.GetProperty("sustainedSeconds")}"));
        Assert.True(singers[0].GetProperty("measureAnew").GetBoolean());
        Assert.False(singers[1].GetProperty("measureAnew").GetBoolean());
        Assert.False(singers[1].GetProperty("measurements")[0].TryGetProperty("date", out _));
    }

    [Fact]
    public void The_class_as_JSON_has_its_limits_and_the_files_that_were_written()
    {
        var (code, output, error) = Run("--on", "2026-08-31", "--voices", "--out", _shell.At("class.json"), "--json");
        Assert.Equal((0, string.Empty), (code, error));
        using var report = JsonDocument.Parse(output);
        var root = report.RootElement;
        Assert.Equal(("urn:warmup:class:1", "2026-08-31"), (root.GetProperty("schema").GetString(), root.GetProperty("on").GetString()));

        // A beginner's longest phrase is 0.4 of the tone: 3.8 s of 9.5 s and 5.6 s of 14 s.
        Assert.Equal(
            ["Robin B3 C5 9.5 3.8 True", "Wren A3 E5 14 5.6 False"],
            root.GetProperty("singers").EnumerateArray().Select(s =>
                $"{s.GetProperty("alias")} {s.GetProperty("low")} {s.GetProperty("high")} {s.GetProperty("sustainedSeconds")} {s.GetProperty("longestPhraseSeconds")} {s.GetProperty("measureAnew").GetBoolean()}"));
        Assert.Equal(("D5", false), (root.GetProperty("singers")[0].GetProperty("fullHigh").GetString(), root.GetProperty("singers")[1].TryGetProperty("fullHigh", out _)));
        Assert.Equal(VoiceTypes.All.Select(v => v.Name), root.GetProperty("voiceTypes").EnumerateArray().Select(v => v.GetProperty("name").GetString()));
        Assert.Equal(Cautions.All.Select(c => c.Source), root.GetProperty("cautions").EnumerateArray().Select(c => c.GetProperty("source").GetString()));
        Assert.Equal(_shell.At("class.json"), Assert.Single(root.GetProperty("files").EnumerateArray()).GetString());
        Assert.True(File.Exists(_shell.At("class.json")));
    }

    [Fact]
    public void The_voice_types_need_no_class()
    {
        var (code, output, _) = Shell.Run("singers", "--voices", "--json");
        Assert.Equal(0, code);
        using var report = JsonDocument.Parse(output);
        Assert.Equal(0, report.RootElement.GetProperty("singers").GetArrayLength());
        Assert.NotEqual(0, report.RootElement.GetProperty("voiceTypes").GetArrayLength());
    }

    [Fact]
    public void A_wrong_day_is_refused_with_the_fix()
    {
        var (code, _, error) = Run("--on", "today");
        Assert.Equal(2, code);
        Assert.Contains("today", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_measurement_is_added_to_the_whole_class_in_a_new_file()
    {
        var (code, output, error) = Run("--alias", "robin", "--measured", "2026-12-01", "--low", "A3", "--high", "C5", "--tones", "10 11.5 10.5", "--out", _shell.At("new.json"));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("A3 to C5", output, StringComparison.Ordinal);
        var before = SingersCsv.Read(File.ReadAllBytes(_shell.At("class.csv")));
        var measurement = new Measurement(new DateOnly(2026, 12, 1), NoteName.Parse("A3"), NoteName.Parse("C5"), [10, new Rational(23, 2), new Rational(21, 2)]);
        Assert.Equal([before[0].With(measurement), before[1]], SingersFile.Read(File.ReadAllBytes(_shell.At("new.json"))));
    }

    [Theory]
    [InlineData("--alias", "--measured", "2026-12-01", "--low", "A3", "--high", "C5", "--tones", "9")]
    [InlineData("--tones", "--alias", "Robin", "--measured", "2026-12-01", "--low", "A3", "--high", "C5")]
    [InlineData("--low", "--alias", "Robin", "--measured", "2026-12-01", "--high", "C5", "--tones", "9")]
    [InlineData("--measured", "--alias", "Robin", "--low", "A3")]
    [InlineData("--tones", "--alias", "Robin", "--measured", "2026-12-01", "--low", "A3", "--high", "C5", "--tones", "long")]
    [InlineData("2026-06-02", "--alias", "Robin", "--measured", "2026-06-02", "--low", "A3", "--high", "C5", "--tones", "9")]
    public void A_new_measurement_that_lacks_something_is_refused_with_the_fix(string expected, params string[] options)
    {
        var (code, _, error) = Run(options);
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("history.svg", "<svg")]
    [InlineData("history.pdf", "%PDF")]
    public void The_measurements_are_drawn_and_what_has_no_date_is_named(string file, string begin)
    {
        var (code, output, error) = Run("--history", "--out", _shell.At(file));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(begin, File.ReadAllText(_shell.At(file))[..200], StringComparison.Ordinal);
        Assert.Contains("wrote", output, StringComparison.Ordinal);
        Assert.Contains("not drawn, since it has no date: a measurement of Wren", output, StringComparison.Ordinal);
        Assert.Equal(2, Run("--history", "--out", _shell.At(file)).Code);
    }

    [Theory]
    [InlineData("add --history")]
    [InlineData("--measured 2026-12-01", "--history", "--alias", "Wren")]
    [InlineData(".json or .csv", "--history", "--alias", "Robin", "--measured", "2026-12-01", "--low", "A3", "--high", "C5", "--tones", "9")]
    public void A_chart_that_cannot_be_drawn_is_refused_with_the_fix(string fix, params string[] options)
    {
        var (code, _, error) = Run([.. options, "--out", _shell.At("chart.svg")]);
        Assert.Equal(2, code);
        Assert.Contains(fix, error, StringComparison.Ordinal);
        Assert.False(File.Exists(_shell.At("chart.svg")));
    }

    [Fact]
    public void A_history_needs_the_class() => Assert.Contains("--singers FILE", Shell.Run("singers", "--voices", "--history").Error, StringComparison.Ordinal);
}
