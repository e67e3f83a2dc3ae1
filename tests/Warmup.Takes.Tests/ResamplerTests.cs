namespace Warmup.Takes.Tests;

/// <summary>A tone keeps its height, size and place at the rate of the analysis, and what that rate cannot hold is taken out.</summary>
public class ResamplerTests
{
    [Theory]
    [InlineData(8_000, 3_000)]
    [InlineData(11_025, 4_500)]
    [InlineData(22_050, 220)]
    [InlineData(44_100, 4_700)]
    [InlineData(47_999, 1_000)]
    [InlineData(48_000, 5_000)]
    [InlineData(192_000, 5_400)]
    public void A_tone_is_the_same_at_another_rate(int rate, double hz)
    {
        var made = Resampled(rate, hz);
        Assert.InRange(made.Count, MonoSound.Rate / 2, (MonoSound.Rate / 2) + 2);
        for (var i = 200; i < made.Count - 200; i++)
        {
            Assert.Equal(Math.Sin(2 * Math.PI * hz * i / MonoSound.Rate), made[i], 2e-3);
        }
    }

    [Theory]
    [InlineData(44_100, 11_000)]
    [InlineData(44_100, 20_000)]
    [InlineData(48_000, 15_900)]
    public void What_would_fall_back_onto_harmonics_is_taken_out(int rate, double hz)
    {
        var made = Resampled(rate, hz);
        Assert.All(made.Skip(200).SkipLast(200), s => Assert.InRange(s, -1e-3, 1e-3));
    }

    [Fact]
    public void The_parts_in_which_sound_comes_make_no_difference()
    {
        var tone = WavFiles.Tone(331, 0.3, 44_100);
        float[] Made(int part)
        {
            var resampler = new Resampler(44_100, MonoSound.Rate);
            var made = tone.Chunk(part).SelectMany(p => resampler.Next(p).ToArray()).ToList();
            return [.. made, .. resampler.End().ToArray()];
        }

        Assert.Equal(Made(tone.Length), Made(7));
    }

    private static List<float> Resampled(int rate, double hz)
    {
        var resampler = new Resampler(rate, MonoSound.Rate);
        var tone = Enumerable.Range(0, rate / 2).Select(i => (float)Math.Sin(2 * Math.PI * hz * i / rate));
        var made = tone.Chunk(1_000).SelectMany(part => resampler.Next(part).ToArray()).ToList();
        made.AddRange(resampler.End().ToArray());
        return made;
    }
}
