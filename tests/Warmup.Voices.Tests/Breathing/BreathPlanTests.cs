using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>
/// Source: the breath rules (a line's end 1, inside 3, then harm, then the earliest; never inside a pair sung as one; a breath is rounded
/// up to 1/24 akshara), written a second time here as a search through all sets of breaths.
/// </summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class BreathPlanTests
{
    private const string Mohanam = "S R2 G3 P D2 S'";

    private static Drill Ladder(int lines, int tempo) => new()
    {
        Scale = Scale.Parse(Mohanam),
        Pattern = Pattern.Ladder.Take(lines),
        Tonic = Tonic.FromMidi(57),
        Tempo = tempo,
    };

    private static BreathPlan? Plan(Score score, BreathNeed need) => BreathPlan.TryMake(score, need, out var plan, out _) ? plan : null;

    private static BreathNeed Need(Rational capacity, Rational shortest) => new(capacity, shortest);

    [Property(MaxTest = 1_000)]
    public void The_plan_is_the_one_that_trying_every_set_of_breaths_finds(SmallCase small)
    {
        var expected = Exhaustive.Best(small.Score, small.Need);
        var made = BreathPlan.TryMake(small.Score, small.Need, out var plan, out var refusal);
        Assert.Equal(expected is not null, made);
        if (expected is not { } best)
        {
            Assert.Equal(VoiceFindingCode.NoBreathPlan, refusal!.Code);
            Assert.NotNull(refusal.Place);
            Assert.Null(plan);
            return;
        }

        Assert.Null(refusal);
        Assert.Equal((best.Cost, best.Harm), (plan!.Cost, plan.Harm));
        Assert.Equal(best.Places, plan.Breaths.Select(b => b.AfterNote));
    }

    [Fact]
    public void The_small_drills_need_breaths_have_plans_and_have_none_often_enough()
    {
        var plans = Gen.Sample(FitGenerators.Cases, 400, 30).Select(c => (c.Score.Sections[0], Plan: Plan(c.Score, c.Need))).ToList();
        var shares = (None: plans.Count(p => p.Plan is null), Some: plans.Count(p => p.Plan is { Breaths.IsEmpty: false }),
            Several: plans.Count(p => p.Plan is { Breaths.Count: > 1 }), Inside: plans.Count(p => p.Plan is { } plan && plan.Breaths.Any(b => !b.IsAtLineEnd)));
        Assert.True(shares is { None: >= 40, Some: >= 80, Several: >= 20, Inside: >= 20 }, shares.ToString());
    }

    [Fact]
    public void Sections_at_many_tempi_are_checked_and_planned()
    {
        // The common denominator of the times of twelve prime tempi is beyond 64 bits.
        int[] tempi = [61, 67, 71, 73, 79, 83, 89, 97, 101, 103, 107, 109];
        var score = Score.Join("tempi", tempi.Select(t => Ladder(2, t).ToScore()));
        var seconds = tempi.Sum(t => 5 * 60.0 / t);
        var singer = new Singer("Wren", NoteName.Parse("C3"), NoteName.Parse("C6"), 12);
        Assert.Equal(seconds, RangeUse.Of(score, singer).Seconds.ToDouble(), 1e-4);
        Assert.Equal(tempi.Average() / 60, Difficulty.Of(score).NotesPerSecond.ToDouble(), 1e-3);

        // Each section leaves silence after its two short lines, which ends a span.
        Assert.Equal(tempi.Length, BreathSpan.Of(score, new Rational(4, 5)).Count());
        Assert.All(BreathSpan.Of(score, new Rational(4, 5)).Zip(tempi), s => Assert.Equal(5 * 60.0 / s.Second, s.First.Seconds.ToDouble(), 1e-5));
        Assert.NotNull(score.Check(singer).ToString());
        Assert.NotEmpty(Plan(score, Need(4, new Rational(2, 5)))!.Breaths);
    }

    [Property(MaxTest = 500)]
    public void With_its_breaths_in_the_score_no_span_is_longer_than_the_capacity(SmallCase small)
    {
        if (Plan(small.Score, small.Need) is not { } plan)
        {
            return;
        }

        var sung = small.Score.WithBreaths(plan);
        Assert.All(BreathSpan.Of(sung, small.Need.ShortestBreathSeconds), span => Assert.True(span.Seconds <= small.Need.CapacitySeconds, span.ToString()));
        Assert.Empty(Plan(sung, small.Need)!.Breaths);
    }

    [Property(MaxTest = 500)]
    public void Breaths_in_the_score_move_no_onset_and_take_their_time_from_the_note_before(SmallCase small)
    {
        if (Plan(small.Score, small.Need) is not { } plan)
        {
            return;
        }

        var (before, after) = (small.Score.Sections[0], small.Score.WithBreaths(plan).Sections[0]);
        Assert.Equal(before.Notes.Select(n => n.Onset), after.Notes.Select(n => n.Onset));
        Assert.Equal((before.Length, before.Lines, before.Measures), (after.Length, after.Lines, after.Measures));
        var breathing = plan.Breaths.ToDictionary(b => b.AfterNote);
        for (var n = 0; n < before.Notes.Count; n++)
        {
            var note = after.Notes[n];
            if (!breathing.TryGetValue(n, out var breath))
            {
                Assert.Equal(before.Notes[n].Length, note.Length);
                continue;
            }

            Assert.Equal(breath.Onset, note.Onset + note.Length);
            // Behind the last note of all nothing has to be sung any more: it may only be let go a little earlier.
            Assert.True(n + 1 == before.Notes.Count || after.SecondsAt(breath.Length) >= small.Need.ShortestBreathSeconds);
            Assert.True(before.Notes[n].IsHeld || after.SecondsAt(breath.Length - new Rational(1, 24)) < small.Need.ShortestBreathSeconds);
            Assert.True(after.SecondsAt(note.Length) >= new Rational(1, 10));
            Assert.Equal(after.Notes.Count > n + 1 ? after.Notes[n + 1].Onset : after.Length, breath.Onset + breath.Length);
            Assert.Equal(new Breath(breath.Onset, breath.Length, n), Assert.Single(after.Breaths, b => b.AfterNote == n));
        }

        Assert.InRange(after.Resolution, 1, 16_383);
    }

    [Property(MaxTest = 500)]
    public void A_longer_capacity_never_raises_the_cost(SmallCase small, byte more)
    {
        var longer = new BreathNeed(small.Need.CapacitySeconds + new Rational(more, 20), small.Need.ShortestBreathSeconds);
        if (Plan(small.Score, small.Need) is { } plan)
        {
            var other = Plan(small.Score, longer);
            Assert.NotNull(other);
            Assert.True((other.Cost, other.Harm).CompareTo((plan.Cost, plan.Harm)) <= 0, $"{plan} costs {plan.Cost}, {other} {other.Cost}");
        }
    }

    [Property]
    public void Moving_the_drill_changes_no_plan(SmallCase small)
    {
        var moved = (small.Drill with { Tonic = Tonic.FromMidi(small.Drill.Tonic.Midi + 3) }).ToScore();
        Assert.Equal(Plan(small.Score, small.Need)?.Breaths, Plan(moved, small.Need)?.Breaths);
    }

    [Fact]
    public void Line_ends_come_first()
    {
        // S R / S R G / S R G P at 60: nine seconds; on five a breath after line 2 (onset 5.0) is enough and costs 1.
        var plan = Plan(Ladder(3, 60).ToScore(), Need(5, new Rational(2, 5)))!;
        var breath = Assert.Single(plan.Breaths.ToArray());
        Assert.Equal((1, "after line 2", true), (plan.Cost, breath.ToString(), breath.IsAtLineEnd));
    }

    [Fact]
    public void A_line_longer_than_the_capacity_is_divided_before_a_leap_of_a_fourth()
    {
        // S R G R S' D, a second each: breaths after R, G or R keep both spans within four seconds; only the last stands before a leap.
        var drill = Ladder(1, 60) with { Pattern = Pattern.Figure(0, 1, 2, 1, 5, 4).Take(1) };
        var plan = Plan(drill.ToScore(), Need(4, new Rational(2, 5)))!;
        var breath = Assert.Single(plan.Breaths.ToArray());
        Assert.Equal((3, 2, "in line 1 after note 4"), (breath.Cost, breath.Harm, breath.ToString()));
    }

    [Fact]
    public void A_held_last_note_is_let_go_as_early_as_the_capacity_asks()
    {
        // S, R held to 7.0, breath to 8.0. On five seconds R ends at 5.0, and the breath lasts three.
        var drill = Ladder(1, 60) with { Delivery = Delivery.LineByLine };
        var plan = Plan(drill.ToScore(), Need(5, new Rational(4, 5)))!;
        var breath = Assert.Single(plan.Breaths.ToArray());
        Assert.Equal((5, 3, 1), (breath.Onset, breath.Length, breath.Cost));
        Assert.Equal(5, drill.ToScore().WithBreaths(plan).Sections[0].Breaths[0].Onset);
    }

    [Fact]
    public void A_pair_sung_as_one_is_never_parted()
    {
        // S S R R: breaths are possible only between the two pairs.
        var drill = Ladder(1, 60) with { Pattern = Pattern.Figure(0, 0, 1, 1).Take(1) };
        var plan = Plan(drill.ToScore(), Need(2, new Rational(2, 5)))!;
        Assert.Equal([1], plan.Breaths.Select(b => b.AfterNote));
        Assert.Null(Plan((drill with { Pattern = Pattern.Figure(0, 0, 0, 0).Take(1) }).ToScore(), Need(2, new Rational(2, 5))));
    }

    [Fact]
    public void A_breath_at_60_is_rounded_up_to_24ths_of_an_akshara()
    {
        // 0.8 s at 60 is 19.2 of 24 parts of an akshara: 20 parts.
        var plan = Plan(Ladder(2, 60).ToScore(), Need(4, new Rational(4, 5)))!;
        var breath = Assert.Single(plan.Breaths.ToArray());
        Assert.Equal((new Rational(20, 24), new Rational(2) - new Rational(20, 24)), (breath.Length, breath.Onset));
    }

    [Fact]
    public void Where_no_note_is_long_enough_the_refusal_names_the_line_and_the_limits()
    {
        // At 120 a note lasts 0.5 s: 0.8 s cannot be taken from it.
        Assert.False(BreathPlan.TryMake(Ladder(5, 120).ToScore(), Need(5, new Rational(4, 5)), out _, out var refusal));
        Assert.Equal((VoiceFindingCode.NoBreathPlan, 1), (refusal!.Code, refusal.Place!.Value.Line));
        Assert.Contains("0.8 s", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("5.0 s", refusal.Message, StringComparison.Ordinal);
        Assert.Empty(refusal.Fix); // what helps is found by trying, not promised here
    }

    [Fact]
    public void A_plan_goes_over_the_parts_of_a_score()
    {
        var part = (Ladder(2, 60) with { Title = "a part" }).ToScore();
        var score = Score.Join(part.Title, [part, part]);

        // Two parts of Adi: five sung seconds, then three of silence, which end the span by themselves.
        Assert.Empty(Plan(score, Need(5, new Rational(4, 5)))!.Breaths);
        var plan = Plan(score, Need(4, new Rational(4, 5)))!;
        Assert.Equal([(0, 1), (1, 1)], plan.Breaths.Select(b => (b.Place.Section - 1, b.AfterNote)));
        Assert.Equal($"after line 1 of section 2 '{part.Title}'", plan.Breaths[1].ToString());
        Assert.Single(score.WithBreaths(plan).Sections[1].Breaths.ToArray());
    }

    [Fact]
    public void A_plan_for_another_score_is_refused()
    {
        var plan = Plan(Ladder(3, 60).ToScore(), Need(5, new Rational(2, 5)))!;
        Assert.Throws<ArgumentException>(() => Ladder(1, 60).ToScore().WithBreaths(plan));
    }

    [Fact]
    public void A_long_drill_is_planned_in_no_time()
    {
        var drill = Ladder(5, 60) with { Pattern = Pattern.Ladder.Repeat(1_000) };
        var score = drill.ToScore();
        Assert.Equal(20_000, score.NoteCount);
        var plan = Plan(score, Need(8, new Rational(2, 5)))!;
        Assert.All(BreathSpan.Of(score.WithBreaths(plan), new Rational(2, 5)), s => Assert.True(s.Seconds <= 8));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(121, 1)]
    [InlineData(5, 0)]
    [InlineData(5, 11)]
    public void A_need_out_of_range_is_refused(int capacity, int shortest) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BreathNeed(capacity, shortest));

    [Fact]
    public void What_is_enough_for_all_is_the_smallest_capacity_and_the_longest_shortest_breath()
    {
        NoteName low = NoteName.FromMidi(55), high = NoteName.FromMidi(70);

        // 0.4 of 20 s and 0.6 of 10 s; 0.8 s for the beginner.
        var need = BreathNeed.Of([new Singer("a", low, high, 20), new Singer("b", low, high, 10, Experience.Advanced)]);
        Assert.Equal(new BreathNeed(6, new Rational(4, 5)), need);
        Assert.Throws<ArgumentException>(() => BreathNeed.Of(ValueList.Create<Singer>([])));
    }

    /// <summary>Every set of places is tried; scores of one section.</summary>
    private static class Exhaustive
    {
        public static (int Cost, int Harm, int[] Places)? Best(Score score, BreathNeed need)
        {
            var section = Assert.Single(score.Sections.ToArray());
            var seconds = (Rational aksharas) => aksharas * 60 / section.Tempo;
            var notes = section.Notes.ToArray();
            var breath = Rational.Zero;
            while (seconds(breath) < need.ShortestBreathSeconds)
            {
                breath += new Rational(1, 24);
            }

            var candidates = Enumerable.Range(0, notes.Length).Where(n => notes[n].IsHeld || (!IsLast(n) && !Free(n) && !IsPair(n))).ToList();
            (int Cost, int Harm, int[] Places)? best = null;
            for (var set = 0; set < 1 << candidates.Count; set++)
            {
                var places = candidates.Where((_, i) => (set & (1 << i)) != 0).ToArray();
                if (Harm(places) is not { } harm)
                {
                    continue;
                }

                var found = (Cost: places.Sum(n => IsLast(n) || notes[n + 1].LineIndex != notes[n].LineIndex ? 1 : 3), Harm: harm, places);
                if (best is not { } known
                    || (found.Cost, found.Harm).CompareTo((known.Cost, known.Harm)) < 0
                    || ((found.Cost, found.Harm) == (known.Cost, known.Harm) && Earlier(places, known.Places)))
                {
                    best = found;
                }
            }

            return best;

            bool IsLast(int n) => n + 1 == notes.Length;

            bool IsPair(int n) => notes[n].LineIndex == notes[n + 1].LineIndex && notes[n].PitchIndex == notes[n + 1].PitchIndex;

            bool Free(int n) => !IsLast(n) && seconds(notes[n + 1].Onset - notes[n].Onset - notes[n].Length) >= need.ShortestBreathSeconds;

            // The harm of breathing after these notes and nowhere else; none where a span is too long or a note too short.
            int? Harm(int[] places)
            {
                var (start, harm) = (notes[0].Onset, 0);
                for (var n = 0; n < notes.Length; n++)
                {
                    var (onset, until) = (notes[n].Onset, IsLast(n) ? section.Length : notes[n + 1].Onset);
                    var end = onset + notes[n].Length;
                    if (places.Contains(n))
                    {
                        // Behind silence that is long enough only a held note can be let go earlier; elsewhere the shortest breath is taken first.
                        var hasSilence = IsLast(n) || Free(n);
                        var latest = start + (need.CapacitySeconds * section.Tempo / 60);
                        var given = hasSilence ? end : until - breath;
                        if (hasSilence && end <= latest)
                        {
                            return null;
                        }

                        if (!hasSilence && seconds(given - onset) < new Rational(1, 10))
                        {
                            return null;
                        }

                        if (given > latest && notes[n].IsHeld)
                        {
                            given = onset + new Rational(((latest - onset) * 24).Floor(), 24);
                        }

                        if (seconds(given - onset) < new Rational(1, 10))
                        {
                            return null;
                        }

                        harm += PlaceHarm(n, given, until);
                        end = given;
                    }

                    if (seconds(end - start) > need.CapacitySeconds)
                    {
                        return null;
                    }

                    start = !IsLast(n) && (places.Contains(n) || Free(n)) ? notes[n + 1].Onset : start;
                }

                return harm;
            }

            int PlaceHarm(int n, Rational end, Rational until)
            {
                var rest = until - notes[n].Onset - notes[n].Length;
                var leastOfLine = notes.Where(m => m.LineIndex == notes[n].LineIndex).Min(m => m.Length);
                var leap = IsLast(n) ? 0 : Math.Abs(section.PitchOf(notes[n + 1]).Tone.Semitones - section.PitchOf(notes[n]).Tone.Semitones);
                var harm = rest >= (until - end) / 2 ? 0 : notes[n].IsHeld || notes[n].Length >= leastOfLine * 2 ? 1 : leap >= 5 ? 2 : 3;
                return end - notes[n].Onset < notes[n].Length / 2 ? harm + 2 : harm;
            }
        }

        private static bool Earlier(int[] a, int[] b)
        {
            for (var i = 0; i < Math.Min(a.Length, b.Length); i++)
            {
                if (a[i] != b[i])
                {
                    return a[i] < b[i];
                }
            }

            return a.Length < b.Length;
        }
    }
}
