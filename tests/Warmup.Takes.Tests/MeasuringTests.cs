namespace Warmup.Takes.Tests;

/// <summary>A voice alone, of known range and length; and what has to be refused.</summary>
public class MeasuringTests
{
    private const int Rate = 16_000;

    [Theory]
    [InlineData(98.0, 523.25)]
    [InlineData(196.0, 880.0)]
    [InlineData(82.4, 330.0)]
    public void The_ends_of_a_glide_are_found_within_15_cents(double low, double high)
    {
        // From the middle down, held, up, held, and back.
        var middle = Math.Sqrt(low * high);
        var sound = Voice([.. Silence(1), .. Glide(middle, low, 2), .. Glide(low, low, 0.4), .. Glide(low, high, 4), .. Glide(high, high, 0.4), .. Glide(high, middle, 2), .. Silence(1)]);
        var range = VoiceMeasuring.Range(SoundSource.FromSamples(sound, Rate), TestContext.Current.CancellationToken);
        Assert.InRange(1200 * Math.Log2(range.LowHz / low), -15, 15);
        Assert.InRange(1200 * Math.Log2(range.HighHz / high), -15, 15);
    }

    [Theory]
    [InlineData(4.0)]
    [InlineData(13.7)]
    public void A_sustained_tone_is_timed_within_150_ms(double seconds)
    {
        var sound = Voice([.. Silence(1), .. Glide(220, 222, seconds), .. Silence(1.5), .. Glide(220, 221, 2), .. Silence(0.5)]);
        var heard = VoiceMeasuring.Sustained(SoundSource.FromSamples(sound, Rate), TestContext.Current.CancellationToken).ToDouble();
        Assert.InRange(heard, seconds - 0.15, seconds + 0.15);
    }

    [Theory]
    [InlineData("drone", "drone")]
    [InlineData("noise", "noise")]
    [InlineData("silence", "no voice")]
    public void A_drone_noise_and_silence_are_refused_by_name(string what, string expected)
    {
        var random = new Random(3);
        var voice = Voice([.. Silence(1), .. Glide(220, 440, 4), .. Silence(1)]);
        var drone = VoiceMaker.DroneAlone(Corpus.Plans("clean", 3, 1).First(), 10, random);
        for (var i = 0; i < voice.Length; i++)
        {
            voice[i] = what switch
            {
                "drone" => (0.8f * voice[i]) + (0.3f * drone[(int)((long)i * VoiceMaker.Rate / Rate)]),
                "noise" => (0.8f * voice[i]) + (float)(0.03 * TakeMaker.Gauss(random)),
                _ => 0,
            };
        }

        var range = Assert.Throws<SoundException>(() => VoiceMeasuring.Range(SoundSource.FromSamples(voice, Rate), TestContext.Current.CancellationToken));
        var tone = Assert.Throws<SoundException>(() => VoiceMeasuring.Sustained(SoundSource.FromSamples(voice, Rate), TestContext.Current.CancellationToken));
        Assert.Contains(expected, range.Message, StringComparison.Ordinal);
        Assert.Contains(expected, tone.Message, StringComparison.Ordinal);
    }

    private static IEnumerable<double> Silence(double seconds) => Enumerable.Repeat(0.0, (int)(seconds * Rate));

    private static IEnumerable<double> Glide(double from, double to, double seconds) =>
        Enumerable.Range(0, (int)(seconds * Rate)).Select(i => from * Math.Pow(to / from, i / (seconds * Rate)));

    /// <summary>Ten harmonics at the frequencies that are named; 0 is silence.</summary>
    private static float[] Voice(double[] hz)
    {
        var phase = 0.0;
        return Array.ConvertAll(hz, f =>
        {
            phase += 2 * Math.PI * f / Rate;
            return f <= 0 ? 0f : (float)Enumerable.Range(1, 10).Where(h => h * f < 7_000).Sum(h => 0.25 / h * Math.Sin(h * phase));
        });
    }
}
