using System.Text.Json;
using System.Xml.Linq;

namespace Warmup.Cli.Tests;

/// <summary>The promises of <c>warmup fit</c>, <c>check</c> with a class and <c>--plan-breaths</c>; amounts are counted by hand from an octave's ladder.</summary>
public sealed class FitCommandTests : IDisposable
{
    private const string Class = """
        {"schema": "urn:warmup:singers:1", "singers": [
          {"alias": "Wren", "low": "A3", "high": "E5", "sustainedSeconds": 18, "experience": "advanced"},
          {"alias": "Badger", "low": "A2", "high": "E4", "sustainedSeconds": 18, "experience": "advanced"}]}
        """;

    private readonly Shell _shell = new();

    public FitCommandTests() => File.WriteAllText(_shell.At("class.json"), Class);

    public void Dispose() => _shell.Dispose();

    private string[] Fit(params string[] more) =>
        ["fit", "--singers", _shell.At("class.json"), "--scale", "mohanam", "--pattern", "ladder", "--tempo", "60", .. more];

    [Fact]
    public void Fit_ranks_tonics_plans_breaths_finds_tempi_and_carries_the_cautions()
    {
        var (code, output, error) = Shell.Run(Fit("--cautions"));
        Assert.Equal((0, string.Empty), (code, error));

        // A3 to E5 and A2 to E4 have the middles 66.5 and 54.5; an octave's middle lies 6 above S: C and C# are half a semitone off, C is lower.
        Assert.Contains("S = C4", output, StringComparison.Ordinal);
        Assert.Contains("with breaths", output, StringComparison.Ordinal);
        Assert.Contains("S on C3: Badger, S on C4: Wren", output, StringComparison.Ordinal);

        // Twenty notes on 0.6 of 18 s: 20 * 60 / 10.8 = 111.1. From D to the next line's S the voice falls 9 semitones:
        // 100.4 + 9 * 5.8 + 10 ms = 162.6 ms a note, 369.0 a minute.
        Assert.Contains("112 to 369", output, StringComparison.Ordinal);
        Assert.Contains("own settings", output, StringComparison.Ordinal);
        Assert.Contains("speakers", output, StringComparison.Ordinal);
        Assert.All(Cautions.All, c => Assert.Contains(c.Text, output, StringComparison.Ordinal));
        Assert.All(Cautions.All, c => Assert.Contains(c.Source, output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(20, 20)]
    [InlineData(21, 1)]
    public void In_a_large_class_a_long_text_stands_once(int singers, int times)
    {
        var rows = Enumerable.Range(1, singers).Select(i => $$"""{"alias": "Voice {{i}}", "low": "A3", "high": "E5", "sustainedSeconds": 18, "experience": "advanced"}""");
        File.WriteAllText(_shell.At("large.json"), $$"""{"schema": "urn:warmup:singers:1", "singers": [{{string.Join(',', rows)}}]}""");
        var (code, output, _) = Shell.Run("fit", "--singers", _shell.At("large.json"), "--scale", "mohanam", "--pattern", "ladder + ladder.reversed", "--tempo", "60", "--tonic", "C4");
        Assert.Equal(0, code);
        Assert.Equal(singers, output.Split("with breaths").Length - 1);
        Assert.Equal(singers - times, output.Split("as for Voice 1 ").Length - 1);
    }

    [Fact]
    public void Fit_speaks_JSON()
    {
        var (code, output, _) = Shell.Run(Fit("--tonic", "C4", "--json"));
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(output);
        var root = json.RootElement;
        Assert.Equal(("urn:warmup:fit:1", "C4"), (root.GetProperty("schema").GetString(), root.GetProperty("tonic").GetString()));
        Assert.Equal(12, root.GetProperty("tonics").GetArrayLength());
        Assert.Equal("C3", root.GetProperty("tonics")[0].GetProperty("tonic").GetString());
        var badger = root.GetProperty("singers")[1];
        Assert.Equal(("fitsWithBreaths", -1), (badger.GetProperty("verdict").GetString(), badger.GetProperty("octaves").GetInt32()));
        Assert.True(root.GetProperty("breaths").GetProperty("possible").GetBoolean());
        Assert.Equal(112, root.GetProperty("windows")[0].GetProperty("intervals")[0].GetProperty("slowest").GetInt32());
        Assert.Equal(Cautions.All.Count, root.GetProperty("cautions").GetArrayLength());
    }

    [Fact]
    public void Fit_draws_a_chart_and_keeps_an_existing_one()
    {
        var (code, output, _) = Shell.Run(Fit("--chart", _shell.At("a.svg")));
        Assert.Equal(0, code);
        Assert.Contains("a.svg", output, StringComparison.Ordinal);
        Assert.Equal("svg", XDocument.Load(_shell.At("a.svg")).Root!.Name.LocalName);
        var again = Shell.Run(Fit("--chart", _shell.At("a.svg")));
        Assert.Equal(2, again.Code);
        Assert.Contains("--force", again.Error, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run(Fit("--chart", _shell.At("a.svg"), "--force")).Code);
        Assert.Contains(".svg", Shell.Run(Fit("--chart", _shell.At("a.png"))).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_exits_with_1_when_somebody_cannot_sing_the_drill_and_offers_two_groups()
    {
        File.WriteAllText(_shell.At("class.json"), Class.Replace("\"high\": \"E5\"", "\"high\": \"A4\"", StringComparison.Ordinal).Replace("\"low\": \"A2\", \"high\": \"E4\"", "\"low\": \"D3\", \"high\": \"D4\"", StringComparison.Ordinal));
        var (code, output, _) = Shell.Run(Fit());
        Assert.Equal(1, code);
        Assert.Contains("two groups", output, StringComparison.Ordinal);
        Assert.Contains("alone, for the range: take the tonic", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Fit_without_a_class_is_wrong_usage()
    {
        var (code, _, error) = Shell.Run("fit", "--scale", "mohanam", "--pattern", "ladder", "--tempo", "60");
        Assert.Equal(2, code);
        Assert.Contains("--singers", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_shows_the_class_table_where_there_are_several()
    {
        string[] check = ["check", "--singers", _shell.At("class.json"), "--scale", "mohanam", "--pattern", "ladder", "--tempo", "60", "--tonic", "C4"];
        var (code, output, _) = Shell.Run(check);
        Assert.Equal(1, code);
        Assert.Contains("Best common tonic: C3", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Best common tonic", Shell.Run([.. check, "--alias", "Wren"]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Planned_breaths_land_in_the_files()
    {
        // Twenty seconds on 10.8: one breath inside a line costs 3, two at line ends 2. After 9 s (line 3) and 14 s (line 4) they stand before
        // falls of 7 and 9 semitones; after 5 s (line 2) the fall is only 4.
        string[] drill = _shell.Drill(("--tonic", "C4"), ("--out", _shell.At("a.musicxml")), ("--singers", _shell.At("class.json")));
        var before = XDocument.Load(Written(drill)).Descendants("breath-mark").Count();
        var (_, output, _) = Shell.Run([.. drill, "--plan-breaths", "--force"]);
        Assert.Contains("breaths: 2 breaths: after line 3; after line 4", output, StringComparison.Ordinal);
        Assert.Equal((0, 2), (before, XDocument.Load(_shell.At("a.musicxml")).Descendants("breath-mark").Count()));
        var (code, _, error) = Shell.Run([.. _shell.Drill(("--out", _shell.At("b.mid"))), "--plan-breaths"]);
        Assert.Equal(2, code);
        Assert.Contains("--singers", error, StringComparison.Ordinal);

        string Written(string[] args)
        {
            Shell.Run(args);
            return _shell.At("a.musicxml");
        }
    }

    [Fact]
    public void Voice_types_are_listed_with_how_sure_each_is()
    {
        var (code, output, _) = Shell.Run("singers", "--voices");
        Assert.Equal(0, code);
        Assert.Contains("baritone", output, StringComparison.Ordinal);
        Assert.Contains("from memory", output, StringComparison.Ordinal);
        Assert.Contains("own setting", output, StringComparison.Ordinal);
    }
}
