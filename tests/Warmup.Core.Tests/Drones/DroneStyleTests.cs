namespace Warmup.Tests;

/// <summary>
/// Tanpura tunings and cycle: Wikipedia, "Tanpura" and "Tambura" (P, M or N first; five strings with N second; an even pluck and 2 to 3
/// seconds behind the last string). Which first string a scale takes, and that the cycle is free of the beat: common practice. The sruti
/// box's notes are the project's own setting.
/// </summary>
public class DroneStyleTests
{
    private static readonly NoteName C4 = new('C', 0, 4);

    [Theory]
    [InlineData("S R2 G3 M1 P D2 N3 S'", "P_ S S S_")]
    [InlineData("S R2 G3 P D2 S'", "P_ S S S_")]
    [InlineData("S G2 M1 D1 N2 S'", "M1_ S S S_")] // a scale without P
    [InlineData("S R2 G2 M1 D2 N2 S'", "M1_ S S S_")]
    [InlineData("S R1 G3 M2 D1 N3 S'", "N3_ S S S_")] // neither P nor M1
    [InlineData("S G3 M2 D2 S'", "S_ S S S_")] // none of the three
    [InlineData("S R2 M1 P N2 S' / S' N2 D2 P M1 G2 R2 S", "P_ S S S_")]
    [InlineData("S R2 G3 M2 D2 S' / S' N3 D2 P M2 G3 R2 S", "P_ S S S_")] // P in the descent alone
    public void The_first_string_of_a_tanpura_is_chosen_by_the_scales_notes(string scale, string strings) =>
        Assert.Equal(strings, Tones(DroneStyle.Tanpura, scale));

    [Theory]
    [InlineData("M1", "M1_ S S S_")]
    [InlineData("N3", "N3_ S S S_")]
    [InlineData("S", "S_ S S S_")]
    [InlineData("P", "P_ S S S_")]
    public void The_teachers_word_overrides_the_scales(string first, string strings)
    {
        Assert.True(Degree.TryParse(first, out var degree, out _));
        Assert.Equal(strings, Tones(DroneStyle.Tanpura with { First = degree }, "S R2 G3 M1 P D2 N3 S'"));
        Assert.Equal(strings, Tones(DroneStyle.Tanpura with { First = degree }, "S G3 M2 D2 S'"));
    }

    [Theory]
    [InlineData("S R2 G3 M1 P D2 N3 S'", "P_ N3_ S S S_")]
    [InlineData("S R2 G3 M1 P D2 N2 S'", "P_ N2_ S S S_")]
    [InlineData("S R2 G3 M1 P D1 N1 S'", "P_ N1_ S S S_")]
    [InlineData("S G2 M1 D1 N2 S'", "M1_ N2_ S S S_")]
    [InlineData("S R2 M1 P N3 S' / S' N2 D2 P M1 G2 R2 S", "P_ N3_ S S S_")] // both N: the higher
    public void Five_strings_have_an_N_behind_the_first(string scale, string strings) =>
        Assert.Equal(strings, Tones(DroneStyle.Tanpura with { StringCount = 5 }, scale));

    [Fact]
    public void A_fifth_string_that_the_scale_does_not_have_is_left_out_and_a_finding_says_so()
    {
        var drill = Drill("S R2 G3 P D2 S'", DroneStyle.Tanpura with { StringCount = 5 });
        var score = drill.ToScore();
        Assert.Equal("P_ S S S_", Tones(score));
        var finding = Assert.Single(score.Findings);
        Assert.Equal((FindingCode.DroneWithoutString, Severity.Note), (finding.Code, finding.Severity));

        // Named by the teacher, it is there; without a drone there is nothing to say.
        var named = (drill with { DroneStyle = drill.DroneStyle with { Second = new Degree(7) } }).ToScore();
        Assert.Equal("P_ N3_ S S S_", Tones(named));
        Assert.Empty(named.Findings);
        Assert.Empty((drill with { HasDrone = false }).ToScore().Findings);
    }

    [Theory]
    [InlineData("S R2 G3 M1 P D2 N3 S'", "S_ P_ S")]
    [InlineData("S G2 M1 D1 N2 S'", "S_ M1_ S")]
    [InlineData("S R1 G3 M2 D1 N3 S'", "S_ S")] // a seventh is not held
    [InlineData("S G3 M2 D2 S'", "S_ S")]
    public void A_sruti_box_holds_the_tonic_and_the_fifth_or_the_fourth(string scale, string notes)
    {
        Assert.Equal(notes, Tones(DroneStyle.SrutiBox, scale));
        Assert.Equal("S_ N3_ S", Tones(DroneStyle.SrutiBox with { First = new Degree(7) }, scale));
    }

    [Fact]
    public void A_held_drone_sounds_from_the_beginning_to_the_end()
    {
        var drone = Drill("S R2 G3 M1 P D2 N3 S'", DroneStyle.SrutiBox).ToScore().Drone!;
        Assert.True(drone.IsHeld);
        var seconds = new Rational(71, 3);
        Assert.Equal([(0, Rational.Zero, seconds), (1, Rational.Zero, seconds), (2, Rational.Zero, seconds)], drone.Strokes(seconds).Select(s => (s.StringIndex, s.Onset, s.Length)));
        Assert.Empty(drone.Strokes(0));
    }

