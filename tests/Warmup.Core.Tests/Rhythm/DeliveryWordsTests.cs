namespace Warmup.Tests;

/// <summary>What a delivery says of itself, and its bounds. Source: the documented defaults and ranges (the project's own settings).</summary>
public class DeliveryWordsTests
{
    [Theory]
    [InlineData(false, Fill.None, FillBy.Room, "continuous")]
    [InlineData(true, Fill.Avartana, FillBy.Room, "line by line")]
    [InlineData(true, Fill.None, FillBy.Room, "line by line, lines not filled up")]
    [InlineData(false, Fill.None, FillBy.Rest, "continuous, lines not filled up")]
    [InlineData(false, Fill.Anga, FillBy.Room, "continuous, each line filled up to the anga by a hold")]
    [InlineData(true, Fill.Anga, FillBy.Room, "line by line, each line filled up to the anga")]
    [InlineData(true, Fill.Avartana, FillBy.Hold, "line by line, each line filled up to the avartana by a hold")]
    [InlineData(false, Fill.Avartana, FillBy.Rest, "continuous, each line filled up to the avartana by a rest")]
    public void The_fill_is_said_where_it_is_not_the_usual_one(bool isLineByLine, Fill fill, FillBy by, string said) =>
        Assert.Equal(said, ((isLineByLine ? Delivery.LineByLine : Delivery.Continuous) with { Fill = fill, FillBy = by }).ToString());

    [Theory]
    [InlineData(60, 2, "1", "1")]
    [InlineData(61, 2, "1", "3/2")] // 61/60 of an akshara, rounded up to halves
    [InlineData(75, 24, "4/5", "1")]
    [InlineData(60, 24, "7/10", "17/24")] // 16.8 parts of 24
    [InlineData(60, 1, "1/5", "1")]
    public void A_breath_in_seconds_is_rounded_up_to_the_grid(int tempo, int grid, string seconds, string aksharas)
    {
        var delivery = Delivery.LineByLine with { BreathGrid = grid, BreathSeconds = Rational.Parse(seconds) };
        Assert.Equal(Rational.Parse(aksharas), delivery.BreathAksharas(tempo));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(12)]
    [InlineData(24)]
    public void The_grid_divides_24(int grid) => Assert.Equal(grid, (Delivery.LineByLine with { BreathGrid = grid }).BreathGrid);

    [Theory]
    [InlineData(0, "between 1 and 24, not 0")]
    [InlineData(25, "between 1 and 24, not 25")]
    [InlineData(5, "must divide 24, and 5 does not")]
    public void Another_grid_is_refused(int grid, string reason) =>
        Assert.Contains(reason, Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathGrid = grid }).Message, StringComparison.Ordinal);

    [Fact]
    public void The_defaults_are_a_breath_of_a_second_in_halves_and_a_hold_of_one()
    {
        foreach (var delivery in (Delivery[])[Delivery.Continuous, Delivery.LineByLine])
        {
            Assert.Equal((Rational.One, 2, Rational.One, FillBy.Room), (delivery.BreathSeconds, delivery.BreathGrid, delivery.LeastHold, delivery.FillBy));
        }

        Assert.Equal((false, Fill.None, true, Fill.Avartana), (Delivery.Continuous.IsLineByLine, Delivery.Continuous.Fill, Delivery.LineByLine.IsLineByLine, Delivery.LineByLine.Fill));
        Assert.Equal((10, new Rational(1, 4)), ((Delivery.LineByLine with { BreathSeconds = 10 }).BreathSeconds, (Delivery.LineByLine with { LeastHold = new Rational(1, 4) }).LeastHold));
    }

    [Fact]
    public void Lengths_and_fills_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathSeconds = new Rational(19, 100) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathSeconds = new Rational(101, 10) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { LeastHold = new Rational(24, 100) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { LeastHold = 65 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { Fill = (Fill)3 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { FillBy = (FillBy)(-1) });
        Assert.Equal((new Rational(1, 5), 64), ((Delivery.LineByLine with { BreathSeconds = new Rational(1, 5) }).BreathSeconds, (Delivery.LineByLine with { LeastHold = 64 }).LeastHold));
    }
}
