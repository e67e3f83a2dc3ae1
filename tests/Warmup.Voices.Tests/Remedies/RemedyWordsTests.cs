namespace Warmup.Voices.Tests;

/// <summary>What remedies keep, refuse and say. Source: their documented words and ranges.</summary>
public class RemedyWordsTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Title = "Five lines",
    };

    [Fact]
    public void Another_delivery_keeps_the_breath_and_the_hold()
    {
        var own = Delivery.LineByLine with { BreathSeconds = 3, BreathGrid = 4, LeastHold = 2 };
        Assert.Equal(
            Delivery.Continuous with { BreathSeconds = 3, BreathGrid = 4, LeastHold = 2, Fill = Fill.Avartana },
            new OtherDelivery(isLineByLine: false).Apply(Drill with { Delivery = own }).Delivery);
        Assert.Equal(
            Delivery.Continuous with { BreathSeconds = 3, BreathGrid = 4, LeastHold = 2 },
            new OtherDelivery(isLineByLine: false).Apply(Drill with { Delivery = own with { Fill = Fill.None } }).Delivery);
        Assert.Equal(
            Delivery.LineByLine with { BreathSeconds = 3 },
            new OtherDelivery(isLineByLine: true).Apply(Drill with { Delivery = Delivery.Continuous with { BreathSeconds = 3 } }).Delivery);
    }

    [Theory]
    [InlineData(FillBy.Room, "each last note held only as far as its line leaves room")]
    [InlineData(FillBy.Hold, "each last note held, for one more avartana where its line leaves no room")]
    [InlineData(FillBy.Rest, "silence at the end of each line instead of a held last note")]
    public void What_fills_lines_up_is_said(FillBy by, string words) => Assert.Equal(words, new OtherFillBy(by).ToString());

    [Fact]
    public void Each_remedy_is_described_without_a_drill_too()
    {
        Assert.Equal("planned breaths (5.0 s on a breath, breaths of 0.8 s)", new PlannedBreaths(new BreathNeed(5, new Rational(4, 5))).ToString());
        Assert.Equal("planned breaths (5.0 s on a breath, breaths of 0.8 s)", new PlannedBreaths(new BreathNeed(5, new Rational(4, 5))).Describe(Drill));
        Assert.Equal("the held last note let go earlier, for a breath of 2.5 s after each line", new LongerBreath(new Rational(5, 2)).Describe(Drill));
        Assert.Equal("a tempo of 72", new OtherTempo(72).ToString());
        Assert.Equal("the tonic A3", new OtherTonic(Tonic.Parse("A3")).ToString());
        Assert.Equal("the scale Mohanam", new OtherScale(Drill.Scale).ToString());
        Assert.Equal("speed 1 then speed 2", new OtherSpeeds([Speed.First, Speed.Second]).ToString());
        Assert.Equal("line by line, together with a tempo of 72", new TwoRemedies(new OtherDelivery(isLineByLine: true), new OtherTempo(72)).ToString());
        Assert.Equal("continuous", new OtherDelivery(isLineByLine: false).ToString());
    }

    [Fact]
    public void The_second_of_two_remedies_is_told_from_what_the_first_leaves() => Assert.Equal(
        "a tempo of 72 instead of 60, together with a tempo of 90 instead of 72", new TwoRemedies(new OtherTempo(72), new OtherTempo(90)).Describe(Drill));

    [Fact]
    public void Values_out_of_range_are_refused_and_those_at_its_ends_are_not()
    {
        Assert.Equal([new Rational(1, 5), 10], [new LongerBreath(new Rational(1, 5)).Seconds, new LongerBreath(10).Seconds]);
        Assert.Throws<ArgumentOutOfRangeException>(() => new LongerBreath(new Rational(1, 10)));
        Assert.Equal(64, new OtherSpeeds(Enumerable.Repeat(Speed.First, 64).ToValueList()).Speeds.Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => new OtherSpeeds(Enumerable.Repeat(Speed.First, 65).ToValueList()));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OtherFill((Fill)3));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OtherFillBy((FillBy)3));
        Assert.StartsWith("the lines must be numbers from 1 in rising order, not 2 after 3", Assert.Throws<ArgumentException>(() => new FewerLines([3, 2])).Message, StringComparison.Ordinal);
        Assert.StartsWith("there must be at least 1 line that stays, not 0", Assert.Throws<ArgumentException>(() => new FewerLines([])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_the_drill_has_not_is_refused_with_what_it_has()
    {
        Assert.Equal(5, new FewerLines([5]).Apply(Drill).Expansion!.Lines[0].Notes.Count - 1);
        Assert.StartsWith("there is no line 6: Five lines has 5 lines", Assert.Throws<ArgumentException>(() => new FewerLines([6]).Apply(Drill)).Message, StringComparison.Ordinal);
        var one = Drill with { Pattern = Pattern.Parse("[S R]"), Title = "One" };
        Assert.StartsWith("there is no line 2: One has 1 line", Assert.Throws<ArgumentException>(() => new FewerLines([2]).Apply(one)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_advice_says_the_finding_and_each_remedy()
    {
        // C4 and C5 for a voice up to B4: one semitone lower is all that helps one line that every scale has.
        var drill = Drill with { Pattern = Pattern.Parse("[S S']"), Tempo = 60 };
        var advice = Assert.Single(drill.Advise([new Singer("Mira", NoteName.Parse("C3"), NoteName.Parse("B4"), 60)]));
        Assert.Equal("a tonic 1 semitone lower: B3", advice.Help(drill));
        Assert.Equal($"{advice.Finding.Describe()}; {advice.Help(drill)}", advice.Describe(drill));
        Assert.StartsWith(advice.Finding.Describe()[..20], advice.ToString(), StringComparison.Ordinal);
        Assert.InRange(advice.ToString().Length, 1, 200);
        Assert.Equal((string.Empty, 0), (advice.Otherwise, advice.Alone.Count));
    }

    [Fact]
    public void A_drill_is_called_too_wide_where_it_spans_more_than_the_range_and_fifty_cents_on_either_side()
    {
        // C4 to C5. A range of eleven semitones takes twelve with half of one to spare on either side; of ten it does not.
        var drill = Drill with { Pattern = Pattern.Parse("[S S']"), Meter = Meter.Free };
        ValueList<Advice> For(string high, string tonic) => (drill with { Tonic = Tonic.Parse(tonic) }).Advise([new Singer("Mira", NoteName.Parse("C2"), NoteName.Parse(high), 60)]);
        Assert.Equal("no tonic fits, since the drill spans 12 semitones and the range 10: a narrower pattern would be needed", For("Bb2", "C3")[0].Otherwise);
        Assert.DoesNotContain(For("B2", "C7"), a => a.Otherwise.StartsWith("no tonic fits", StringComparison.Ordinal));
        Assert.NotEmpty(For("B2", "C7"));
    }
}
