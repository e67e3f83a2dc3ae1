namespace Warmup.Audio.Tests;

/// <summary>
/// What is heard of slides, swells and short notes, measured by <see cref="Tracker"/> and sample by sample. Expected: just ratios worked out
/// by hand on 220 Hz, and the format's own promise of 12 dB.
/// </summary>
public class SlideTests
{
    private const int Rate = 44_100;

    private static short[] Sound(string pattern) => Sounds.File((Sounds.Drill(pattern) with { Tuning = Tuning.Just }).ToScore(), Sounds.VoiceOnly).Left;

    private static double Level(short[] sound, double second, double length = 0.1) =>
        10 * Math.Log10(sound.AsSpan((int)(second * Rate), (int)(length * Rate)).ToArray().Average(s => (double)s * s));

    [Fact]
    public void A_slide_is_in_tune_at_both_ends_and_even_in_cents_between()
    {
        // S for 2 s, then 2 s of slide to the fifth (3/2) over which P is held from second 4 on: 702 cents.
        var sound = Sound("[S , , , P , , , S' , , ,].glide");
        double Cents(double second, int window) => Tracker.Cents(Tracker.Hz(sound.AsSpan((int)(second * Rate) - (window / 2), window), Rate), 220);
        var fifth = 1200 * Math.Log2(1.5);
        Assert.InRange(Cents(1, Rate / 2), -0.05, 0.05);
        Assert.InRange(Cents(5, Rate / 2) - fifth, -0.05, 0.05);
        Assert.InRange(Cents(9, Rate / 2) - 1200, -0.05, 0.05);

        // Within the slide the pitch moves by 3.5 cents in 10 ms; a window of 40 ms hears its middle.
        foreach (var way in (double[])[0.1, 0.25, 0.5, 0.75, 0.9])
        {
            Assert.InRange(Cents(2 + (2 * way), 2048) - (way * fifth), -5, 5);
            Assert.InRange(Cents(6 + (2 * way), 2048) - (fifth + (way * (1200 - fifth))), -5, 5);
        }
    }

    [Fact]
    public void A_slide_has_no_click_and_no_gap()
    {
        var sound = Sound("[S , , , P , , , S' , , ,].glide");

        // No step is larger than in the steepest steady part, and from the first note's attack to the last one's release it never falls silent.
        var steady = ((int[])[1, 5, 9]).Max(s => Sounds.Step(sound.AsSpan((s * Rate) - (Rate / 4), Rate / 2)));
        Assert.InRange(Sounds.Step(sound.AsSpan(0, 12 * Rate)), 1, steady + (steady / 10));
        for (var second = 0.1; second < 11.8; second += 0.02)
        {
            Assert.InRange(Level(sound, second, 0.02), Level(sound, 1) - 9, Level(sound, 1) + 9);
        }
    }

    [Fact]
    public void A_swell_begins_and_ends_12_decibels_softer()
    {
        var sound = Sound("[S , , , , , , ,].swell");
        var (first, middle, last) = (Level(sound, 0.05, 0.05), Level(sound, 3.95), Level(sound, 7.9, 0.05));
        Assert.InRange(middle - first, 11, 12.5);
        Assert.InRange(middle - last, 11, 12.5);
        var levels = Enumerable.Range(1, 15).Select(i => Level(sound, i / 2.0 - 0.05)).ToList();
        Assert.Equal(levels.Take(8).Order(), levels.Take(8));
        Assert.Equal(levels.Skip(7).OrderDescending(), levels.Skip(7));
        Assert.InRange(Tracker.Cents(Tracker.Hz(sound.AsSpan(2 * Rate, 4 * Rate), Rate), 220), -0.05, 0.05);
    }

    [Fact]
    public void A_swell_within_slides_has_no_click()
    {
        var sound = Sound("[S , , , P , , ,].glide.swell");
        var plain = Sound("[S , , , P , , ,].glide");
        Assert.InRange(Sounds.Step(sound), 1, Sounds.Step(plain));
    }

    [Fact]
    public void A_short_note_is_silent_in_its_second_half()
    {
        var sound = Sound("[S G , P].staccato");
        foreach (var (start, length) in (ReadOnlySpan<(int, int)>)[(0, 1), (1, 2), (3, 1)])
        {
            Assert.False(Sounds.IsSilent(sound.AsSpan((start * Rate) + (length * Rate / 2) - 300, 300)));
            Assert.True(Sounds.IsSilent(sound.AsSpan((start * Rate) + (length * Rate / 2), length * Rate / 2)));
        }
    }

    [Fact]
    public void The_peak_stays_within_the_voice_s_share()
    {
        foreach (var pattern in (string[])["[S , , , S' , , , S , , ,].glide", "run.glide.swell.up-down"])
        {
            Assert.InRange(Sounds.Peak(Sound(pattern)), 1, (int)(0.345 * 32_768));
        }
    }
}
