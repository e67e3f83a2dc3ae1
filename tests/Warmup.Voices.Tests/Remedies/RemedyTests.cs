namespace Warmup.Voices.Tests;

/// <summary>What each kind of remedy does to a drill, in the trade's words. Source: the words' own meaning; sizes are the project's own weights.</summary>
public class RemedyTests
{
    private static readonly Drill Drill = new() { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") };

    [Fact]
    public void Each_change_is_made_and_nothing_else()
    {
        Assert.Equal(Drill with { Tonic = Tonic.Parse("A3") }, new OtherTonic(Tonic.Parse("A3")).Apply(Drill));
        Assert.Equal(Drill with { Tempo = 72 }, new OtherTempo(72).Apply(Drill));
        Assert.Equal(Drill with { Speeds = [Speed.Second] }, new OtherSpeeds([Speed.Second]).Apply(Drill));
        Assert.Equal(Drill with { Scale = Catalogue.Default.Read("15") }, new OtherScale(Catalogue.Default.Read("15")).Apply(Drill));
        Assert.Equal(Drill with { Delivery = Delivery.LineByLine }, new OtherDelivery(true).Apply(Drill));
        Assert.Equal(Drill with { Delivery = Delivery.Continuous with { Fill = Fill.Anga } }, new OtherFill(Fill.Anga).Apply(Drill));
        Assert.Equal(FillBy.Rest, new OtherFillBy(FillBy.Rest).Apply(Drill).Delivery.FillBy);
        Assert.Equal(3, new LongerBreath(3).Apply(Drill).Delivery.BreathSeconds);
        Assert.Equal([1, 3], new FewerLines([1, 3]).Apply(Drill).Expansion!.Lines.ConvertAll(l => l.Notes.Count - 1));
        Assert.Equal(Drill, new PlannedBreaths(new BreathNeed(5, 1)).Apply(Drill));
        Assert.Equal(Drill with { Tempo = 72, Delivery = Delivery.LineByLine }, new TwoRemedies(new OtherDelivery(true), new OtherTempo(72)).Apply(Drill));
    }

    [Fact]
    public void Lines_that_were_filled_up_stay_so_line_by_line()
    {
        var filled = Drill with { Delivery = Delivery.Continuous with { Fill = Fill.Anga, FillBy = FillBy.Rest } };
        Assert.Equal((Fill.Anga, FillBy.Rest, true), (new OtherDelivery(true).Apply(filled).Delivery is var d ? (d.Fill, d.FillBy, d.IsLineByLine) : default));
    }

    [Theory]
    [InlineData("G3", "a tonic 5 semitones lower: G3")]
    [InlineData("C#4", "a tonic 1 semitone higher: C#4")]
    [InlineData("C3", "the tonic an octave lower: C3")]
    [InlineData("C5", "the tonic an octave higher: C5")]
    [InlineData("C4", "the tonic C4")]
    [InlineData("A3, A4=432Hz", "a tonic 3 semitones lower: A3, A4=432Hz")]
    [InlineData("208.123Hz", "a tonic 4 semitones lower: 208.123Hz")]
    public void A_tonic_is_told_with_its_way(string tonic, string expected)
    {
        var remedy = new OtherTonic(Tonic.Parse(tonic));
        Assert.Equal(expected, remedy.Describe(Drill));
        Assert.Equal(Tonic.Parse(tonic), Tonic.Parse(remedy.Text));
    }

    [Fact]
    public void A_tonic_that_no_short_frequency_means_is_written_whole()
    {
        var tonic = Tonic.FromHz(1000.0 / 3);
        Assert.Equal(tonic, Tonic.Parse(new OtherTonic(tonic).Text));
    }

    [Fact]
    public void Words_compare_with_the_drill()
    {
        Assert.Equal("a tempo of 72 instead of 60", new OtherTempo(72).Describe(Drill));
        Assert.Equal("speed 2 instead of speed 1", new OtherSpeeds([Speed.Second]).Describe(Drill));
        Assert.Equal("the scale Mayamalavagowla instead of Mohanam", new OtherScale(Catalogue.Default.Read("15")).Describe(Drill));
        Assert.Equal("only lines 1-3, 5", new FewerLines([1, 2, 3, 5]).Describe(Drill));
        Assert.Equal("only line 2", new FewerLines([2]).ToString());
        Assert.Equal(
            "line by line, with a breath after each, together with a tempo of 72 instead of 60", new TwoRemedies(new OtherDelivery(true), new OtherTempo(72)).Describe(Drill));
    }

    [Fact]
    public void Values_that_mean_no_change_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new FewerLines([]));
        Assert.Throws<ArgumentException>(() => new FewerLines([0]));
        Assert.Throws<ArgumentException>(() => new FewerLines([2, 2]));
        Assert.Contains("no line 6", Assert.Throws<ArgumentException>(() => new FewerLines([1, 6]).Apply(Drill)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new LongerBreath(11));
        Assert.Throws<ArgumentOutOfRangeException>(() => new OtherSpeeds([]));
        Assert.Equal(new FewerLines([1, 2]), new FewerLines([1, 2]));
    }

    [Fact]
    public void Planned_breaths_are_put_into_the_score_where_there_is_a_plan()
    {
        // Twenty notes of a second each on 9 s: a plan; 24ths of an akshara leave no breath of 5 s before 1 s is over: none.
        var score = Drill.ToScore();
        Assert.NotEmpty(new PlannedBreaths(new BreathNeed(9, new Rational(4, 5))).Apply(score).Sections[0].Breaths);
        Assert.Equal(score, new PlannedBreaths(new BreathNeed(1, 5)).Apply(score));
    }
}
