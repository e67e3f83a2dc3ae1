namespace Warmup.Takes.Tests;

/// <summary>The pitch of made sounds, of which the frequencies are known.</summary>
public class PitchTrackerTests
{
    private const int Rate = 16_000;

    /// <summary>A voice sings every other second a third of a semitone beside a partial of a tone that sounds all the time, 3.5 dB above it: it is the strongest pitch, and its own.</summary>
    [Theory]
    [InlineData(-35)]
    [InlineData(35)]
    public void A_voice_is_heard_beside_what_sounds_all_the_time(double beside)
    {
        var hz = 5 * 130.8 * Math.Pow(2, beside / 1200) / 2;
        var sound = Sound(12, t => Tone(130.8, t, 0.3) + ((int)t % 2 == 0 ? 0 : Tone(hz, t, 0.2)));
        var track = PitchTracker.Track(SoundSource.FromSamples(sound, Rate), TestContext.Current.CancellationToken);
        var off = Enumerable.Range(0, track.Count).Where(f => f % 200 is > 120 and < 180).Select(f => Math.Abs(track.At(f)[0].Cents - Pitches.Cents(hz))).Order().ToList();
        Assert.InRange(off[off.Count * 9 / 10], 0, 5);
    }

    /// <summary>A tone that is held longer than the time about each moment that is looked at sounds all the time itself, and is heard none the less.</summary>
    [Fact]
    public void A_tone_that_sounds_all_the_time_is_heard()
    {
        var track = PitchTracker.Track(SoundSource.FromSamples(Sound(20, t => Tone(220, t, 0.2)), Rate), TestContext.Current.CancellationToken);
        Assert.All(Enumerable.Range(10, track.Count - 20), f => Assert.Equal(Pitches.Cents(220), track.At(f)[0].Cents, 1.0));
    }

    internal static float[] Sound(double seconds, Func<double, double> at) => [.. Enumerable.Range(0, (int)(seconds * Rate)).Select(i => (float)at(i / (double)Rate))];

    /// <summary>Ten harmonics that fall by 6 dB an octave.</summary>
    internal static double Tone(double hz, double t, double size) => Enumerable.Range(1, 10).Sum(h => size / h * Math.Sin((2 * Math.PI * h * hz * t) + (h * h)));
}
