namespace Warmup.Voices.Tests;

/// <summary>Source: onsets and lengths counted by hand at one note a second.</summary>
public class BreathPlacesTests
{
    private static readonly Rational Half = new(1, 2);

    private static Drill Ladder(int lines) => new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder.Take(lines), Tonic = Tonic.Parse("G3"), Tempo = 60, HasDrone = false,
    };

    /// <summary>S R / S R G / S R G P with a silence before the second line.</summary>
    private static Score WithSilence(Rational seconds) => Ladder(3).ToScore().WithBreaths(0, [new Breath(2 - seconds, seconds, 1)]);

    [Fact]
    public void A_silence_that_is_just_as_long_as_the_shortest_breath_ends_a_span()
    {
        var spans = BreathSpan.Of(WithSilence(Half), Half).ToList();
        Assert.Equal([(Rational.Zero, new Rational(3, 2)), (2, 9)], spans.Select(s => (s.Start, s.End)));
        var plan = Plan(WithSilence(Half), new BreathNeed(7, Half))!;
        Assert.Empty(plan.Breaths);
        Assert.NotEmpty(Plan(WithSilence(Half), new BreathNeed(7, new Rational(51, 100)))!.Breaths);
    }

    [Fact]
    public void A_span_goes_over_lines_with_too_short_a_silence_between_them()
    {
        var span = Assert.Single(BreathSpan.Of(WithSilence(Half), new Rational(51, 100)));
        Assert.Equal((1, 3, Rational.Zero, 9), (span.First.Line, span.Last.Line, span.Start, span.End));
        Assert.False(span.IsWithinLine);
    }

    [Fact]
    public void Spans_of_a_second_section_are_counted_from_the_beginning_of_the_score()
    {
        // S R / S R G in Adi: five seconds sung, three silent.
        var part = Ladder(2).ToScore();
        var spans = BreathSpan.Of(Score.Join("two", [part, part]), 1).ToList();
        Assert.Equal([(1, 1, Rational.Zero, 5), (2, 2, 8, 13)], spans.Select(s => (s.First.Section, s.Last.Section, s.Start, s.End)));
        Assert.Equal((1, 2), (spans[1].First.Line, spans[1].Last.Line));
    }

    [Fact]
    public void A_plan_takes_the_place_of_a_breath_that_was_too_short()
    {
        // A quarter of a second stands after line 1 already; the plan makes it half a second, out of the same note.
        var score = WithSilence(new Rational(1, 4));
        var plan = Plan(score, new BreathNeed(7, Half))!;
        Assert.Equal([(1, new Rational(3, 2), Half)], plan.Breaths.Select(b => (b.AfterNote, b.Onset, b.Length)));
        var sung = score.WithBreaths(plan);
        Assert.Equal([new Breath(new Rational(3, 2), Half, 1)], sung.Sections[0].Breaths);
        Assert.Equal(new Rational(3, 2), sung.Sections[0].Notes[1].End);

        // Half of the breath is there already, which does no harm.
        Assert.Equal((1, BreathCosts.FromRest), (plan.Cost, plan.Harm));
    }

    [Fact]
    public void A_plan_that_names_a_section_which_is_not_there_is_refused()
    {
        var part = Ladder(3).ToScore();
        var plan = Plan(Score.Join("two", [part, part]), new BreathNeed(5, Half))!;
        Assert.Contains(plan.Breaths, b => b.Place.Section == 2);
        var refused = Assert.Throws<ArgumentException>(() => part.WithBreaths(plan));
        Assert.Contains("another score", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_refusal_says_where_no_plan_goes_on()
    {
        // Four runs of six notes in whole seconds, then the same four times as fast: six seconds in which no note is long enough to breathe from.
        var drill = Ladder(1) with { Pattern = Pattern.Run.Repeat(4), Speeds = [Speed.First, Speed.Third] };
        Assert.False(BreathPlan.TryMake(drill.ToScore(), new BreathNeed(4, new Rational(4, 5)), out _, out var refusal));
        Assert.Equal((5, 24, 4, "s"), (refusal!.Place!.Value.Line, refusal.Place.Value.Beat, refusal.Limit, refusal.Unit));
        Assert.StartsWith("from its note 1 on", refusal.Message, StringComparison.Ordinal);

        var inside = Ladder(1) with { Pattern = Pattern.Run.Repeat(4).Join(), Speeds = [Speed.Third] };
        Assert.False(BreathPlan.TryMake(inside.ToScore(), new BreathNeed(4, new Rational(4, 5)), out _, out refusal));
        Assert.Equal((1, Rational.Zero), (refusal!.Place!.Value.Line, refusal.Place.Value.Beat));

        var lineByLine = inside with { Delivery = Delivery.LineByLine };
        Assert.False(BreathPlan.TryMake(lineByLine.ToScore(), new BreathNeed(4, new Rational(4, 5)), out _, out _));
    }

    [Fact]
    public void A_cancelled_search_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => BreathPlan.TryMake(Ladder(3).ToScore(), new BreathNeed(5, Half), out _, out _, source.Token));
        Assert.Throws<OperationCanceledException>(() => Ladder(3).ToScore().AsSungBy(new Singer("a", NoteName.FromMidi(50), NoteName.FromMidi(70), 5), source.Token));
    }

    [Fact]
    public void A_plan_says_in_words_where_it_breathes()
    {
        Assert.Equal("no further breaths", Plan(Ladder(3).ToScore(), new BreathNeed(20, Half))!.Describe());
        var plan = Plan(Ladder(3).ToScore(), new BreathNeed(4, Half))!;
        Assert.Equal($"{plan.Breaths.Count} breaths: {string.Join("; ", plan.Breaths)}", plan.Describe());
        Assert.Equal("1 breath: after line 2", Plan(Ladder(3).ToScore(), new BreathNeed(5, Half))!.Describe());
        Assert.Equal("4.0 s on a breath, breaths of 0.5 s", new BreathNeed(4, Half).ToString());
    }

    private static BreathPlan? Plan(Score score, BreathNeed need) => BreathPlan.TryMake(score, need, out var plan, out _) ? plan : null;
}
