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

    private static void Refused(Func<string?> attempt, string limit)
    {
        Assert.Contains(limit, attempt() ?? "was not refused", StringComparison.Ordinal);
        Assert.InRange(Allocation.Of(() => attempt()), 0, MostBytes - 1);
    }
}
