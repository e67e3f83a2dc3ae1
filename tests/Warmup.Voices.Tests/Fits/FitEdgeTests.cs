namespace Warmup.Voices.Tests;

/// <summary>Edges of what fits: exactly 50 cents, the outermost tempi and tonics, one and many lines. Source: the documented rules, counted by hand.</summary>
public class FitEdgeTests
{
    private static Singer Voice(string low, string high, Rational? seconds = null, Experience experience = Experience.Beginner, string alias = "Mira") =>
        new(alias, NoteName.Parse(low), NoteName.Parse(high), seconds ?? 120, experience);

    private static Drill Drill(string scale, string pattern) =>
        new() { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Parse(pattern), Tonic = Tonic.Parse("C4"), Tempo = 60, Meter = Meter.Free };

    private static string Text(RangeChangeKind kind, Drill drill, Singer singer) => RangeChange.Smallest(drill, singer).Single(c => c.Kind == kind).Text;

    [Fact]
    public void Notes_of_several_lines_are_folded()
    {
        // C4 to C5 for a voice from G3 to G4: A4 of the fourth line, A4 and C5 of the fifth.
        Assert.Equal("fold at the octave: 3 notes of lines 4-5 an octave away", Text(RangeChangeKind.Fold, Drill("mohanam", "ladder"), Voice("G3", "G4")));
        Assert.Equal("fold at the octave: 1 note of line 5 an octave away", Text(RangeChangeKind.Fold, Drill("mohanam", "ladder"), Voice("C4", "A4")));
    }

    [Fact]
    public void A_line_whose_note_lies_exactly_50_cents_outside_stays()
    {
        // The seventh degree 50 cents above B4: the sixth line keeps it, the seventh has C5, a semitone above.
        var high = Drill("major", "ladder") with { Tuning = Tuning.Equal.With(Degree.Parse("N3"), Interval.FromCents(1150)) };
        Assert.Equal("leave out line 7", Text(RangeChangeKind.DropLines, high, Voice("C4", "B4")));

        // The second degree 50 cents below D4: the first line keeps it, the second has C4, a tone below.
        var low = Drill("major", "[R G] + [S R G]") with { Tuning = Tuning.Equal.With(Degree.Parse("R2"), Interval.FromCents(150)) };
        Assert.Equal("leave out line 2", Text(RangeChangeKind.DropLines, low, Voice("D4", "F4")));
    }

    [Fact]
    public void Only_tonics_from_C1_to_C7_are_ranked()
    {
        // Four notes from the tonic would fit F7 to C8 on tonics from F7 on, four up to the octave would fit C1 to F1 on F0: beyond the limits.
        foreach (var (line, singer) in ((string, Singer)[])[("[S R G M]", Voice("F7", "C8")), ("[P D N S']", Voice("C1", "F1"))])
        {
            var tonics = Drill("major", line).ToScore().RankTonics([singer]);
            Assert.Equal(12, tonics.Count);
            Assert.All(tonics, t => Assert.InRange(t.Tonic.Midi, Tonic.LowestMidi, Tonic.HighestMidi));
            Assert.All(tonics, t => Assert.Equal(1, t.SingersOut));
        }
    }

    [Fact]
    public void Two_singers_of_the_same_short_breath_are_told_apart_by_their_capacity()
    {
        // Eight seconds; others than beginners breathe in 0.4 s. Half of 16 s is enough, half of 15 is not.
        var needs = ScoreNeeds.Of(Drill("major", "run").ToScore(), [new Rational(4, 5), new Rational(2, 5)], []);
        Assert.True(needs.IsInBreath(Voice("C4", "C5", 16, Experience.Intermediate)));
        Assert.False(needs.IsInBreath(Voice("C4", "C5", 15, Experience.Intermediate)));
    }

    [Fact]
    public void A_slower_speed_can_be_the_one_that_has_no_tempo()
    {
        // Twenty equal notes without a place to breathe on 0.6 of 4.5 s = 2.7 s: 7.41 notes a second, at the first speed 444 aksharas a minute,
        // at the second 223, at the third 112; an advanced voice has at most 8 notes a second, which are 480, 240 and 120.
        var windows = TempoWindow.OfSpeeds(Drill("major", "[S S S S S S S S S S S S S S S S S S S S]"), [Voice("C4", "C5", new Rational(9, 2), Experience.Advanced)]);
        Assert.Equal(["", "223 to 240", "112 to 120"], windows.Select(w => string.Join(", ", w.Intervals)));
        Assert.Equal(["speed 2 has 223 to 240", "speed 3 has 112 to 120"], windows[0].OpenedBy);
        Assert.Equal(
            "speed 1: none; closed by: breath at 400: one breath has to last 3.0 s (line 1); the most for Mira is 2.7 s; opened by: speed 2 has 223 to 240; or speed 3 has 112 to 120",
            windows[0].ToString());
    }

