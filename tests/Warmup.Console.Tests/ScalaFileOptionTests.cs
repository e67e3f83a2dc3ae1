namespace Warmup.Cli.Tests;

/// <summary>A Scala file of any number of pitches tunes a drill, once each svara is told its pitch.</summary>
public sealed class ScalaFileOptionTests : IDisposable
{
    private readonly Shell _shell = new();

    public ScalaFileOptionTests() => File.WriteAllText(_shell.At("five.scl"), "five\n 5\n 10/9\n 5/4\n 3/2\n 5/3\n 2/1\n");

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void Each_svara_takes_the_pitch_that_it_is_told()
    {
        var (code, output, error) = Shell.Run("scales", "--show", "mohanam", "--tonic", "C4", "--json", "--tuning", $"{_shell.At("five.scl")}: R2 1, G3 2, P 3, D2 4");
        Assert.Equal((0, string.Empty), (code, error));
        using var json = System.Text.Json.JsonDocument.Parse(output);
        var ratios = json.RootElement.GetProperty("notes").EnumerateArray().Select(n => n.GetProperty("ratio").GetString());
        Assert.Equal(["10/9", "5/4", "3/2", "5/3"], ratios.Where(r => r is not (null or "1" or "1/1" or "2" or "2/1")));
    }

    [Theory]
    [InlineData("", "say which pitch each svara takes")]
    [InlineData(": R2 6", "between 1 and 5")]
    [InlineData(": R2 0", "between 1 and 5")]
    [InlineData(": R2", "a svara and the number of a pitch")]
    [InlineData(": H 1", "a svara and the number of a pitch")]
    [InlineData(": S 1", "the tonic S")]
    [InlineData(": R2 4", "pitch 4 of")]
    public void What_cannot_be_told_is_refused_with_the_reason(string after, string expected)
    {
        var (code, _, error) = Shell.Run(_shell.Drill(("--tuning", _shell.At("five.scl") + after)));
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }
}
