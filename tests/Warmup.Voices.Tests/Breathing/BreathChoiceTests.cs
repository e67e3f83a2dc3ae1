namespace Warmup.Voices.Tests;

/// <summary>
/// Which of several breaths a plan takes, and how long it lets a note sound. Source: the documented costs and harms of <see cref="BreathCosts"/>,
/// counted by hand at one akshara a second unless a tempo is named.
/// </summary>
public class BreathChoiceTests
{
    private static readonly Rational Half = new(1, 2);

    private static Drill Lines(string pattern) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("G3"), Tempo = 60, Meter = Meter.Free, HasDrone = false,
    };

    /// <summary>Lines of an avartana of eight aksharas, whose last note is held up to a breath.</summary>
    private static Drill Held(string pattern, Rational breath) => Lines(pattern) with { Meter = Meter.Adi, Delivery = Delivery.LineByLine with { BreathSeconds = breath, BreathGrid = 24 } };

    private static BreathPlan? Plan(Score score, Rational capacity, Rational shortest) =>
        BreathPlan.TryMake(score, new BreathNeed(capacity, shortest), out var plan, out _) ? plan : null;

    private static (int AfterNote, Rational Onset, Rational Length)[] Breaths(Score score, Rational capacity, Rational shortest) =>
        [.. Plan(score, capacity, shortest)!.Breaths.Select(b => (b.AfterNote, b.Onset, b.Length))];

    [Theory]
    [InlineData("[S R , G M]", 1, 1)] // R lasts twice as long as the shortest note: it counts as held
    [InlineData("[S R G M P]", 0, 3)] // no note is better than another: the earliest
    [InlineData("[S R G S' N]", 2, 2)] // before the sixth up
    [InlineData("[S M R G M]", 0, 2)] // before the fourth up, the least leap
    public void A_breath_does_least_harm_after_a_held_note_then_before_a_leap(string line, int afterNote, int harm)
    {
        var breath = Assert.Single(Plan(Lines(line).ToScore(), 4, Half)!.Breaths);
        Assert.Equal((afterNote, 3, harm), (breath.AfterNote, breath.Cost, breath.Harm));
    }

    [Fact]
    public void Only_less_than_half_of_the_note_before_is_a_further_harm()
    {
        var score = Lines("[S R G M P]").ToScore();
        Assert.Equal(3, Plan(score, 4, Half)!.Harm);
        Assert.Equal(5, Plan(score, 4, new Rational(13, 24))!.Harm);
    }

    [Fact]
    public void A_note_is_counted_within_its_line()
    {
        // Eight seconds in spans of at most four: one breath inside the second line costs 3; one at the first line's end, another inside, 4.
        var plan = Plan(Lines("[S R] + [S R G M P D]").ToScore(), 4, Half)!;
        Assert.Equal((3, 2), (plan.Breaths.Single().AfterNote, plan.Breaths.Single().NoteInLine));
        Assert.Equal("1 breath: in line 2 after note 2", plan.Describe());
    }

    [Theory]
    [InlineData("[S R G R S]")]
    [InlineData("[S' N D N S']")]
    public void The_end_of_a_section_is_the_end_of_a_line(string line)
    {
        var part = Lines(line).ToScore();
        var breath = Assert.Single(Plan(Score.Join("twice", [part, part]), 5, Half)!.Breaths);
        Assert.Equal((1, 4, true, 1), (breath.Place.Section, breath.AfterNote, breath.IsAtLineEnd, breath.Cost));
        Assert.Equal((new Rational(9, 2), Half), (breath.Onset, breath.Length));
    }

    [Fact]
    public void A_span_may_last_exactly_as_long_as_the_breath()
    {
        var score = Lines("[S , R]").ToScore();
        Assert.Equal([(0, new Rational(3, 2), Half)], Breaths(score, new Rational(3, 2), Half));
        Assert.Null(Plan(score, new Rational(149, 100), Half));
    }

    [Fact]
    public void A_held_note_is_let_go_where_the_capacity_ends_also_before_a_rest_that_is_too_short()
    {
        // Held to 7.75; a quarter of a second is no breath of 0.8 s.
        var score = Held("[S R] + [S R]", new Rational(1, 4)).ToScore();
        Assert.Equal([(1, 5, 3), (3, 13, 3)], Breaths(score, 5, new Rational(4, 5)));
        Assert.All(Plan(score, 5, new Rational(4, 5))!.Breaths, b => Assert.True(b.IsEarlyRelease && b.IsAtLineEnd));
    }

    [Fact]
    public void A_held_note_is_let_go_on_the_last_24th_that_lies_within_the_capacity()
    {
        // 7.72 s are 185.28 parts; the note ends with part 186.
        Assert.Equal([(1, new Rational(185, 24), new Rational(7, 24))], Breaths(Held("[S R]", new Rational(1, 4)).ToScore(), new Rational(772, 100), new Rational(4, 5)));
    }

    [Theory]
    [InlineData(90, true)] // at 75: 0.8 s, and 3 parts of 1/30 s: exactly a tenth of a second
    [InlineData(89, false)]
    public void A_held_note_that_is_let_go_sounds_for_at_least_a_tenth_of_a_second(int hundredths, bool isPossible)
    {
        var plan = Plan((Held("[S R]", new Rational(4, 5)) with { Tempo = 75 }).ToScore(), new Rational(hundredths, 100), new Rational(4, 5));
        Assert.Equal(isPossible ? [(1, new Rational(9, 8))] : null, plan?.Breaths.Select(b => (b.AfterNote, b.Onset)));
    }

    [Theory]
    [InlineData(25, false)] // held to 7.75, which is too long and no breath of 0.3 s: let go at 7.5
    [InlineData(75, true)] // held to 7.25, and a breath already
    public void A_rest_ends_a_span_where_a_held_note_needs_none(int hundredths, bool hasRest)
    {
        var plan = Plan(Held("[S R] + [S R]", new Rational(hundredths, 100)).ToScore(), new Rational(15, 2), new Rational(3, 10))!;
        Assert.Equal(hasRest ? 0 : 2, plan.Breaths.Count);
    }

    [Theory]
    [InlineData("[S S S S]", 3, false)] // notes of one pitch are sung as one
    [InlineData("[S S R R]", 2, true)]
    [InlineData("[S S R R]", 1, false)]
    public void Notes_of_one_pitch_are_sung_as_one(string line, int capacity, bool isPossible) =>
        Assert.Equal(isPossible, Plan(Lines(line).ToScore(), capacity, Half) is not null);

    [Fact]
    public void Breaths_open_the_tempi_at_which_a_held_note_can_be_let_go_or_the_note_before_it_shortened()
    {
        // On one second, with breaths of 0.8 s. Up to 65 a minute a breath fits behind S, which keeps a tenth of a second (at 65 3 of 24 parts of 0.923
        // s) and from 33 on at most one (13 of 24 parts of 1.818 s). At 66 and 67 S is too short for a breath and too long for R to
        // sound a tenth of a second on the same one; from 68 on it does (3 parts, 0.11 s).
        var window = TempoWindow.OfSpeeds(Held("[S R]", new Rational(1, 4)), [new Singer("Finch", NoteName.FromMidi(40), NoteName.FromMidi(90), new Rational(5, 2))])[0];
        Assert.StartsWith("breaths open 33 to 65, 68 to 180 (", window.OpenedBy[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Too_short_a_rest_of_a_held_note_is_left_for_a_breath_before_it()
    {
        // On 1.05 s the second note would keep 0.04 s, so that there is a breath before it; then it is let go on its own.
        Assert.Equal([(0, new Rational(4, 24), new Rational(20, 24)), (1, 2 + new Rational(1, 24), 6 - new Rational(1, 24))],
            Breaths(Held("[S R]", new Rational(1, 4)).ToScore(), new Rational(21, 20), new Rational(4, 5)));
    }

    [Fact]
    public void Where_the_tempo_changes_a_breath_takes_as_many_parts_as_its_tempo_asks()
    {
        // Two aksharas each at 60, 75 and 90: 2, 1.6 and 1.33 s. A breath of 0.4 s is 9.6, so 10 parts of 24 at 60, and 12 at 75.
        var score = (Lines("[S R]") with { Tempo = TempoRamp.Parse("60 to 90 by 15") }).ToScore();
        Assert.Equal([(1, 2 - new Rational(10, 24), new Rational(10, 24)), (3, 4 - Half, Half)], Breaths(score, new Rational(5, 2), new Rational(2, 5)));

        // 0.85 s are longer than a note at 75.
        Assert.Null(Plan(score, new Rational(5, 2), new Rational(17, 20)));
    }

    [Fact]
    public void Where_the_tempo_changes_a_held_note_is_let_go_after_as_many_seconds()
    {
        // At 60 three seconds are three aksharas, at 120 six.
        var score = (Held("[S R]", Half) with { Tempo = TempoRamp.Parse("60 to 120 by 60") }).ToScore();
        Assert.Equal([(1, 3, 5), (3, 14, 2)], Breaths(score, 3, new Rational(4, 5)));
        Assert.Equal([(1, 1 + new Rational(3, 24), 7 - new Rational(3, 24))], Breaths((Held("[S R]", Half) with { Tempo = TempoRamp.Parse("75 to 150 by 75") }).ToScore(), new Rational(9, 10), new Rational(4, 5)).Take(1));
    }

    [Fact]
    public void One_span_that_is_too_long_is_enough_for_breaths_of_ones_own()
    {
        // S R with half a second of silence, then seven seconds. Half of ten seconds is five, and 0.4 s are enough for a breath.
        var score = Lines("[S R] + [S R G] + [S R G M]").ToScore().WithBreaths(0, [new Breath(new Rational(3, 2), Half, 1)]);
        var singer = new Singer("Finch", NoteName.FromMidi(40), NoteName.FromMidi(90), 10, Experience.Intermediate);
        Assert.Equal([1, 4], score.AsSungBy(singer).Sections[0].Breaths.Select(b => b.AfterNote));
    }

    [Fact]
    public void A_plan_can_be_put_into_its_score_twice()
    {
        var score = Lines("[S R G] + [S R G M]").ToScore();
        var plan = Plan(score, 4, Half)!;
        Assert.Equal(score.WithBreaths(plan), score.WithBreaths(plan).WithBreaths(plan));
    }

    [Theory]
    [InlineData("[S]", 1)] // the note after which the plan breathes is not there
    [InlineData("[S , , R ,]", 2)] // it begins where the breath would begin
    [InlineData("[S , R , ,]", 3)] // it ends before the breath would begin
    public void A_plan_for_another_score_is_refused(string other, int kalam)
    {
        // S R G M with the breath in the second half of R.
        var plan = Plan(Lines("[S R] + [G M]").ToScore(), 2, Half)!;
        Assert.Equal((1, new Rational(3, 2)), (plan.Breaths[0].AfterNote, plan.Breaths[0].Onset));
        var score = (Lines(other) with { Speeds = [new Speed(kalam)] }).ToScore();
        Assert.Contains("another score", Assert.Throws<ArgumentException>(() => score.WithBreaths(plan)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Breaths_of_ones_own_are_those_beyond_the_class()
    {
        // 0.4 of 12 and 16 s: 4.8 and 6.4 s. The class breathes once inside the line of eight seconds, Robin a second time in the six that are left.
        Singer Voice(string alias, int seconds) => new(alias, NoteName.FromMidi(40), NoteName.FromMidi(90), seconds);
        var breaths = ClassBreath.Of([Lines("[S R G M P D N S']").ToScore()], [Voice("Finch", 16), Voice("Robin", 12), Voice("Wren", 16)]);
        Assert.Equal([("Robin", 2, 1), ("Finch", 1, 0), ("Wren", 1, 0)], breaths.Select(b => (b.Singer.Alias, b.Time.BreathsInside, b.OwnBreathsInside)));
    }
}
