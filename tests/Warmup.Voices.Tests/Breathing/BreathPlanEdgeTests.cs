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

    [Theory]
    [InlineData(70, 21, true)] // 21 parts of 1/30 s leave 3 parts: exactly a tenth of a second
    [InlineData(71, 22, false)] // 22 parts would leave less
    public void A_note_keeps_at_least_a_tenth_of_a_second(int hundredths, int parts, bool isPossible)
    {
        // At 75 an akshara lasts 0.8 s and its 24th part 1/30 s. Two spans of two notes; the pair sung as one has no room.
        var score = Lines("[S S G G]").ToScore();
        var made = BreathPlan.TryMake(score, new BreathNeed(2, new Rational(hundredths, 100)), out var plan, out _);
        Assert.Equal(isPossible, made);
        if (isPossible)
        {
            Assert.Equal([(1, new Rational(parts, 24))], plan!.Breaths.Select(b => (b.AfterNote, b.Length)));
        }
    }

    [Fact]
    public void Where_a_score_has_too_fine_a_grid_for_24ths_breaths_fall_on_its_own()
    {
        // Two notes of a second and of a second and 1/1021: together with 24ths the grid would need 24,504 steps, more than files hold.
        var fine = Lines("ladder") with
        {
            Tempo = 60,
            Meter = Meter.Free,
            Expansion = new([new Line([default, new LineNote(ScaleTone.Parse("R2"), ScaleDirection.Ascent, Approach.Leap, new Rational(1022, 1021))])]),
        };
        var score = fine.ToScore();
        var grid = score.Sections[0].Resolution;
        Assert.Equal(0, grid % 1021);
        var plan = Plan(score, new Rational(3, 2), new Rational(51, 100));
        var length = new Rational((new Rational(51, 100) * grid).Ceiling(), grid);
        Assert.Equal([(0, 1 - length, length)], plan.Breaths.Select(b => (b.AfterNote, b.Onset, b.Length)));
        Assert.Equal(grid, score.WithBreaths(plan).Sections[0].Resolution);
    }
}
