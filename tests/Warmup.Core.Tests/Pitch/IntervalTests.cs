namespace Warmup.Tests;

/// <summary>Intervals put together and as text. Sources: the cent's definition (1200 to an octave), and the documented forms.</summary>
public class IntervalTests
{
    [Fact]
    public void Exact_intervals_add_up_exactly()
    {
        Interval fifth = Interval.Parse("3/2"), fourth = Interval.Parse("4/3");
        Assert.Equal(new Rational(2), (fifth + fourth).Ratio);
        Assert.Equal(new Rational(9, 8), (fifth - fourth).Ratio);
        Assert.Equal(1200, (fifth + fourth).Cents, 1e-9);
    }

    [Fact]
    public void With_cents_in_it_a_sum_has_only_cents()
    {
        var sum = Interval.Parse("3/2") + Interval.Parse("100c");
        Assert.Null(sum.Ratio);
        Assert.Equal(801.955, sum.Cents, 0.0005);
        Assert.Equal(601.955, (Interval.Parse("3/2") - Interval.Parse("100c")).Cents, 0.0005);
    }

    [Theory]
    [InlineData("9/8", "9/8")]
    [InlineData("2", "2/1")]
    [InlineData("6/4", "3/2")]
    [InlineData("386.314c", "386.314c")]
    [InlineData("-120000C", "-120000c")]
    [InlineData("120000c", "120000c")]
    [InlineData("0c", "1/1")]
    [InlineData("0.00001c", "0.00001c")] // no exponent, which the text form does not have, and no digits that nobody typed
    [InlineData("-0.000000125c", "-0.000000125c")]
    public void What_is_typed_is_printed_in_the_form_that_is_read(string typed, string printed)
    {
        Assert.Equal(printed, Interval.Parse(typed).ToString());
        Assert.Equal(Interval.Parse(typed), Interval.Parse(printed));
    }

    [Theory]
    [InlineData("120000.1c", "number of cents")]
    [InlineData("-120000.1c", "number of cents")]
    [InlineData("c", "number of cents")]
    [InlineData("1e3c", "number of cents")]
    [InlineData("1.5", "is not an interval")]
    [InlineData("0", "is not an interval")]
    [InlineData("-3/2", "is not an interval")]
    [InlineData("x", "is not an interval")]
    [InlineData("", "the interval is missing")]
    public void What_is_no_interval_says_so(string text, string reason)
    {
        Assert.False(Interval.TryParse(text, out var interval, out var error));
        Assert.Equal(default, interval);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Equal_cents_are_equal_and_a_ratio_is_not_its_cents()
    {
        Assert.True(Interval.FromCents(702) == Interval.FromCents(702));
        Assert.True(Interval.FromCents(702) != Interval.FromCents(701));
        Assert.False(Interval.FromRatio(2).Equals(Interval.FromCents(1200)));
        Assert.False(Interval.FromCents(1200).Equals(Interval.FromRatio(2)));
        Assert.False(Interval.FromRatio(2).Equals("2"));
        Assert.True(Interval.FromRatio(2).Equals((object)Interval.FromRatio(2)));
    }

    [Fact]
    public void A_frequency_above_is_the_ratio_or_the_cents_times_it()
    {
        Assert.Equal(330, Interval.Parse("3/2").Above(220));
        Assert.Equal(82.5, Interval.Parse("3/2").Above(220, -2));
        Assert.Equal(880, Interval.Parse("1200c").Above(220, 1), 1e-9);
    }
}
