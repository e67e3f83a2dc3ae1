namespace Warmup.Voices.Tests;

/// <summary>
/// Beats against the drone. Source: two tones beat at the difference of their frequencies (textbook acoustics); the expectations are worked
/// out by hand from exact ratios, the strings of P_ S S S_ being 3/4, 1, 1 and 1/2 of the tonic.
/// </summary>
public class TuningConsonanceTests
{
    private static readonly Tonic Tonic = Tonic.FromHz(200);

    [Theory]
    [InlineData("S", 1, 1, 1)] // S with the string S
    [InlineData("P", 0, 1, 2)] // 3/2 = 2 x 3/4
    [InlineData("P", 3, 1, 3)] // 3/2 = 3 x 1/2
    [InlineData("G3", 3, 2, 5)] // 2 x 5/4 = 5 x 1/2
    [InlineData("G3", 1, 4, 5)] // 4 x 5/4 = 5
    [InlineData("M1", 1, 3, 4)] // 3 x 4/3 = 4
    [InlineData("R2", 0, 2, 3)] // 2 x 9/8 = 3 x 3/4
    [InlineData("D2", 1, 3, 5)] // 3 x 5/3 = 5
    [InlineData("N3", 0, 2, 5)] // 2 x 15/8 = 5 x 3/4
    [InlineData("G2", 0, 5, 8)] // 5 x 6/5 = 8 x 3/4
    [InlineData("D1", 1, 5, 8)] // 5 x 8/5 = 8
    [InlineData("S'", 3, 1, 4)] // 2 = 4 x 1/2
    [InlineData("P_", 0, 1, 1)]
    public void A_just_svara_meets_a_string_without_beating(string svara, int index, int voice, int partial)
    {
        var beat = Consonance.With(Tone(svara), Tonic, Tuning.Just, Drone())[index];
        Assert.Equal((voice, partial, 0.0), (beat.VoicePartial, beat.StringPartial, beat.BeatHz));
        Assert.True(beat.IsLockedIn);
    }

    [Fact]
    public void An_equal_third_beats_as_its_second_partial_differs_from_the_fifth_of_the_low_string()
    {
        // 200 x (2 x 2^(1/3) - 5/2) = 3.968 Hz; against the string S it would be twice that.
        var expected = 200 * ((2 * Math.Pow(2, 1 / 3.0)) - 2.5);
        var slowest = Consonance.Slowest(Tone("G3"), Tonic, Tuning.Equal, Drone());
        Assert.Equal((3, 2, 5), (slowest.StringIndex, slowest.VoicePartial, slowest.StringPartial));
        Assert.Equal(expected, slowest.BeatHz, 1e-9);
        Assert.False(slowest.IsLockedIn);
        Assert.Equal(2 * expected, Consonance.With(Tone("G3"), Tonic, Tuning.Equal, Drone())[1].BeatHz, 1e-9);
    }

    [Fact]
    public void With_the_fundamental_alone_a_third_is_as_far_as_its_nearest_partial()
    {
        // 250 Hz lies 50 Hz from the tonic's 200 and from the low P's second partial, 300.
        var beats = Consonance.With(Tone("G3"), Tonic, Tuning.Just, Drone(), 1);
        Assert.Equal(50, beats[1].BeatHz, 1e-9);
        Assert.Equal(50, beats[0].BeatHz, 1e-9);
        Assert.All(beats.ToArray(), b => Assert.Equal(1, b.VoicePartial));
    }

    [Fact]
    public void Every_beat_is_the_least_of_all_pairs_of_partials()
    {
        var drone = Drone();
        foreach (var tuning in Tuning.All)
        {
            foreach (var degree in Catalogue.Default.Parent(39).Scale.Degrees)
            {
                var tone = new ScaleTone(degree);
                var hz = tuning.Hz(tone, Tonic);
                foreach (var beat in Consonance.With(tone, Tonic, tuning, drone))
                {
                    var least = (from v in Enumerable.Range(1, 8) from s in Enumerable.Range(1, 8) select Math.Abs((v * hz) - (s * drone.Strings[beat.StringIndex].Hz))).Min();
                    Assert.Equal(least, beat.BeatHz, 1e-6);
                }
            }
        }
    }

    [Fact]
    public void Partials_of_the_voice_are_1_to_8()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Consonance.With(default, Tonic, Tuning.Just, Drone(), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Consonance.With(default, Tonic, Tuning.Just, Drone(), 9));
    }

    private static Drone Drone() => DroneStyle.Tanpura.For(
        Catalogue.Default.Parent(29).Scale, Tonic, Tuning.Just, NoteName.FromMidi(Tonic.Midi));

    private static ScaleTone Tone(string text) => ScaleTone.Parse(text);
}
