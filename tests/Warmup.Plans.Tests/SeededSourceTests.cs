namespace Warmup.Plans.Tests;

/// <summary>
/// Source: the first outputs of SplitMix64 for the seeds 1234567 and 0 as they are widely published (from memory: Rosetta Code,
/// "Pseudo-random numbers/Splitmix64", and the constants in the xoshiro authors' code); computed once more outside this library.
/// </summary>
public class SeededSourceTests
{
    [Fact]
    public void The_first_numbers_are_those_of_SplitMix64()
    {
        var source = new SeededSource(1234567);
        ulong[] expected = [6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821];
        Assert.Equal(expected, expected.Select(_ => source.Next()));
        Assert.Equal(0xE220A8397B1DCDAF, new SeededSource(0).Next());
        Assert.Equal("splitmix64/1", SeededSource.Name);
    }

    [Fact]
    public void Every_number_below_a_bound_is_drawn_about_as_often()
    {
        var source = new SeededSource(5);
        var counts = new int[7];
        for (var i = 0; i < 70_000; i++)
        {
            counts[source.Below(7)]++;
        }

        // 10,000 each are expected with a standard deviation of 93.
        Assert.All(counts, c => Assert.InRange(c, 9_500, 10_500));
        Assert.Throws<ArgumentOutOfRangeException>(() => source.Below(0));
    }

    [Fact]
    public void Shuffling_keeps_each_number_once_and_reaches_every_order()
    {
        var source = new SeededSource(9);
        var orders = Enumerable.Range(0, 500).Select(_ => string.Concat(source.Shuffled(4))).ToList();
        Assert.All(orders, o => Assert.Equal("0123", string.Concat(o.Order())));
        Assert.Equal(24, orders.Distinct().Count());
    }
}
