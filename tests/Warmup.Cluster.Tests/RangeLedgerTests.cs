using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the promise itself, every range done and none counted twice, under any order of workers that ask, deliver late or twice, leave,
/// fall silent and come back.
/// </summary>
public class RangeLedgerTests
{
    private const int Workers = 4;

    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(10);

    private static Arbitrary<(int Ranges, (int What, int Worker)[] Steps)> Histories =>
        Gen.Choose(1, 12).SelectMany(ranges => Gen.Choose(0, 99).SelectMany(what => Gen.Choose(0, Workers - 1).Select(worker => (what, worker)))
            .ArrayOf().Select(steps => (ranges, steps))).ToArbitrary();

    [Property(MaxTest = 2_000)]
    public Property Every_range_is_counted_once_whatever_happens() => Prop.ForAll(Histories, c =>
    {
        var ledger = new RangeLedger<int>(c.Ranges, Silence);
        var now = TimeSpan.Zero;
        var given = new Dictionary<int, int>();
        var counted = new List<int>();
        var holders = new Dictionary<int, int>();
        var agrees = true;
        foreach (var (what, worker) in c.Steps)
        {
            now += TimeSpan.FromSeconds(1);
            switch (what)
            {
                case < 40:
                    if (ledger.Hand(worker, now) is { } range)
                    {
                        // Never one that is done, and never one that another still has.
                        agrees &= !counted.Contains(range) && !holders.Any(h => h.Value == range && h.Key != worker);
                        given[worker] = holders[worker] = range;
                    }
                    else
                    {
                        agrees &= Enumerable.Range(0, c.Ranges).All(r => counted.Contains(r) || holders.Any(h => h.Value == r));
                        holders.Remove(worker);
                    }

                    break;
                case < 75 when given.TryGetValue(worker, out var late):
                    // Also by one that has lost it, and also a second time.
                    var counts = ledger.Accept(worker, late);
                    agrees &= counts != counted.Contains(late);
                    if (counts)
                    {
                        counted.Add(late);
                    }

                    if (holders.TryGetValue(worker, out var mine) && mine == late)
                    {
                        holders.Remove(worker);
                    }

                    break;
                case < 85:
                    ledger.Hear(worker, now);
                    break;
                case < 95:
                    agrees &= (ledger.Leave(worker) is not null) == (holders.Remove(worker, out var left) && !counted.Contains(left));
                    break;
                default:
                    now += TimeSpan.FromSeconds(6);
                    foreach (var silent in ledger.Expire(now))
                    {
                        agrees &= holders.Remove(silent);
                    }

                    break;
            }

            agrees &= ledger.Done == counted.Count && ledger.IsComplete == (counted.Count == c.Ranges);
        }

        // One new worker does what is left, once the others have been silent for long.
        now += Silence + TimeSpan.FromSeconds(1);
        ledger.Expire(now);
        while (ledger.Hand(Workers, now) is { } range)
        {
            agrees &= ledger.Accept(Workers, range);
            counted.Add(range);
        }

        return agrees && ledger.IsComplete && counted.Order().SequenceEqual(Enumerable.Range(0, c.Ranges));
    });

    [Fact]
    public void A_worker_falls_silent_only_when_it_has_not_been_heard_of_for_longer_than_allowed()
    {
        var ledger = new RangeLedger<string>(3, Silence);
        Assert.Equal(0, ledger.Hand("Wren", TimeSpan.Zero));
        Assert.Equal(0, ledger.Hand("Wren", TimeSpan.Zero));
        Assert.Equal(1, ledger.Hand("Linnet", TimeSpan.FromSeconds(3)));
        Assert.Empty(ledger.Expire(Silence));
        ledger.Hear("Wren", TimeSpan.FromSeconds(9));
        Assert.Equal(["Linnet"], ledger.Expire(TimeSpan.FromSeconds(14)));
        Assert.Equal(1, ledger.TakenBack);
        Assert.Equal(1, ledger.Hand("Pipit", TimeSpan.FromSeconds(14)));
        Assert.True(ledger.Accept("Linnet", 1));
        Assert.False(ledger.Accept("Pipit", 1));
        Assert.Equal(2, ledger.Hand("Pipit", TimeSpan.FromSeconds(15)));
    }

    [Fact]
    public void A_range_that_does_not_exist_counts_for_nothing()
    {
        var ledger = new RangeLedger<int>(2, Silence);
        Assert.False(ledger.Accept(0, -1));
        Assert.False(ledger.Accept(0, 2));
        Assert.Equal(0, ledger.Done);
    }
}
