using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Voices.Tests;

/// <summary>What is counted of a pattern in a scale: by hand for a small one, and by other means for generated ones.</summary>
public class PatternFactsTests
{
    private static readonly Scale Shankarabharanam = Catalogue.Default.Read("S R2 G3 M1 P D2 N3 S'");

    [Fact]
    public void The_counts_of_a_small_pattern_are_those_of_a_hand_count()
    {
        // S G up 4, G R down 2, R P up 5; M D up 4, D S' up 3, S' N_ down 13.
        Assert.True(PatternFacts.TryMeasure(Pattern.Parse("[S G R P / M D S' N_]"), Shankarabharanam, out var facts, out var refusal));
        Assert.Null(refusal);
        Assert.Equal((2, 8, 4, -1, 12), (facts.Lines, facts.Notes, facts.LongestLine, facts.Lowest, facts.Highest));
        Assert.Equal("0 unisons, 1 steps, 3 thirds, 1 fourths, 0 tritones, 0 fifths, 0 sixths, 0 sevenths, 0 octaves, 1 wider", facts.Intervals.ToString());
        Assert.Equal(facts.Notes - facts.Lines, facts.Intervals.All);
        Assert.Equal(3, facts.Difficulty.DirectionChanges);
        Assert.False(facts.Laws.IsPalindrome);
    }

    // One interval each, in the chromatic scale from S; the names are common practice.
    [Theory]
    [InlineData("S", "1 unisons")]
    [InlineData("R2", "1 steps")]
    [InlineData("G2", "1 thirds")]
    [InlineData("G3", "1 thirds")]
    [InlineData("M1", "1 fourths")]
    [InlineData("M2", "1 tritones")]
    [InlineData("P", "1 fifths")]
    [InlineData("D1", "1 sixths")]
    [InlineData("D2", "1 sixths")]
    [InlineData("N2", "1 sevenths")]
    [InlineData("N3", "1 sevenths")]
    [InlineData("S'", "1 octaves")]
    public void Each_interval_has_its_kind(string top, string expected)
    {
        var scale = Catalogue.Default.Read(top is "S" or "S'" ? "S P S'" : $"S {top} S'");
        var pattern = Pattern.Parse(top is "S" ? "[S S]" : top is "S'" ? "[S S']" : "[1 2]");
        Assert.True(PatternFacts.TryMeasure(pattern, scale, out var facts, out _));
        Assert.Contains(expected, facts.Intervals.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, facts.Intervals.All);
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public bool Counts_agree_with_the_score_that_is_sung(Pattern pattern, Scale scale)
    {
        if (!PatternFacts.TryMeasure(pattern, scale, out var facts, out var refusal))
        {
            return refusal.Message.Length > 0 && !PatternFacts.SungAs(pattern, scale).TryToScore(out _, out _);
        }

        // The score counts on its own: lines by their number, pitches as keys on C4, which is key 60.
        var section = PatternFacts.SungAs(pattern, scale).ToScore().Sections.Single();
        var keys = section.Notes.Select(n => section.PitchOf(n).Tone.Semitones + section.Tonic.Midi).ToList();
        var lines = section.Notes.GroupBy(n => n.LineIndex).Select(g => g.Count()).ToList();
        return facts.Lines == lines.Count
            && facts.Notes == keys.Count
            && facts.LongestLine == lines.Max()
            && facts.Lowest == keys.Min() - 60
            && facts.Highest == keys.Max() - 60
            && facts.Intervals.All == keys.Count - lines.Count
            && facts.Difficulty.SpanSemitones == facts.Highest - facts.Lowest
            && facts.Difficulty == Difficulty.Of(PatternFacts.SungAs(pattern, scale).ToScore());
    }

    [Fact]
    public void One_unit_is_one_second()
    {
        Assert.True(PatternFacts.TryMeasure(Pattern.Run, Shankarabharanam, out var facts, out _));
        Assert.Equal(Rational.One, facts.Difficulty.NotesPerSecond);
        Assert.True(PatternFacts.TryMeasure(Pattern.Run.Stretch(2), Shankarabharanam, out var slow, out _));
        Assert.Equal(new Rational(1, 2), slow.Difficulty.NotesPerSecond);
    }

    [Theory]
    [InlineData("[S M]", FindingCode.PatternRefused, "M")]
    [InlineData("empty", FindingCode.PatternEmpty, "")]
    [InlineData("run.transposed(24)", FindingCode.OutsideMidi, "")]
    public void What_cannot_be_sung_says_why(string pattern, string code, string message)
    {
        Assert.False(PatternFacts.TryMeasure(Pattern.Parse(pattern), Catalogue.Default.Read("mohanam"), out var facts, out var refusal));
        Assert.Null(facts);
        Assert.Equal(code, refusal.Code);
        Assert.Contains(message, refusal.Message, StringComparison.Ordinal);
    }
}
