using System.Text;

namespace Warmup.Tests;

/// <summary>
/// Patterns that would be too deep or too large are refused with the limit named, before memory is spent: each refusal is measured to
/// allocate less than 64 KB, once the code has run before (the first run compiles).
/// </summary>
public class PatternBoundsTests
{
    private const int MostBytes = 64 * 1024;

    public static TheoryData<string, string> Texts => new()
    {
        { string.Concat(Enumerable.Repeat("(", 9_000)) + "run", "64 deep" },
        { "run" + string.Concat(Enumerable.Repeat(".ends", 1_900)), "at most 64 levels" },
        { string.Concat(Enumerable.Repeat("run.weave(", 900)), "64 deep" },
        { new string('(', 10_000) + "run", "at most 10000 characters" },
        { "ladder.repeat(10000).repeat(10000)", "at most 100000 notes" },
        { "ladder.each-line(64).each-note(64).repeat(10000)", "at most 100000 notes" },
        { "ladder.repeat(1000).join.grow", "at most 100000 notes" },
        { "run.repeat(9999).windows(64)", "at most 100000 notes" },
        { "run.repeat(99999999999999999999)", "a number from 1 to 10000" },
        { "figure(2147483649)", "places from -24 to 25" },
        { "run.transposed(-25)", "a number from -24 to 24" },
        { "[" + new string('S', 1) + string.Concat(Enumerable.Repeat(" ,", 100)) + "]", "1 to 64 units" },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_text_that_would_build_too_much_is_refused_cheaply(string text, string limit) =>
        Refused(() => Pattern.TryParse(text, out _, out var error) ? null : error!.Message, limit);

    [Fact]
    public void Ten_thousand_combinators_in_code_are_refused_cheaply() => Refused(
        () =>
        {
            try
            {
                var pattern = Pattern.Ladder;
                for (var i = 0; i < 10_000; i++)
                {
                    pattern = pattern.Reversed();
                }

                return null;
            }
            catch (ArgumentException refused)
            {
                return refused.Message;
            }
        },
        "at most 64 levels, not 65");

    [Theory]
    [InlineData(10_000)]
    [InlineData(200)]
    public void Json_nested_too_deeply_is_refused_cheaply(int depth)
    {
        var json = Encoding.UTF8.GetBytes(
            """{"schema":"urn:warmup:pattern:2","pattern":""" + string.Concat(Enumerable.Repeat("""{"word":"ends","of":""", depth)));
        Refused(
            () =>
            {
                try
                {
                    return PatternFile.Read(json).ToString();
                }
                catch (WarmupFormatException refused)
                {
                    return refused.Message;
                }
            },
            "at most 64 levels");
    }

    [Theory]
    [InlineData("run.repeat(10000)")] // within the bound in seven notes, not in a scale of twenty-four places
    [InlineData("ladder.repeat(2800)")]
    public void An_expansion_that_grows_beyond_the_bound_in_a_long_scale_is_refused_cheaply(string text)
    {
        var long24 = Scale.Parse("vakra: S R1 R2 R1 R2 G2 G3 G2 G3 M1 M2 M1 M2 P D1 P D1 D2 N2 D2 N2 N3 S'");
        var pattern = Pattern.Parse(text);
        Refused(() => pattern.TryExpand(long24, out _, out var refusal) ? null : refusal!.Message, "the most is 100000");
    }

    [Fact]
    public void Lengths_that_would_overflow_are_refused_by_the_bound()
    {
        var pattern = Pattern.Run;
        for (var i = 0; i < 40; i++)
        {
            pattern = pattern.Stretch(64);
        }

        Refused(() => pattern.TryExpand(Scale.Parse("S R2 G3 P D2 S'"), out _, out var refusal) ? null : refusal!.Message, "from 1/4096 to 4096");
        pattern = Pattern.Run;
        for (var i = 0; i < 40; i++)
        {
            pattern = pattern.Shrink(61);
        }

        Refused(() => pattern.TryExpand(Scale.Parse("S R2 G3 P D2 S'"), out _, out var refusal) ? null : refusal!.Message, "from 1/4096 to 4096");
    }

    [Fact]
    public void A_span_moved_out_of_hearing_is_refused_and_not_overflowed()
    {
        var pattern = Pattern.Ladder;
        for (var i = 0; i < 60; i++)
        {
            pattern = pattern.Above(24);
        }

        Assert.False(pattern.TryExpand(Scale.Parse("S R2 G3 P D2 S'"), out _, out var refusal));
        Assert.Equal(Severity.Error, refusal!.Severity);
        Assert.False(Pattern.Ladder.Span(24, -24).TryExpand(Scale.Parse("S R2 G3 P D2 S'"), out _, out refusal));
        Assert.Contains("before it begins", refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Many_lengths_whose_parts_do_not_fit_one_grid_are_refused_by_the_score()
    {
        var pattern = Pattern.Sum([.. ((int[])[59, 61, 53, 47, 43, 41, 37, 31, 29]).Select(n => Pattern.Run.Shrink(n))]);
        var drill = new Drill { Scale = Scale.Parse("S R2 G3 P D2 S'"), Tonic = Tonic.Parse("C4"), Pattern = pattern };
        Assert.False(drill.TryToScore(out _, out var refusal));
        Assert.Contains("parts of an akshara", refusal!.Message, StringComparison.Ordinal);
    }

    // What is counted before a scale is known: the notes in seven notes. A line of m notes that grows counts as m(m + 1)/2.
    [Theory]
    [InlineData("ladder", 35)] // 2 + 3 + ... + 8
    [InlineData("run + run", 16)]
    [InlineData("figure(1 2 3)", 18)] // rows from S to D
    [InlineData("figure(-1 1)", 16)] // from S to S'
    [InlineData("figure(1 8 1 1 1 1 1 1 1 1 1)", 11)]
    [InlineData("figure(25 1 1 1 1 1 1 1 1 1 1)", 11)] // one row where seven notes have none
    [InlineData("[S R G M P D / S R G M P D]", 12)]
    [InlineData("ladder.mirrored.reversed.ends", 35)] // at most
    [InlineData("run.each-note(3)", 24)]
    [InlineData("run.each-line(3)", 24)]
    [InlineData("run.repeat(3)", 24)]
    [InlineData("run.returning(1)", 16)]
    [InlineData("run.there-and-back", 16)]
    [InlineData("run.up-down", 16)]
    [InlineData("run.windows(3)", 24)]
    [InlineData("run.weave(ladder)", 43)]
    [InlineData("run.alternate(ladder)", 43)]
    [InlineData("run + ladder + run", 51)]
    [InlineData("run.grow", 36)]
    [InlineData("run.each-note(2).grow", 136)] // a line of 16
    [InlineData("run.there-and-back.grow", 136)]
    [InlineData("run.returning(1).grow", 136)]
    [InlineData("run.weave(run).grow", 136)]
    [InlineData("run.up-down.grow", 72)] // two lines of 8
    [InlineData("run.each-line(2).grow", 72)]
    [InlineData("run.repeat(2).grow", 72)]
    [InlineData("run.up-down.join.grow", 136)] // one of 16
    [InlineData("run.up-down.ends.grow", 24)] // 16 notes, by 3/2
    [InlineData("(run + [S R] + [S]).grow", 49)] // eleven notes, as if each line had the longest one's eight
    [InlineData("run.alternate([S R]).grow", 45)]
    [InlineData("[S].alternate(run).grow", 40)]
    [InlineData("[S R G / S].grow.grow.grow", 32)]
    [InlineData("ladder.grow.windows(2)", 314)]
    public void The_notes_in_a_seven_note_scale_are_counted_when_a_pattern_is_built(string text, long notes)
    {
        var pattern = Pattern.Parse(text);
        var message = Assert.ThrowsAny<ArgumentException>(() => pattern.Repeat(10_000)).Message;
        Assert.Equal($"a pattern must have at most 100000 notes in a seven-note scale, not {10_000 * notes}", message);
        Assert.True(!pattern.TryExpand(Scale.Parse("S R2 G3 M1 P D2 N3 S'"), out var expansion, out _) || expansion.NoteCount <= notes, "more notes than were counted");
    }

    [Fact]
    public void A_hundred_thousand_notes_are_the_most()
    {
        var most = Pattern.Parse("run.repeat(6250).repeat(2)");
        Assert.Equal(100_000, most.Expand(Scale.Parse("S R2 G3 M1 P D2 N3 S'")).NoteCount);
        Assert.Equal(
            "a pattern must have at most 100000 notes in a seven-note scale, not 100001",
            Assert.ThrowsAny<ArgumentException>(() => most + Pattern.Parse("[S]")).Message);
    }

    [Fact]
    public void A_thousand_parts_and_64_levels_are_the_most()
    {
        var most = Pattern.Sum([.. Enumerable.Repeat(Pattern.Run, 999)]);
        Assert.Equal(1_000, most.Nodes);
        Assert.Equal("a pattern must have at most 1000 parts, not 1001", Assert.ThrowsAny<ArgumentException>(() => most.Ends()).Message);
        Assert.Equal("a pattern must have at most 1000 parts, not 1002", Assert.ThrowsAny<ArgumentException>(() => most.Weave(Pattern.Run)).Message);

        // A word of two patterns, and a sum, stand one level above the deeper of their parts, whichever that is.
        var deep = Enumerable.Range(0, 62).Aggregate(Pattern.Run, (p, _) => p.Reversed());
        foreach (var whole in (Pattern[])[deep.Weave(Pattern.Run), Pattern.Run.Alternate(deep), deep + Pattern.Run, Pattern.Run + deep])
        {
            Assert.Equal("a pattern must have at most 64 levels, not 65", Assert.ThrowsAny<ArgumentException>(() => whole.Ends()).Message);
        }
    }

    // Fewer than 100,000 notes in seven notes, and more in a scale of 23 places, where what the last word works on is still within the bound.
    [Theory]
    [InlineData("run.repeat(4000).repeat(2)")]
    [InlineData("run.repeat(4000).each-line(2)")]
    [InlineData("run.repeat(4000).each-note(2)")]
    [InlineData("run.repeat(4000).returning(1)")]
    [InlineData("run.repeat(4000).up-down")]
    [InlineData("figure(1 1).repeat(2000).there-and-back")]
    [InlineData("run.repeat(4000).windows(2)")]
    [InlineData("run.repeat(2000).grow")]
    [InlineData("run.repeat(4000) + run.repeat(4000)")]
    [InlineData("run.repeat(4000).weave(run.repeat(4000))")]
    [InlineData("run.repeat(4000).alternate(run.repeat(4000))")]
    public void Each_word_that_makes_more_notes_keeps_to_the_bound_in_a_long_scale(string text)
    {
        var long23 = Scale.Parse("vakra: S R1 R2 R1 R2 G2 G3 G2 G3 M1 M2 M1 M2 P D1 P D1 D2 N2 D2 N2 N3 S'");
        Assert.False(Pattern.Parse(text).TryExpand(long23, out _, out var refusal));
        Assert.Equal(FindingCode.PatternTooLong, refusal.Code);
        Assert.Contains("the most is 100000", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_ladder_counts_its_notes_before_it_makes_them()
    {
        // 7 + 58 x 24 = 1,399 steps; a ladder of k steps has k(k + 3)/2 notes. Without the bound the scale's highest octave would be met first.
        var pattern = Enumerable.Range(0, 58).Aggregate(Pattern.Ladder, (p, _) => p.Above(24));
        Assert.False(pattern.TryExpand(Scale.Parse("S R2 G3 M1 P D2 N3 S'"), out _, out var refusal));
        Assert.StartsWith("the pattern would give 980699 notes", refusal.Message, StringComparison.Ordinal);
    }

    private static void Refused(Func<string?> attempt, string limit)
    {
        Assert.Contains(limit, attempt() ?? "was not refused", StringComparison.Ordinal);
        Assert.InRange(Allocation.Of(() => attempt()), 0, MostBytes - 1);
    }
}
