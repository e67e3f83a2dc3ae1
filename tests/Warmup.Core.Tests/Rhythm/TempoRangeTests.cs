namespace Warmup.Tests;

/// <summary>Source: the bounds of <see cref="Tempo"/>.</summary>
public class TempoRangeTests
{
    [Fact]
    public void A_range_holds_its_ends() =>
        Assert.Equal((new Rational(107, 2), (Rational)90), (new TempoRange(new Rational(107, 2), 90).Slowest, new TempoRange(new Rational(107, 2), 90).Fastest));

    [Theory]
    [InlineData(9, 60, "10")]
    [InlineData(60, 401, "400")]
    [InlineData(90, 60, "90")]
    public void Tempi_outside_the_bounds_or_upside_down_are_refused(int slowest, int fastest, string bound) =>
        Assert.Contains(bound, Assert.Throws<ArgumentOutOfRangeException>(() => new TempoRange(slowest, fastest)).Message, StringComparison.Ordinal);

    [Fact]
    public void It_prints_both_ends_or_the_one_tempo() =>
        Assert.Equal(("54 to 90", "60"), (new TempoRange(54, 90).ToString(), new TempoRange(60, 60).ToString()));
}
