using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the same counts made here with the library alone, and that a sum does not depend on how it is cut.</summary>
public class PatternWorkTests
{
    private static readonly PatternJob Job = new() { Words = "ladder run figure(1 3) .reversed .ends .there-and-back .above(1) +", Size = 4, Scales = "Mohanam; Nadanamakriya; Bilahari" };

    [Fact]
    public void A_tally_counts_what_the_library_gives()
    {
        var patterns = new PatternEnumeration(PatternVocabulary.Parse(Job.Words), Job.Size);
        var all = (
            from pattern in patterns.Range(0, patterns.Count)
            from scale in (string[])["Mohanam", "Nadanamakriya", "Bilahari"]
            select pattern.TryExpand(Catalogue.Default.Read(scale), out var expansion, out _) ? expansion : null).ToList();
        var lines = all.Where(e => e is not null).Select(e => e!.Lines.ConvertAll(l => l.ToNotation())).ToList();
        var tally = new PatternWork(Job).OfAll(CancellationToken.None);
        Assert.Equal(patterns.Count, tally.Patterns);
        Assert.Equal(all.Count(e => e is null), tally.Refused);
        Assert.True(tally.Refused > 0, "a scale without an upper tonic was to refuse what goes beyond it");
        Assert.Equal(lines.Sum(l => l.Count), tally.Lines);
        Assert.Equal(all.Sum(e => e?.NoteCount ?? 0), tally.Notes);
        Assert.Equal(0, tally.Broken);
        Assert.Equal(all.Count(e => e is not null && e.Lines.All(l => l.Notes.Select(n => n.Tone).SequenceEqual(l.Notes.Select(n => n.Tone).Reverse()))), tally.Palindromes);
    }

    [Property(MaxTest = 10)]
    public Property The_sum_does_not_depend_on_the_length_or_the_order_of_the_ranges()
    {
        var whole = new PatternWork(Job).OfAll(CancellationToken.None);
        return Prop.ForAll(Gen.Choose(1, 400).ToArbitrary(), length =>
        {
            var work = new PatternWork(Job with { RangeLength = length });
            var sum = Tally.Empty;
            for (var range = work.Ranges - 1; range >= 0; range--)
            {
                sum += work.Of(range, CancellationToken.None);
            }

            return sum == whole && work.Ranges == (whole.Patterns + length - 1) / length;
        });
    }

    [Fact]
    public void A_part_of_the_indexes_is_that_part()
    {
        var whole = new PatternWork(Job).OfAll(CancellationToken.None);
        var sum = Tally.Empty;
        foreach (var part in (PatternJob[])[Job with { Most = 100, RangeLength = 30 }, Job with { First = 100 }, Job with { First = long.MaxValue / 2 }])
        {
            Assert.Null(part.Problem());
            sum += new PatternWork(part).OfAll(CancellationToken.None);
        }

        Assert.Equal(whole, sum);
    }

    [Fact]
    public void A_sample_is_spread_over_all_indexes()
    {
        var work = new PatternWork(Job with { RangeLength = 1 });
        Assert.Equal(work.OfAll(CancellationToken.None), work.OfSpread(int.MaxValue, CancellationToken.None));
        var count = (int)Job.Count();
        var thirds = work.Of(0, CancellationToken.None) + work.Of(count / 3, CancellationToken.None) + work.Of(2 * count / 3, CancellationToken.None);
        Assert.Equal(thirds, work.OfSpread(3, CancellationToken.None));
    }

    [Fact]
    public void A_checksum_tells_an_index_that_is_missing_or_there_twice()
    {
        var work = new PatternWork(Job with { RangeLength = 1 });
        var ranges = Enumerable.Range(0, work.Ranges).Select(r => work.Of(r, CancellationToken.None).Checksum).ToList();
        Assert.DoesNotContain(0UL, ranges);
        Assert.Equal(ranges.Count, ranges.Distinct().Count());
    }

    [Theory]
    [InlineData(0, 1_000, "1 and 12, not 0")]
    [InlineData(13, 1_000, "1 and 12, not 13")]
    [InlineData(2, 0, "1 and 1000000, not 0")]
    [InlineData(12, 1, "more than 10000000 ranges")]
    public void Wrong_jobs_say_what_is_allowed(int size, int length, string said) =>
        Assert.Contains(said, new PatternJob { Size = size, RangeLength = length }.Problem(), StringComparison.Ordinal);

    [Fact]
    public void Words_and_scales_are_bounded_and_read()
    {
        Assert.Null(new PatternJob().Problem());
        Assert.NotNull((Job with { Words = "ladder .nothing" }).Problem());
        Assert.NotNull((Job with { Words = new string(' ', 2_000) + "ladder" }).Problem());
        Assert.NotNull((Job with { Scales = "no such scale" }).Problem());
        Assert.NotNull((Job with { Scales = " ; " }).Problem());
        Assert.NotNull((Job with { Scales = string.Join(';', Enumerable.Repeat("Mohanam", 17)) }).Problem());
        Assert.NotNull((Job with { First = -1 }).Problem());
        Assert.NotNull((Job with { Most = 0 }).Problem());
    }
}
