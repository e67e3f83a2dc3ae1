namespace Warmup.Voices.Tests;

/// <summary>Edges of breath plans, counted by hand. Source: the rules' section on breath and this project's settings.</summary>
public class BreathPlanEdgeTests
{
    private static Drill Lines(string pattern, Delivery? delivery = null) => new()
    {
        Scale = Catalogue.Default.Read("mohanam"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.Parse("C4"),
        Tempo = 75,
        Delivery = delivery ?? Delivery.Continuous,
    };

    private static BreathPlan Plan(Score score, Rational capacity, Rational shortest)
    {
        Assert.True(BreathPlan.TryMake(score, new BreathNeed(capacity, shortest), out var plan, out _));
        return plan;
    }

    [Fact]
    public void A_rest_exactly_as_long_as_the_shortest_breath_needs_no_further_breath()
    {
        // At 75 an akshara lasts 0.8 s, and so does the breath after each line. Four notes fill a tala of five.
        var score = (Lines("[S R G P] + [S R G P]", Delivery.LineByLine with { BreathSeconds = new Rational(4, 5), Fill = Fill.None }) with { Meter = Meter.Parse("5/4") }).ToScore();
        Assert.Empty(Plan(score, 4, new Rational(4, 5)).Breaths);
        Assert.NotEmpty(Plan(score, 4, new Rational(81, 100)).Breaths);
    }

    [Fact]
    public void A_plan_adds_to_the_breaths_that_a_score_has_already()
    {
        var score = Lines("[S R G P] + [S R G P]").ToScore();
        var first = score.WithBreaths(Plan(score, 4, new Rational(2, 5)));
        var further = Plan(first, 2, new Rational(2, 5));
        var second = first.WithBreaths(further);
        Assert.Equal(first.Sections[0].Breaths.Count + further.Breaths.Count, second.Sections[0].Breaths.Count);
        Assert.True(BreathSpan.Of(second, new Rational(2, 5)).All(s => s.Seconds <= 2));
        Assert.Empty(Plan(second, 2, new Rational(2, 5)).Breaths);
    }

    [Fact]
    public void A_plan_that_names_a_section_that_is_not_there_is_refused()
    {
        var part = Lines("[S R G P D]").ToScore();
        var plan = Plan(Score.Join("both", [part, part]), 3, new Rational(2, 5));
        Assert.Contains(plan.Breaths, b => b.Place.Section == 2);
        Assert.Contains("another score", Assert.Throws<ArgumentException>(() => part.WithBreaths(plan)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_names_the_line_and_the_note_from_which_no_breath_can_be_reached()
    {
        // The first line's notes (0.8 s) are long enough to breathe from, those of the second (0.2 s, and 3.2 s together) are not.
        var score = Lines("[S R G P] + [S R G P D P G R S R G P D P G R].shrink(4)");
        Assert.False(BreathPlan.TryMake(score.ToScore(), new BreathNeed(2, new Rational(2, 5)), out _, out var refusal));
        Assert.Equal(2, refusal!.Place!.Value.Line);
        Assert.Equal(4, refusal.Place.Value.Beat);
        Assert.StartsWith("from its note 1 on", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plan_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var score = Lines("ladder").ToScore();
        Assert.Throws<OperationCanceledException>(() => BreathPlan.TryMake(score, new BreathNeed(5, 1), out _, out _, stop.Token));
    }
}
