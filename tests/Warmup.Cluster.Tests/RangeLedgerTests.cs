using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the promise itself, every range done and none counted twice, under any order of workers that ask, deliver late or twice, leave
/// and come back, and of ledgers that are lost.
/// </summary>
public class RangeLedgerTests
{
    private const int Workers = 4;

    private static Arbitrary<(int Ranges, (int What, int Worker)[] Steps)> Histories =>
        Gen.Choose(1, 12).SelectMany(ranges => Gen.Choose(0, 99).SelectMany(what => Gen.Choose(0, Workers - 1).Select(worker => (what, worker)))
            .ArrayOf().Select(steps => (ranges, steps))).ToArbitrary();

    [Property(MaxTest = 2_000)]
    public Property Every_range_is_counted_once_whatever_happens() => Prop.ForAll(Histories, c =>
    {
        var ledger = new RangeLedger<int>(c.Ranges);
        var given = new Dictionary<int, int>();
        var counted = new List<int>();
        var holders = new Dictionary<int, int>();
        var agrees = true;
        foreach (var (what, worker) in c.Steps)
        {
            switch (what)
            {
                case < 40:
                    if (ledger.Hand(worker) is { } range)
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
                case < 90:
                    agrees &= (ledger.Leave(worker) is not null) == (holders.Remove(worker, out var left) && !counted.Contains(left));
                    break;
                default:
                    // The ledger is lost; a new one learns what is done, and from the workers what they have.
                    ledger = new RangeLedger<int>(c.Ranges);
                    counted.ForEach(done => agrees &= ledger.Accept(done));
                    foreach (var (holder, has) in holders)
                    {
                        ledger.Hold(holder, has);
                    }

                    break;
            }

            agrees &= ledger.Done == counted.Count && ledger.IsComplete == (counted.Count == c.Ranges);
        }

        // One new worker does what is left, once the others have gone.
        for (var worker = 0; worker < Workers; worker++)
        {
            ledger.Leave(worker);
        }

        while (ledger.Hand(Workers) is { } range)
        {
            agrees &= ledger.Accept(Workers, range);
            counted.Add(range);
        }

        return agrees && ledger.IsComplete && counted.Order().SequenceEqual(Enumerable.Range(0, c.Ranges));
    });

    [Property(MaxTest = 500)]
    public Property Stretches_are_the_ranges_that_are_done() => Prop.ForAll(Gen.Choose(1, 40).SelectMany(ranges => Gen.Choose(-1, 40).ArrayOf().Two().Select(lists => (ranges, lists))).ToArbitrary(), c =>
    {
        var ledger = new RangeLedger<int>(c.ranges);
        var done = c.lists.Item1.Where(range => ledger.Accept(range)).ToHashSet();
        var without = c.lists.Item2.ToHashSet();
        var stretches = ledger.Stretches(without);
        return stretches.SelectMany(s => Enumerable.Range(s[0], s[1] - s[0] + 1)).SequenceEqual(done.Except(without).Order())
            && stretches.Zip(stretches.Skip(1), (one, next) => next[0] > one[1] + 1).All(apart => apart);
    });

    [Fact]
    public void A_range_that_a_worker_has_from_before_is_not_given_to_another_until_it_leaves()
    {
        var ledger = new RangeLedger<string>(3);
        ledger.Hold("Wren", 1);
        ledger.Hold("Pipit", 1); // had it after Wren was suspected
        Assert.Equal(0, ledger.Hand("Linnet"));
        Assert.Equal(2, ledger.Hand("Pipit"));
        Assert.Equal(1, ledger.Hand("Wren"));
        Assert.Null(ledger.Hand("Finch"));
        Assert.Equal(1, ledger.Leave("Wren"));
        Assert.Equal(1, ledger.TakenBack);
        Assert.Equal(1, ledger.Hand("Finch"));
    }

    [Fact]
    public void A_range_that_does_not_exist_counts_for_nothing()
    {
        var ledger = new RangeLedger<int>(2);
        Assert.False(ledger.Accept(0, -1));
        Assert.False(ledger.Accept(0, 2));
        ledger.Hold(0, 2);
        ledger.Hold(0, -1);
        Assert.Equal(0, ledger.Done);
    }
}
