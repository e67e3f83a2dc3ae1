namespace Warmup.Tests;

/// <summary>Drills and scores at their edges. Source: the documented words of the parts, with aksharas counted by hand in Adi (8 = 4 + 2 + 2).</summary>
public class DrillEdgeTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("Five = S R2 G3 P D2 S'"), Pattern = Pattern.Parse("[S R G P D]"), Tonic = Tonic.Parse("G3") };

    private static Section Of(Drill drill) => drill.ToScore().Sections[0];

    [Fact]
    public void Breaths_on_a_very_fine_grid_keep_the_notes_as_they_are()
    {
        // 4093 is prime: with breaths on 24ths the grid has 24 x 4,093 = 98,232 steps an akshara.
        LineNote Note(Rational length) => new(default, ScaleDirection.Ascent, Approach.Leap, length);
        var line = new Line([Note(new Rational(1, 4_093)) with { Joining = Joining.Staccato }, Note(new Rational(4_092, 4_093)) with { Loudness = Loudness.SwellAndFade }, Note(3)]);
        var score = Mohanam.ToScore(new Expansion([line]));
        var section = score.WithBreaths(0, [new Breath(new Rational(95, 24), new Rational(1, 24), 2)]).Sections[0];
        Assert.Equal(0, section.Resolution % 98_232);
        foreach (var (before, after) in score.Sections[0].Notes.Zip(section.Notes).Take(2))
        {
            Assert.Equal((before.Onset, before.Length, before.Joining, before.Loudness), (after.Onset, after.Length, after.Joining, after.Loudness));
        }

        Assert.Equal((1, new Rational(71, 24)), (section.Notes[2].Onset, section.Notes[2].Length));
    }

    [Fact]
    public void An_end_inside_the_avartana_is_told_with_what_fills_it()
    {
        // Five of eight aksharas; eight times five are five avartanas.
        var finding = Of(Mohanam).UnevenEnd()!;
        Assert.Equal((FindingCode.EndsInsideAvartana, Severity.Note, 5.0, 8.0), (finding.Code, finding.Severity, finding.Measured, finding.Limit));
        Assert.StartsWith("the lines end inside the avartana of ", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(", after 5 of its 8 aksharas", finding.Message, StringComparison.Ordinal);
        Assert.Equal("sing all of it eight times, or fill each line up to the avartana", finding.Fix);

        var bar = Of(Mohanam with { Meter = Meter.TimeSignature(4, 4) }).UnevenEnd()!;
        Assert.StartsWith("the lines end inside the bar of ", bar.Message, StringComparison.Ordinal);
        Assert.EndsWith(", after 1 of its 4 beats", bar.Message, StringComparison.Ordinal);
        Assert.Equal("sing all of it four times, or fill each line up to the bar", bar.Fix);
    }

    [Fact]
    public void An_end_on_the_first_beat_and_in_free_rhythm_is_not_told()
    {
        Assert.Null(Of(Mohanam with { Repetitions = 8 }).UnevenEnd());
        Assert.Null(Of(Mohanam with { Meter = Meter.Free }).UnevenEnd());
        Assert.Null(Of(Mohanam with { Delivery = Delivery.LineByLine }).UnevenEnd());
    }

    [Fact]
    public void Where_no_number_of_times_ends_on_the_first_beat_none_is_told()
    {
        // One line of five aksharas filled to the anga: 0 -> 5 -> 6; 6 -> 11 -> 12 = 4; 4 -> 9 -> 12 = 4 for ever.
        var section = Of(Mohanam with { Delivery = Delivery.Continuous with { Fill = Fill.Anga } });
        Assert.Null(section.RoundsToFirstBeat);
        Assert.Equal("fill each line up to the avartana", section.UnevenEnd()!.Fix);
    }

    [Fact]
    public void An_exercise_in_another_tala_is_told_its_own()
    {
        var exercise = Repertoire.Traditional.First(e => !e.Meter.Gestures.IsEmpty && e.Meter != Meter.Adi);
        var finding = Of(Mohanam).UnevenEnd(exercise)!;
        Assert.StartsWith($"{exercise.Name} is written for {exercise.Meter}: the lines end inside the avartana", finding.Message, StringComparison.Ordinal);
        Assert.StartsWith($"take its own tala, {exercise.Meter.Name}, or sing all of it eight times", finding.Fix, StringComparison.Ordinal);
        var own = Repertoire.Traditional.First(e => e.Meter == Meter.Adi);
        Assert.DoesNotContain("is written for", Of(Mohanam).UnevenEnd(own)!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_speeds_tell_an_uneven_end_and_a_single_one_does_not()
    {
        // Five aksharas and two and a half.
        var score = (Mohanam with { Speeds = [Speed.First, Speed.Second] }).ToScore();
        Assert.Equal(FindingCode.EndsInsideAvartana, Assert.Single(score.Findings).Code);
        Assert.Empty(Mohanam.ToScore().Findings);
    }

    [Fact]
    public void A_drill_and_a_score_are_described_in_a_line()
    {
        Assert.Equal("Five notes on G3 at 60, speed 1 then speed 2, continuous", (Mohanam with { Title = "Five notes", Speeds = [Speed.First, Speed.Second] }).ToString());
        var five = (Mohanam with { Title = "Five notes", Tempo = 120 }).ToScore();
        Assert.Equal("5 notes, 4.0 s: Five notes", five.ToString()); // eight aksharas of half a second
        Assert.Equal("10 notes in 2 sections, 8.0 s: Both", Score.Join("Both", [five, five]).ToString());
        Assert.StartsWith("1 note, 4.0 s: ", (Mohanam with { Pattern = Pattern.Parse("[S]"), Tempo = 120 }).ToScore().ToString(), StringComparison.Ordinal);
        Assert.StartsWith("1 line of 5 notes in 8 aksharas: Five notes", five.Sections[0].ToString(), StringComparison.Ordinal);
        Assert.Equal("pitch 1 at 1 for 1", five.Sections[0].Notes[1].ToString());
    }

    [Fact]
    public void Tones_between_two_heights_include_both_and_go_three_octaves_up_and_down()
    {
        Assert.Equal(["S", "R2", "G3", "P", "D2", "S'"], Of(Mohanam).TonesBetween(0, 1200).Select(t => t.Tone.ToString()));
        var all = Of(Mohanam).TonesBetween(-100_000, 100_000);
        Assert.Equal(("S___", "D2'''", 35), (all[0].Tone.ToString(), all[^1].Tone.ToString(), all.Count));
        Assert.Equal(all.Select(t => t.Cents).Order(), all.Select(t => t.Cents));
    }

    [Fact]
    public void Joined_sections_begin_where_the_ones_before_end_and_have_places_of_their_own()
    {
        var first = Mohanam.ToScore();
        var second = (Mohanam with { Title = "Second" }).ToScore();
        var joined = Score.Join("all", [first, second]);
        Assert.Equal(new ScorePlace(2, 1, 0, "Second"), joined.PlaceOf(1, joined.Sections[1].Notes[0]));
        Assert.Equal([0, 8], joined.SectionStarts());
        Assert.Equal(16, joined.Seconds);
    }

    [Fact]
    public void A_breath_after_a_slide_ends_the_slide_and_other_joinings_stay()
    {
        var slide = (Mohanam with { Pattern = Pattern.Parse("[S , G , S ,].glide") }).ToScore();
        Assert.Equal(Joining.Glide, slide.Sections[0].Notes[0].Joining);
        var breathed = slide.WithBreaths(0, [new Breath(1, 1, 0)]).Sections[0];
        Assert.Equal((Joining.Plain, Joining.Glide), (breathed.Notes[0].Joining, breathed.Notes[1].Joining));
        Assert.Equal((1, 2), (breathed.Notes[0].Length, breathed.Notes[1].Length));
        var plucked = (Mohanam with { Pattern = Pattern.Parse("[S , G ,].staccato") }).ToScore().WithBreaths(0, [new Breath(1, 1, 0)]).Sections[0];
        Assert.Equal(Joining.Staccato, plucked.Notes[0].Joining);
    }

    [Fact]
    public void A_breath_on_a_finer_grid_makes_the_section_finer_and_moves_nothing()
    {
        // An akshara a note has one step; a breath of a third of an akshara needs the breaths' grid, 24 parts.
        var score = Mohanam.ToScore();
        var breathed = score.WithBreaths(0, [new Breath(new Rational(2, 3), new Rational(1, 3), 0)]).Sections[0];
        Assert.Equal((1, 24), (score.Sections[0].Resolution, breathed.Resolution));
        Assert.Equal(score.Sections[0].Notes.Select(n => n.Onset), breathed.Notes.Select(n => n.Onset));
        Assert.Equal(new Rational(2, 3), breathed.Notes[0].Length);
        Assert.Equal(score.Sections[0].Length, breathed.Length);
        Assert.Equal(new Breath(new Rational(2, 3), new Rational(1, 3), 0), breathed.BreathAfter(0));

        // A breath to the very end of the section, and one just after its note.
        var last = score.WithBreaths(0, [new Breath(5, 3, 4)]).Sections[0];
        Assert.Equal((5, 3), (last.Breaths[0].Onset, last.Breaths[0].Length));
        Assert.Contains("must end by akshara 9", Assert.Throws<ArgumentException>(() => score.WithBreaths(0, [new Breath(5, 4, 4)])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_with_answers_counts_the_times_to_the_first_beat_with_them()
    {
        // Four lines of two: eight aksharas, sixteen with answers, which are full; line by line each line fills its own avartana.
        var full = Of(Mohanam with { Pattern = Pattern.Parse("[S R] + [R G] + [G P] + [P D]") });
        Assert.Equal(1, full.RoundsToFirstBeat);
        Assert.Equal(1, Answered(Mohanam with { Pattern = Pattern.Parse("[S R] + [R G] + [G P] + [P D]") }).RoundsToFirstBeat);
        Assert.Equal(1, Answered(Mohanam with { Delivery = Delivery.LineByLine }).RoundsToFirstBeat);
        Assert.Null(Answered(Mohanam with { Meter = Meter.Free }).RoundsToFirstBeat);
        Assert.Equal(3, Answered(Mohanam with { Pattern = Pattern.Parse("[S R G P]"), Repetitions = 3 }).RoundsToFirstBeat);

        static Section Answered(Drill drill) => drill.ToScore().WithAnswers().Sections[0];
    }

    [Fact]
    public void Times_that_differ_in_a_breath_or_the_tempo_are_not_alike()
    {
        // Two times through the drill, each an avartana; in the second one a breath cuts the first note short.
        var drill = Mohanam with { Delivery = Delivery.LineByLine, Repetitions = 2 };
        Assert.Equal(2, Of(drill).AlikeFrom(0));
        var note = Of(drill).Notes[5];
        Assert.Equal(1, drill.ToScore().WithBreaths(0, [new Breath(note.Onset + new Rational(1, 2), new Rational(1, 2), 5)]).Sections[0].AlikeFrom(0));
        Assert.Equal(1, Of(drill with { Speeds = [Speed.First, Speed.Second], Tempo = new TempoRamp(60, 30, 90) }).AlikeFrom(0));
        Assert.Equal(2, Of(drill with { Speeds = [Speed.First, Speed.Second] }).AlikeFrom(0));
        Assert.Equal(2, drill.ToScore().WithAnswers().Sections[0].AlikeFrom(0));
    }

    [Fact]
    public void The_middle_of_a_note_of_odd_steps_is_the_later_one()
    {
        var note = Of(Mohanam with { Pattern = Pattern.Parse("[S , G].staccato") }).Notes[0];
        Assert.Equal((note.OnsetSteps + note.EndSteps) / 2, note.MiddleSteps);
        Assert.Equal((1, 1, 2), (note.Middle, note.SoundEnd, note.End));
        var odd = Of(Mohanam with { Pattern = Pattern.Parse("[S , , G]") }).Notes[0];
        Assert.Equal((3, 2), (odd.LengthSteps, odd.MiddleSteps));
    }
}
