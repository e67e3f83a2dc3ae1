using System.Text.Json;

namespace Warmup.Cli.Tests;

/// <summary><c>warmup patterns</c>: the words, the exercises, a pattern shown, lines explained. The lines are common practice, written out by hand.</summary>
public sealed class PatternsCommandTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void The_words_are_listed_with_their_meanings()
    {
        var (code, output, error) = Shell.Run("patterns");
        Assert.Equal((0, string.Empty), (code, error));
        Assert.All((string[])["ladder", "figure(n n ...)", ".reversed", ".take(n)", ".weave(pattern)", "[S R G , / R G M]"], word => Assert.Contains(word, output, StringComparison.Ordinal));
        var (_, text, _) = Shell.Run("patterns", "--json");
        using var json = JsonDocument.Parse(text);
        Assert.Equal("urn:warmup:patterns:1", json.RootElement.GetProperty("schema").GetString());
        Assert.Equal(PatternLanguage.Standard.Words.Count, json.RootElement.GetProperty("words").GetArrayLength());
    }

    [Theory]
    [InlineData("S R G / R G M / G M P / M P D / P D N / D N S'", "mayamalavagowla")]
    [InlineData("S R G P / R G P D / G P D S'", "mohanam")]
    [InlineData("R S / G R S / M G R S / P M G R S / D P M G R S / N D P M G R S / S' N D P M G R S", "bilahari")]
    public void A_rule_is_found_that_drill_accepts(string lines, string scale)
    {
        var (code, output, error) = Shell.Run("patterns", "--explain", lines, "--scale", scale);
        Assert.Equal((0, string.Empty), (code, error));
        var rule = output.Trim();
        Assert.DoesNotContain("[", rule, StringComparison.Ordinal);
        var read = Catalogue.Default.Read(scale);
        Assert.Equal(Pattern.Written(lines).Expand(read).ToTones(), Pattern.Parse(rule).Expand(read).ToTones());
        Assert.Equal(0, Shell.Run(_shell.Drill(("--pattern", rule), ("--scale", scale))).Code);
    }

    [Fact]
    public void Seven_notes_are_taken_unless_another_scale_is_named()
    {
        var (code, output, _) = Shell.Run("patterns", "--explain", "S R G / R G M / G M P / M P D / P D N / D N S'");
        Assert.Equal((0, "figure(1 2 3)"), (code, output.Trim()));
    }

    [Fact]
    public void Where_no_rule_is_found_the_exit_code_is_1_and_the_message_says_what_else_to_do()
    {
        var (code, output, error) = Shell.Run("patterns", "--explain", "S G R P N M / D S' R / P S N_ G");
        Assert.Equal((1, string.Empty), (code, output));
        Assert.Contains("no rule was found", error, StringComparison.Ordinal);
        Assert.Contains("--pattern", error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Theory]
    [InlineData("--explain, column 3: 'r' mixes small and capital letters", "--explain", "S r G")]
    [InlineData("has no M", "--explain", "S R G M", "--scale", "mohanam")]
    [InlineData("--scale", "--explain", "S R G", "--scale", "mohanim")]
    [InlineData("--show, column 8", "--show", "ladder.nothing")]
    [InlineData("has no M", "--show", "sarali-10", "--scale", "mohanam")]
    [InlineData("one of --explain, --show, --exercises and --table", "--show", "ladder", "--exercises")]
    [InlineData("--explain", "--explain")]
    public void Wrong_input_is_one_line_with_the_fix(string expected, params string[] options)
    {
        var (code, _, error) = Shell.Run(["patterns", .. options]);
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public void A_pattern_is_shown_with_what_it_sings()
    {
        var (code, output, _) = Shell.Run("patterns", "--show", "ladder.take(2).there-and-back", "--scale", "mohanam");
        Assert.Equal(0, code);
        Assert.All((string[])["two lines; each line starts on the tonic", "every line is sung there and back", "  S R S\n", "  S R G R S\n", "Difficulty"], part =>
            Assert.Contains(part, output.ReplaceLineEndings("\n"), StringComparison.Ordinal));
        var (_, text, _) = Shell.Run("patterns", "--show", "alankara-7", "--json");
        using var json = JsonDocument.Parse(text);
        Assert.Equal("S R G M", json.RootElement.GetProperty("lines")[0].GetString());
        Assert.Equal(10, json.RootElement.GetProperty("lines").GetArrayLength());
    }

    [Fact]
    public void The_exercises_are_listed_with_their_sources()
    {
        var (code, output, _) = Shell.Run("patterns", "--exercises");
        Assert.Equal(0, code);
        Assert.All((string[])["sarali-1", "janta-8", "mandrasthayi-3", "alankara-7", "choir-1", "from memory"], name => Assert.Contains(name, output, StringComparison.Ordinal));
        var (_, text, _) = Shell.Run("patterns", "--exercises", "--json");
        using var json = JsonDocument.Parse(text);
        Assert.Equal(Repertoire.Traditional.Count + Repertoire.Choir.Count + Repertoire.Voice.Count + Repertoire.Alankaras.Count, json.RootElement.GetProperty("exercises").GetArrayLength());
    }
}
