using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Warmup.Testing;

namespace Warmup.Tests;

/// <summary>
/// Explaining written lines. What is expected of small cases follows from the words' meanings; the share of generated expressions that are
/// found is measured here, over patterns of one to four parts without written lines.
/// </summary>
public class ExplainTests
{
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";
    private const string Mohanam = "S R2 G3 P D2 S'";
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";
    private const string Kedaram = "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S";

    [Theory]
    [InlineData(Shankarabharanam, "S R G / R G M / G M P / M P D / P D N / D N S'", 1)] // figure(1 2 3)
    [InlineData(Shankarabharanam, "S R / S R G / S R G M / S R G M P / S R G M P D / S R G M P D N / S R G M P D N S'", 1)] // ladder
    [InlineData(Mohanam, "S G / R P / G D / P S'", 1)] // figure(1 3)
    [InlineData(Mohanam, "S' D / S' D P / S' D P G / S' D P G R / S' D P G R S", 2)] // ladder.mirrored
    [InlineData(Bilahari, "R S / G R S / M G R S / P M G R S / D P M G R S / N D P M G R S / S' N D P M G R S", 2)] // ladder.reversed
    [InlineData(Shankarabharanam, "S R G M P D N S' / S' N D P M G R S", 2)] // run.up-down
    [InlineData(Shankarabharanam, "S R G M / R G M P / G M P D / M P D N / P D N S' / S' N D P / N D P M / D P M G / P M G R / M G R S", 2)]
    [InlineData(Shankarabharanam, "S S R R G G M M / R R G G M M P P / G G M M P P D D / M M P P D D N N / P P D D N N S' S'", 2)]
    [InlineData(Shankarabharanam, "S R G M , / R G M P , / G M P D , / M P D N , / P D N S' ,", 2)]
    [InlineData(Shankarabharanam, "S R G / R G M", 2)] // figure(1 2 3).take(2)
    [InlineData(Shankarabharanam, "S R S G S M S P S D S N S S' S", 2)] // run.returning
    public void Small_rules_are_found_at_their_size(string scale, string lines, int size)
    {
        var read = Scale.Parse(scale);
        var rule = PatternSearch.Explain(lines, read);
        Assert.NotNull(rule);
        Assert.Equal(Pattern.Written(lines).Expand(read).ToTones(), rule.Expand(read).ToTones());
        Assert.True(rule.Nodes <= size, $"{rule} has {rule.Nodes} parts");
        Assert.False(HasWrittenLines(rule));
    }

    [Fact]
    public void Irregular_lines_have_no_rule() =>
        Assert.Null(PatternSearch.Explain("S G R P N M / D S' R / P S N_ G", Scale.Parse(Shankarabharanam)));

    [Fact]
    public void A_figure_sung_only_once_is_the_line_written_out_and_no_rule()
    {
        Assert.Null(PatternSearch.Explain("S G R P N M", Scale.Parse(Shankarabharanam)));
        var twice = PatternSearch.Explain("S G R P N M / S G R P N M", Scale.Parse(Shankarabharanam));
        Assert.Equal(2, twice!.Expand(Scale.Parse(Shankarabharanam)).Lines.Count);
    }

    [Fact]
    public void The_alankaras_are_found_as_the_rules_they_are()
    {
        var scale = Scale.Parse(Shankarabharanam);
        foreach (var exercise in Repertoire.Traditional)
        {
            if (exercise.Group == "alankara")
            {
                var lines = exercise.Pattern.Expand(scale).Lines;
                var rule = PatternSearch.Explain(lines, scale);
                Assert.True(rule is not null && rule.Nodes <= exercise.Pattern.Nodes, $"{exercise}: {rule}");
                Assert.Equal(exercise.Pattern.Expand(scale).ToTones(), rule.Expand(scale).ToTones());
            }
        }
    }

    [Fact]
    public void Too_many_notes_and_letters_that_the_scale_lacks_are_refused()
    {
        Assert.Contains("the most is 2000", Assert.Throws<PatternException>(
            () => PatternSearch.Explain(Pattern.Run.Repeat(300).Expand(Scale.Parse(Shankarabharanam)).Lines, Scale.Parse(Shankarabharanam))).Message, StringComparison.Ordinal);
        Assert.Contains("has no M", Assert.Throws<PatternException>(() => PatternSearch.Explain("S R G M", Scale.Parse(Mohanam))).Message, StringComparison.Ordinal);
    }

    /// <summary>At least 95 of 100 generated expressions of size 4 or less are explained, by a rule of exactly the same lines.</summary>
    [Fact]
    [Trait("Run", "whole")]
    public void Most_generated_expressions_are_explained()
    {
        const int Cases = 120;
        var scales = Array.ConvertAll((string[])[Shankarabharanam, Mohanam, Bilahari, Kedaram], Scale.Parse);
        var cases = Gen.Choose(1, 4).SelectMany(size => PatternGenerators.Exactly(size, PatternGenerators.Primitive))
            .Sample(4 * Cases, new Rnd(2024), 10)
            .Select((pattern, i) => (Pattern: pattern, Scale: scales[i % scales.Length]))
            .Where(c => c.Pattern.TryExpand(c.Scale, out var e, out _) && !e!.Lines.IsEmpty && e.NoteCount <= 2_000)
            .Take(Cases)
            .ToList();
        var rules = cases.AsParallel().AsOrdered().Select(c => PatternSearch.Explain(c.Pattern.Expand(c.Scale).Lines, c.Scale)).ToList();
        var missed = new List<string>();
        var (smaller, larger) = (0, 0);
        foreach (var ((pattern, scale), rule) in cases.Zip(rules))
        {
            if (rule is null)
            {
                missed.Add($"{pattern} in {scale.ToText()}");
                continue;
            }

            var (wanted, given) = (pattern.Expand(scale).Lines, rule.Expand(scale).Lines);
            Assert.True(wanted.Count == given.Count && wanted.Zip(given).All(pair => pair.First.SoundsAs(pair.Second)), $"{rule} for {pattern}");
            Assert.False(HasWrittenLines(rule));
            smaller += rule.Nodes < pattern.Nodes ? 1 : 0;
            larger += rule.Nodes > pattern.Nodes ? 1 : 0;
        }

        var found = Cases - missed.Count;
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"explained {found} of {Cases}: {100.0 * found / Cases:0.0} %; by a smaller rule {smaller}, by a larger one {larger}"));
        missed.ForEach(m => TestContext.Current.TestOutputHelper?.WriteLine("missed " + m));
        Assert.Equal(Cases, cases.Count);
        Assert.True(100 * found >= 95 * Cases, $"only {found} of {Cases}:\n{string.Join('\n', missed)}");
    }

    private static bool HasWrittenLines(Pattern pattern) => pattern.Word == "[]" || pattern.Operands.Any(HasWrittenLines);
}
