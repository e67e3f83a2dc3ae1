using System.Text.Json;

namespace Warmup.Cli.Tests;

/// <summary>The promises of <c>warmup check</c> about what would help, and of the options that say it; amounts are counted by hand.</summary>
public sealed class CheckRemedyTests : IDisposable
{
    private const string Class = """
        {"schema": "urn:warmup:singers:1", "singers": [
          {"alias": "Wren", "low": "A3", "high": "E5", "sustainedSeconds": 30, "experience": "advanced"},
          {"alias": "Badger", "low": "G2", "high": "D4", "sustainedSeconds": 30, "experience": "advanced"}]}
        """;

    private readonly Shell _shell = new();

    public CheckRemedyTests() => File.WriteAllText(_shell.At("class.json"), Class);

    public void Dispose() => _shell.Dispose();

    /// <summary>A check with good options, of which some may be replaced.</summary>
    private string[] Check(params string[] changed) =>
        ["check", .. OptionReader.Joined(["--singers", _shell.At("class.json"), "--scale", "mohanam", "--pattern", "ladder", "--tempo", "120"], changed)];

    [Fact]
    public void Json_has_each_remedy_in_words_and_as_options_that_make_it_fit()
    {
        // From F4 to F5: a semitone above Wren's E5.
        var line = Check("--tonic", "F4", "--alias", "Wren");
        var (code, output, _) = Shell.Run([.. line, "--json"]);
        Assert.Equal(1, code);
        using var json = JsonDocument.Parse(output);
        var finding = json.RootElement.GetProperty("singers")[0].GetProperty("findings")[0];
        var remedy = finding.GetProperty("remedies")[0];
        Assert.Equal("a tonic 1 semitone lower: E4", remedy.GetProperty("text").GetString());
        var options = remedy.GetProperty("options").EnumerateArray().Select(o => o.GetString()!).ToArray();
        Assert.Equal(["--tonic", "E4"], options);
        Assert.False(finding.TryGetProperty("fix", out _));
        Assert.False(finding.TryGetProperty("withoutRemedy", out _));
        Assert.Equal(0, Shell.Run([.. OptionReader.Joined(line, options)]).Code);
    }

    [Fact]
    public void The_text_names_the_same_options()
    {
        var (_, output, _) = Shell.Run(Check("--tonic", "F4", "--alias", "Wren"));
        Assert.Contains("- Wren, range, line 5: a tonic 1 semitone lower: E4 (--tonic E4)", output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_helps_one_singer_alone_is_said_with_the_alias()
    {
        // On A3 to A4 Badger is out and Wren could not go lower: only an octave lower, and only without her.
        var (_, output, _) = Shell.Run(Check("--tonic", "A3", "--pattern", "[S R G P D S']", "--json"));
        using var json = JsonDocument.Parse(output);
        var finding = json.RootElement.GetProperty("singers")[1].GetProperty("findings")[0];
        Assert.Equal(0, finding.GetProperty("remedies").GetArrayLength());
        var without = finding.GetProperty("withoutRemedy");
        Assert.Contains("for Badger alone", without.GetProperty("text").GetString(), StringComparison.Ordinal);
        var options = without.GetProperty("alone")[0].GetProperty("options").EnumerateArray().Select(o => o.GetString()!).ToArray();
        Assert.Equal(["--alias", "Badger", "--tonic", "A2"], options);
        Assert.Equal(0, Shell.Run(Check(["--pattern", "[S R G P D S']", .. options])).Code);
    }

    [Fact]
    public void Check_plans_breaths_as_drill_does()
    {
        // Twenty notes at 60 on 0.6 of 30 s = 18 s: too long for one breath, possible with one between lines.
        var line = Check("--tonic", "C4", "--alias", "Wren", "--tempo", "60");
        Assert.Equal(1, Shell.Run(line).Code);
        var (code, output, _) = Shell.Run([.. line, "--plan-breaths"]);
        Assert.Equal(0, code);
        Assert.StartsWith("breaths: 1 breath: after line", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--lines", "1-2", 0)]
    [InlineData("--lines", "2,1", 0)]
    [InlineData("--lines", "6", 2)]
    [InlineData("--lines", "2-1", 2)]
    [InlineData("--lines", "0", 2)]
    [InlineData("--lines", "one", 2)]
    [InlineData("--breath", "2", 2)]
    public void Lines_and_breaths_are_read_or_refused_by_name(string option, string value, int expected)
    {
        var (code, _, error) = Shell.Run(Check("--tonic", "C4", "--alias", "Wren", option, value));
        Assert.Equal(expected, code);
        Assert.Equal(expected == 2, error.Contains(option, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.1", 2)]
    [InlineData("11", 2)]
    [InlineData("2.5", 0)]
    [InlineData("5/2", 0)]
    public void A_breath_is_a_number_of_seconds(string value, int expected) =>
        Assert.Equal(expected, Shell.Run(Check("--tonic", "C4", "--alias", "Wren", "--delivery", "line-by-line", "--breath", value)).Code);
}