    [Fact]
    public void The_quickest_tempo_of_all_can_be_the_only_one()
    {
        // Twenty notes on 0.6 of 5 s = 3 s: 400 a minute.
        var window = TempoWindow.OfSpeeds(Drill("major", "[S S S S S S S S S S S S S S S S S S S S]"), [Voice("C4", "C5", 5, Experience.Advanced)])[0];
        Assert.Equal("speed 1: 400", window.ToString());
        Assert.Equal("tempi go from 10 to 400", window.Intervals[0].Above);
        Assert.StartsWith("breath at 399: ", window.Intervals[0].Below, StringComparison.Ordinal);
    }

    [Fact]
    public void What_nothing_opens_says_only_what_closes_it()
    {
        // On 4.8 s twenty notes need 4.17 a second at any speed, a beginner has 3; equal notes leave no place to breathe in.
        var window = TempoWindow.OfSpeeds(Drill("major", "[S S S S S S S S S S S S S S S S S S S S]"), [Voice("C4", "C5", 12)])[0];
        Assert.Empty(window.OpenedBy);
        Assert.StartsWith($"speed 1: none; closed by: {window.ClosedBy[0]}; ", window.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("breath at 180: one breath has to last 6.7 s (line 1)", window.ClosedBy[0], StringComparison.Ordinal);
        Assert.StartsWith("throat at 181: line 1: ", window.ClosedBy[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Several_lines_may_have_to_be_left_out()
    {
        // On 0.4 of 11 s = 4.4 s twenty notes need 273, the first fourteen 191, the first nine 122.7 a minute; a beginner has at most 180.
        Assert.Contains("2 lines fewer at the end open 123 to 180", TempoWindow.OfSpeeds(Drill("mohanam", "ladder"), [Voice("C4", "C5", 11)])[0].OpenedBy);
    }

    [Fact]
    public void A_class_table_says_how_much_lies_at_either_end_of_the_range_and_who_is_too_slow()
    {
        // C4 D4 E4 F4 G4 A4 B4 C5 in twenty semitones from C4: C4 to E4 lie in the lowest fifth. Each is a second long.
        var drill = Drill("major", "run");
        var cell = ClassReport.Of([drill], [Voice("C4", "G#5")]).Rows[0].Cells[0];
        Assert.Equal((ClassVerdict.Fits, 0, new Rational(3, 8), Rational.Zero), (cell.Verdict, cell.Octaves, cell.BottomShare, cell.TopShare));
        var low = ClassReport.Of([drill], [Voice("E3", "C5")]).Rows[0].Cells[0];
        Assert.Equal((new Rational(3, 8), Rational.Zero), (low.TopShare, low.BottomShare)); // four semitones from the top: A4, B4, C5

        // Four notes a second: too quick for a beginner only.
        var quick = ClassReport.Of([drill with { Tempo = 240 }], [Voice("C4", "C5", alias: "Wren"), Voice("C4", "C5", experience: Experience.Advanced, alias: "Finch"), Voice("C4", "C5", alias: "Lark")]);
        Assert.Equal(["Wren: DoesNotFit", "Finch: Fits", "Lark: DoesNotFit"], quick.Rows.Select(r => r.ToString()));
        Assert.StartsWith("line 1: 4.0 notes a second; the most for this level (beginner) is 3", quick.Rows[0].Cells[0].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void The_middle_of_a_drill_is_compared_with_the_middle_of_each_range()
    {
        // C4 to C5 has its middle on F#4; G3 to A4 on D4 (four below), C4 to D5 on G4 (one above).
        var fit = Drill("major", "run").ToScore().RankTonics([Voice("G3", "A4", alias: "Wren"), Voice("C4", "D5", alias: "Finch")]).Single(t => t.Tonic.ToString() == "C4");
        Assert.Equal([4, 1], fit.Singers.Select(s => (int)Rational.Max(s.CentreDistance, -s.CentreDistance).Floor()));
        Assert.Equal(5, fit.CentreDistance);
        Assert.Equal([true, false], fit.Singers.Select(s => s.IsOut));
    }
}
