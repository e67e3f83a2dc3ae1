using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>The rules' section Time: holds, breaths and fills. Places are computed here from the rules, not taken from the library.</summary>
public class DeliveryTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Fact]
    public void Adi_at_60_the_hold_lasts_to_7_and_the_breath_from_7_to_8()
    {
        var section = Section(Mohanam with { Delivery = Delivery.LineByLine });
        Assert.Equal((1, (Rational)6, true), (section.Notes[1].Onset, section.Notes[1].Length, section.Notes[1].IsHeld));
        Assert.Equal(new Breath(7, 1, 1), section.Breaths[0]);
        Assert.Equal(8, section.Lines[1].Onset);
    }

    [Theory]
    [InlineData("[S R G P D S' D P]", 60, 1, "15/2 1/2")] // eight svaras fill the avartana: the second half of the last one
    [InlineData("[S R G P D S' D P]", 60, 2, "7 1")] // four aksharas in the second speed leave four: held to 7.0
    [InlineData("[S R G P D S' D P D P G R S R G P]", 60, 2, "31/4 1/4")]
    [InlineData("[S R G P D S' D]", 60, 1, "7 1")] // seven leave one akshara, and that is the breath
    [InlineData("[S R G P D S' D]", 120, 1, "7 1")] // a breath of two aksharas would swallow the note: it is as long as the note
    [InlineData("[S R G P D S']", 120, 1, "6 2")]
    [InlineData("[S R G P D S' ,,]", 60, 1, "7 1")] // the last svara lasts three of eight aksharas: the breath is one second of them
    [InlineData("[S R G P D S' , D P P P D P G P]", 60, 2, "29/4 3/4")] // half an akshara is left, and the second half of the last svara
    public void A_line_breathes_in_its_avartana(string line, int tempo, int kalam, string breath)
    {
        var section = Section(Mohanam with { Pattern = Pattern.Parse(line), Tempo = tempo, Speeds = [new(kalam)], Delivery = Delivery.LineByLine });
        Assert.Equal(8, section.Lines[0].Length);
        Assert.Equal(breath, $"{section.Breaths[0].Onset} {section.Breaths[0].Length}");
        Assert.Equal(section.Notes[^1].End, section.Breaths[0].Onset);
    }

    [Fact]
    public void A_rest_leaves_an_avartana_for_the_answer_after_a_line_that_fills_its_own()
    {
        var section = Section(Mohanam with { Pattern = Pattern.Parse("[S R G P D S' D P]"), Delivery = Delivery.LineByLine with { FillBy = FillBy.Rest } });
        Assert.Equal((16, (Rational)8), (section.Lines[0].Length, section.Notes[^1].End));
        Assert.Equal(new Breath(8, 1, 7), section.Breaths[0]);
    }

    [Fact]
    public void Less_than_an_akshara_of_hold_takes_one_more_avartana_where_a_hold_is_asked_for()
    {
        // Seven notes and a breath of one akshara fill the avartana, with a hold of one; at 120 the breath is two and leaves none.
        var sevens = Mohanam with { Pattern = Pattern.Figure(0, 1, 2, 3, 2, 1, 0), Delivery = Delivery.LineByLine with { FillBy = FillBy.Hold } };
        Assert.Equal(8, Section(sevens).Lines[0].Length);
        Assert.Equal(16, Section(sevens with { Tempo = 120 }).Lines[0].Length);
        Assert.Equal(16, Section(sevens with { Delivery = sevens.Delivery with { LeastHold = new Rational(3, 2) } }).Lines[0].Length);
    }

    [Theory]
    [InlineData(Fill.Anga, "0 4 8 12")] // with the breath 3 -> 4, 8 -> 8; the third fills 8 to 12 and breathes in its last note
    [InlineData(Fill.Avartana, "0 8 16 24")]
    [InlineData(Fill.None, "0 3 7 12")]
    public void Line_by_line_fills_up_to_what_is_asked(Fill fill, string onsets)
    {
        var section = Section(Mohanam with { Delivery = Delivery.LineByLine with { Fill = fill } });
        Assert.Equal(onsets, string.Join(' ', section.Lines.Take(4).Select(l => l.Onset)));
        Assert.Equal(section.Lines.Count, section.Breaths.Count);
    }

    [Fact]
    public void A_hold_of_a_chosen_length_and_a_breath_of_a_chosen_length()
    {
        var section = Section(Mohanam with { Delivery = Delivery.LineByLine with { Fill = Fill.None, LeastHold = 3, BreathSeconds = 2 } });
        Assert.Equal((1, (Rational)3), (section.Notes[1].Onset, section.Notes[1].Length));
        Assert.Equal(new Breath(4, 2, 1), section.Breaths[0]);
        Assert.Equal(6, section.Lines[1].Onset);
    }

    [Fact]
    public void Without_a_fill_the_breath_goes_on_to_the_next_akshara()
    {
        // A second at 90 is an akshara and a half.
        var section = Section(Mohanam with { Tempo = 90, Delivery = Delivery.LineByLine with { Fill = Fill.None } });
        Assert.Equal(new Breath(2, 2, 1), section.Breaths[0]);
    }

    [Fact]
    public void A_rest_fills_up_behind_the_breath()
    {
        var section = Section(Mohanam with { Delivery = Delivery.LineByLine with { FillBy = FillBy.Rest, LeastHold = 2 } });
        Assert.Equal((1, (Rational)2), (section.Notes[1].Onset, section.Notes[1].Length));
        Assert.Equal(new Breath(3, 1, 1), section.Breaths[0]);
        Assert.Equal(8, section.Lines[1].Onset);
    }

    [Theory]
    [InlineData(Fill.None, FillBy.Hold, "0 2 5 9 14", "1 1 1 1 1", false)]
    [InlineData(Fill.Anga, FillBy.Room, "0 4 8 12 20", "3 2 1 4 3", true)]
    [InlineData(Fill.Anga, FillBy.Hold, "0 4 8 12 20", "3 2 1 4 3", true)] // 2->4, 4+3=7->8, 8+4=12, 12+5=17->20, 20+6=26->28
    [InlineData(Fill.Anga, FillBy.Rest, "0 4 8 12 20", "1 1 1 1 1", false)]
    [InlineData(Fill.Avartana, FillBy.Hold, "0 8 16 24 32", "7 6 5 4 3", true)]
    [InlineData(Fill.Avartana, FillBy.Rest, "0 8 16 24 32", "1 1 1 1 1", false)]
    public void Continuous_lines_flow_or_are_filled_up(Fill fill, FillBy by, string onsets, string lasts, bool held)
    {
        var section = Section(Mohanam with { Delivery = Delivery.Continuous with { Fill = fill, FillBy = by } });
        Assert.Equal(onsets, string.Join(' ', section.Lines.ConvertAll(l => l.Onset)));
        Assert.Equal(lasts, string.Join(' ', section.Lines.ConvertAll(l => section.Notes[l.FirstNote + l.NoteCount - 1].Length)));
        Assert.Equal(held, section.Notes[1].IsHeld);
        Assert.True(section.Breaths.IsEmpty);
    }

    [Fact]
    public void Free_rhythm_has_nothing_to_fill_and_no_count_in()
    {
        var filled = Refusal(Mohanam with { Meter = Meter.Free, Delivery = Delivery.Continuous with { Fill = Fill.Anga } });
        Assert.Contains("no anga or avartana", filled.Message, StringComparison.Ordinal);
        Assert.Contains("no beat to count in", Refusal(Mohanam with { Meter = Meter.Free, CountIn = 1 }).Message, StringComparison.Ordinal);
        Assert.Contains("no first beat", Refusal(Mohanam with { Meter = Meter.Free, IsRepeatedToFirstBeat = true }).Message, StringComparison.Ordinal);
        Assert.All([filled], f => Assert.Equal(FindingCode.TimeRefused, f.Code));
    }

    [Fact]
    public void Ending_on_the_first_beat_takes_the_least_common_multiple()
    {
        // 20 notes in Adi: 20 aksharas once, 40 = 5 avartanas in two; in misra chapu (7) seven times.
        Assert.Equal(2, Section(Mohanam with { IsRepeatedToFirstBeat = true }).Rounds);
        var seven = Section(Mohanam with { IsRepeatedToFirstBeat = true, Meter = Meter.Parse("misra chapu") });
        Assert.Equal((7, (Rational)140, true), (seven.Rounds, seven.End, seven.IsLastAvartanaFull));

        // Three were asked for: four is the next that ends there.
        Assert.Equal(4, Section(Mohanam with { IsRepeatedToFirstBeat = true, Repetitions = 3 }).Rounds);
        Assert.Equal((3, (int?)4), (Section(Mohanam with { Repetitions = 3 }).Rounds, Section(Mohanam with { Repetitions = 3 }).RoundsToFirstBeat));
    }

    [Fact]
    public void A_drill_that_never_ends_on_the_first_beat_is_refused_with_what_to_change()
    {
        // One line of five aksharas filled to the anga: 0 -> 5 -> 6; 6 -> 11 -> 12 = 4; 4 -> 9 -> 12 = 4 for ever.
        var drill = Mohanam with { Pattern = Pattern.Figure(0, 1, 2, 3, 5), Delivery = Delivery.Continuous with { Fill = Fill.Anga } };
        Assert.Single(Section(drill).Lines);
        Assert.Null(Section(drill).RoundsToFirstBeat);
        var refusal = Refusal(drill with { IsRepeatedToFirstBeat = true });
        Assert.Contains("never ends on the first beat", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("fill each line up to the avartana", refusal.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_many_repetitions_and_too_long_lines_are_refused_with_their_limits()
    {
        var notes = Refusal(Mohanam with { Pattern = Pattern.Ladder.Repeat(100), Repetitions = 1_000 });
        Assert.Contains("2000000 notes; the most is 100000", notes.Message, StringComparison.Ordinal);
        var line = Pattern.Ladder.Expand(Mohanam.Scale).Lines[0];
        var stretched = new Line(line.Notes.ConvertAll(n => n with { Length = 3_000 }));
        var refused = Assert.Throws<PatternException>(() => Mohanam.ToScore(new Expansion([line, stretched], [])));
        Assert.Contains("a line lasts 6000 aksharas; the most is 4096", refused.Message, StringComparison.Ordinal);
        Assert.Equal(2, refused.Finding.Place?.Line);
        var free = Assert.Throws<PatternException>(() => (Mohanam with { Meter = Meter.Free }).ToScore(new Expansion([stretched], [])));
        Assert.Contains("the most is 4096", free.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drill_of_more_grid_steps_than_a_whole_number_counts_is_refused()
    {
        // A note of 1/4096 makes a grid of 4,096 steps; 132 lines of 4,000 aksharas on it are 132 x 4,000 x 4,096 = 2,162,688,000 steps, and
        // 2,147,483,647 can be counted.
        LineNote Note(Rational length) => new(default, ScaleDirection.Ascent, Approach.Leap, length);
        var fine = new Line([Note(new Rational(1, 4_096)), Note(new Rational(4_095, 4_096)), Note(3_999)]);
        ValueList<Line> Lines(int count) => Enumerable.Repeat(fine, count).ToValueList();
        var refused = Assert.Throws<PatternException>(() => Mohanam.ToScore(new Expansion(Lines(132))));
        Assert.Contains("the drill is too long to be put in time", refused.Message, StringComparison.Ordinal);
        Assert.Equal(131 * 4_000, Mohanam.ToScore(new Expansion(Lines(131))).Sections[0].End);
    }

    [Fact]
    public void Values_outside_their_ranges_are_refused()
    {
        Assert.Contains("between 1 and 1000, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Mohanam with { Repetitions = 0 }).Message, StringComparison.Ordinal);
        Assert.Contains("between 0 and 8, not 9", Assert.Throws<ArgumentOutOfRangeException>(() => Mohanam with { CountIn = 9 }).Message, StringComparison.Ordinal);
        Assert.Contains("Fill must be between 0 and 2, not 3", Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.Continuous with { Fill = (Fill)3 }).Message, StringComparison.Ordinal);
        Assert.Contains("BreathSeconds must be between 1/5 and 10, not 0", Assert.Throws<ArgumentOutOfRangeException>(() => Delivery.LineByLine with { BreathSeconds = 0 }).Message, StringComparison.Ordinal);
    }

    /// <summary>For every meter, gati, kalam and delivery: lines in order, notes and breaths inside them, fills where they were asked for.</summary>
    [Property(MaxTest = 200)]
    public Property Every_line_ends_where_its_delivery_says() => Prop.ForAll(Drills.ToArbitrary(), drill =>
    {
        var section = Section(drill);
        var delivery = drill.Delivery;
        Rational at = section.CountIn;
        var breath = 0;
        foreach (var line in section.Lines)
        {
            Assert.Equal(at, line.Onset);
            at += line.Length;
            var last = section.Notes[line.FirstNote + line.NoteCount - 1];
            var end = last.Onset + last.Length;
            var breathes = delivery is { IsLineByLine: true, FillBy: FillBy.Room } && delivery.Fill != Fill.None;
            Assert.True(last.Length >= (breathes ? line.Speed.Unit / 2 : line.Speed.Unit));
            if (delivery.IsLineByLine)
            {
                Assert.Equal(end, section.Breaths[breath].Onset);
                var whole = delivery.BreathAksharas(drill.Tempo.Start);
                Assert.True(end + section.Breaths[breath].Length <= at);
                if (breathes)
                {
                    // All that the last note has is note and breath; the note has half its length or the least hold, or the breath is whole.
                    var span = at - last.Onset;
                    Assert.Equal(span, last.Length + section.Breaths[breath].Length);
                    Assert.True(section.Breaths[breath].Length == whole || last.Length * 2 == line.Speed.Unit || last.Length == Rational.Max(delivery.LeastHold, line.Speed.Unit));
                    Assert.True(section.Breaths[breath].Length <= whole);
                    Assert.True(span - line.Speed.Unit < drill.Meter.Beats);
                }
                else
                {
                    Assert.True(section.Breaths[breath].Length >= whole);
                    Assert.True(last.Length >= delivery.LeastHold);
                }

                breath++;
            }

            if (delivery.Fill != Fill.None)
            {
                var within = at - ((at / drill.Meter.Beats).Floor() * drill.Meter.Beats);
                var ends = delivery.Fill == Fill.Anga ? drill.Meter.Groups.Select((_, i) => drill.Meter.Groups.Take(i).Sum()) : [0];
                Assert.Contains(within, ends.Select(e => (Rational)e));
            }
            else if (!delivery.IsLineByLine)
            {
                Assert.Equal(line.Onset + (line.NoteCount * line.Speed.Unit), at);
            }
        }

        Assert.Equal(breath, section.Breaths.Count);
        Assert.Equal(at, section.End);
        Assert.Equal((at / drill.Meter.Beats).Ceiling(), section.Measures.Count);
        Assert.Equal(section.Measures.Count * (Rational)drill.Meter.Beats, section.Length);
        Assert.Equal(at - (((at / drill.Meter.Beats).Ceiling() - 1) * drill.Meter.Beats), section.LastFilled);
        if (section.RoundsToFirstBeat is { } rounds and <= 60 && drill.Meter.Beats <= 16)
        {
            Assert.True(Section(drill with { Repetitions = rounds }).IsLastAvartanaFull);
            for (var fewer = drill.Repetitions; fewer < rounds; fewer++)
            {
                Assert.False(Section(drill with { Repetitions = fewer }).IsLastAvartanaFull);
            }
        }
    });

    private static Gen<Drill> Drills =>
        from meter in Gen.Elements<Meter>([.. Meter.Talas, .. Meter.Chapus, Meter.TimeSignature(6, 8), Meter.TimeSignature(5, 4), Meter.Parse("2+2+3/8")])
        from speeds in Gen.Choose(1, 3).SelectMany(n => Speeds.ArrayOf(n))
        from lineByLine in Gen.Elements(true, false)
        from fill in Gen.Elements(Fill.None, Fill.Anga, Fill.Avartana)
        from fillBy in Gen.Elements(FillBy.Room, FillBy.Hold, FillBy.Rest)
        from hold in Gen.Elements<Rational>(1, 2, new Rational(1, 2), new Rational(5, 4))
        from breath in Gen.Elements<Rational>(1, 2, new Rational(1, 2), new Rational(13, 10))
        from tempo in Gen.Choose(40, 160)
        from repetitions in Gen.Choose(1, 3)
        from countIn in Gen.Choose(0, 2)
        select Mohanam with
        {
            Meter = meter,
            Speeds = speeds.ToValueList(),
            Delivery = (lineByLine ? Delivery.LineByLine : Delivery.Continuous) with { Fill = fill, FillBy = fillBy, LeastHold = hold, BreathSeconds = breath },
            Tempo = tempo,
            Repetitions = repetitions,
            CountIn = countIn,
        };

    private static Gen<Speed> Speeds =>
        from kalam in Gen.Choose(1, 4)
        from gati in Gen.Elements(3, 4, 5, 7, 9)
        select new Speed(kalam, gati);

    private static Section Section(Drill drill) => drill.ToScore().Sections[0];

    private static Finding Refusal(Drill drill)
    {
        Assert.False(drill.TryToScore(out _, out var refusal));
        return refusal!;
    }
}