    [Fact]
    public void Strings_are_plucked_evenly_with_a_longer_rest_behind_the_last()
    {
        // Four strings a second apart and two seconds of rest; the last stroke that begins in time is cut at the end.
        var drone = DroneStyle.Tanpura.For(Scale("S R2 G3 M1 P D2 N3 S'"), Tonic.FromMidi(60), Tuning.Equal, C4);
        Assert.Equal(
            [(0, 0, 5), (1, 1, 5), (2, 2, 5), (3, 3, 4), (0, 5, 2), (1, 6, 1)],
            drone.Strokes(7).Select(s => (s.StringIndex, (int)s.Onset.Numerator, (int)s.Length.Numerator)));
        Assert.InRange(drone.CycleSeconds.ToDouble(), 4, 6);
        var slower = (DroneStyle.Tanpura with { StringCount = 5, StrokeSeconds = new Rational(3, 4), RestSeconds = 3 })
            .For(Scale("S R2 G3 M1 P D2 N3 S'"), Tonic.FromMidi(60), Tuning.Equal, C4);
        Assert.Equal(6, slower.CycleSeconds);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(61)]
    [InlineData(200)]
    public void The_drone_does_not_know_the_tempo(int tempo)
    {
        var drill = Drill("S R2 G3 P D2 S'", DroneStyle.Tanpura);
        Assert.Equal(drill.ToScore().Drone, (drill with { Tempo = tempo, Meter = Meter.Free, Speeds = [Speed.Second] }).ToScore().Drone);
    }

    [Fact]
    public void The_strings_sound_in_the_drills_tuning()
    {
        // Just: P 3/2, M 4/3, N 15/8; below the middle S half of it (published five-limit ratios).
        var style = DroneStyle.Tanpura with { StringCount = 5 };
        var drone = (Drill("S R2 G3 M1 P D2 N3 S'", style) with { Tuning = Tuning.Just, Tonic = Tonic.FromHz(200) }).ToScore().Drone!;
        double[] hz = [150, 187.5, 200, 200, 100];
        Assert.Equal(hz, drone.Strings.ConvertAll(s => Math.Round(s.Hz, 9)));
        drone = (Drill("S G2 M1 D1 N2 S'", DroneStyle.SrutiBox) with { Tuning = Tuning.Just, Tonic = Tonic.FromHz(300) }).ToScore().Drone!;
        hz = [150, 200, 300];
        Assert.Equal(hz, drone.Strings.ConvertAll(s => Math.Round(s.Hz, 9)));
    }

    [Fact]
    public void A_drone_whose_cycle_would_have_no_length_is_refused()
    {
        // Its strokes would never end.
        var drone = DroneStyle.Tanpura.For(Scale("S R2 G3 M1 P D2 N3 S'"), Tonic.FromMidi(60), Tuning.Equal, C4);
        Refused("RestSeconds must be between 1/10 and 60, not 0", () => new Drone(drone.Strings, 0, 0));
        Refused("RestSeconds must be between 1/10 and 60, not 0", () => drone with { StrokeSeconds = 0, RestSeconds = 0 });
        Refused("RestSeconds must be between 1/10 and 60, not -5", () => DroneStyle.Tanpura with { RestSeconds = -5 });
        Refused("RestSeconds must be between 1/10 and 60, not 61", () => drone with { RestSeconds = 61 });
        Refused("StrokeSeconds must be between 0 and 60, not -1", () => drone with { StrokeSeconds = -1 });
        Refused("StrokeSeconds must be between 0 and 60, not 61", () => DroneStyle.Tanpura with { StrokeSeconds = 61 });
        Assert.Equal(40, (drone with { StrokeSeconds = 0, RestSeconds = new Rational(1, 10) }).Strokes(1).Count());
    }

    [Fact]
    public void A_drone_without_strings_or_with_too_many_is_refused()
    {
        var note = DroneStyle.Tanpura.For(Scale("S R2 G3 M1 P D2 N3 S'"), Tonic.FromMidi(60), Tuning.Equal, C4).Strings[0];
        Refused("the number of drone strings must be between 1 and 32, not 0", () => new Drone([], 1, 2));
        Refused("the number of drone strings must be between 1 and 32, not 33", () => new Drone(Enumerable.Repeat(note, 33).ToValueList(), 1, 2));
        Refused("StringCount must be between 4 and 5, not 3", () => DroneStyle.Tanpura with { StringCount = 3 });
        Refused("StringCount must be between 4 and 5, not 6", () => DroneStyle.Tanpura with { StringCount = 6 });
    }

    private static void Refused(string message, Func<object> make) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentOutOfRangeException>(make).Message, StringComparison.Ordinal);

    private static Scale Scale(string text) => Warmup.Scale.Parse(text);

    private static Drill Drill(string scale, DroneStyle style) =>
        new() { Scale = Scale(scale), Pattern = Pattern.Ladder, Tonic = Tonic.FromMidi(60), DroneStyle = style };

    private static string Tones(DroneStyle style, string scale) => Tones(Drill(scale, style).ToScore());

    private static string Tones(Score score) => string.Join(' ', score.Drone!.Strings.ConvertAll(s => s.Tone.ToString()));
}
