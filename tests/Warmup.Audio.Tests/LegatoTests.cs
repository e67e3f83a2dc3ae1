namespace Warmup.Audio.Tests;

/// <summary>How notes of one breath follow each other, and how the strings of a drone beat. The bounds are the project's own.</summary>
public class LegatoTests
{
    private const int Rate = 44_100;

    [Fact]
    public void Notes_of_one_breath_have_no_dip_between_them()
    {
        // Seven joints, one a second, up and down by step and by leap.
        var sound = Sound("[S R G P S P R S]");
        for (var joint = 1; joint < 8; joint++)
        {
            var softer = Math.Min(Level(sound, joint - 0.5, 0.2), Level(sound, joint + 0.5, 0.2));
            for (var at = joint - 0.06; at <= joint + 0.06; at += 0.005)
            {
                Assert.True(Level(sound, at, 0.02) > softer - 2, $"{Level(sound, at, 0.02) - softer:0.0} dB at {at:0.000} s");
            }
        }
    }

    [Fact]
    public void A_pitch_that_comes_again_is_heard_to_begin_again()
    {
        var sound = Sound("[S S S S]");
        for (var joint = 1; joint < 4; joint++)
        {
            var dip = Level(sound, joint, 0.01) - Level(sound, joint - 0.5, 0.2);
            Assert.InRange(dip, -9, -5);
            Assert.InRange(Level(sound, joint - 0.05, 0.02) - Level(sound, joint - 0.5, 0.2), -1, 1);
            Assert.InRange(Level(sound, joint + 0.05, 0.02) - Level(sound, joint - 0.5, 0.2), -1, 1);
        }
    }

    [Fact]
    public void A_note_has_its_pitch_from_a_fiftieth_of_a_second_on()
    {
        var sound = Sound("[S P]");
        Assert.InRange(Cents(sound, 0.9, 0.16), -0.5, 0.5);
        Assert.InRange(Cents(sound, 1.1, 0.16) - (1200 * Math.Log2(1.5)), -0.5, 0.5);

        // Half-way between them where the second begins: the mean of a window that is even about it.
        Assert.InRange(Cents(sound, 1, 0.012) - (600 * Math.Log2(1.5)), -60, 60);
    }

    [Theory]
    [InlineData(DroneSound.Plucked)]
    [InlineData(DroneSound.Held)]
    public void Nothing_has_a_constant_part(DroneSound drone)
    {
        foreach (var options in (WavOptions[])[Sounds.VoiceOnly, Sounds.DroneOnly with { DroneSound = drone }])
        {
            var file = Sounds.File(Sounds.Drill("run.up-down").ToScore(), options);
            Assert.All(file.Samples, channel => Assert.InRange(channel.Average(s => (double)s), -3.3, 3.3));
        }
    }

    [Fact]
    public void Two_strings_of_one_pitch_beat_slowly_and_stay_within_half_a_cent_of_it()
    {
        // Each string alone: the other is of another pitch.
        var score = Sounds.Drill("run").ToScore();
        var (s, low) = (score.Drone!.Strings[1], score.Drone.Strings[3]);
        Assert.Equal(220, s.Hz, 6);
        var pair = Drone([s, s]);
        var single = Drone([s]);

        // A pair 0.8 cents apart beats in its tenth harmonic about once a second: 2200 Hz * (2^(0.8/1200) - 1) = 1.02 Hz.
        var (least, most) = Swing(pair, 2200);
        Assert.True(most - least > 6, $"the pair swings by {most - least:0.0} dB");
        var (quietest, loudest) = Swing(single, 2200);
        Assert.True(loudest - quietest < 1, $"a string alone swings by {loudest - quietest:0.0} dB");
        Assert.InRange(Tracker.Cents(Tracker.Hz(single.AsSpan(Rate, 4 * Rate), Rate), 220), -0.05, 0.05);
        Assert.InRange(Tracker.Cents(Tracker.Hz(pair.AsSpan(Rate, 4 * Rate), Rate), 220), -0.5, 0.5);
        Assert.InRange(Tracker.Cents(Tracker.Hz(Drone([low]).AsSpan(Rate, 2 * Rate), Rate), 110), -0.05, 0.05);

        // Both plucked at once and left to ring.
        short[] Drone(ValueList<ScorePitch> strings) => Sounds.File(score with { Drone = new Drone(strings, 0, 10) }, Sounds.DroneOnly).Right;
    }

    private static short[] Sound(string pattern) => Sounds.File((Sounds.Drill(pattern) with { Tuning = Tuning.Just }).ToScore(), Sounds.VoiceOnly).Left;

    private static double Cents(short[] sound, double second, double length) =>
        Tracker.Cents(Tracker.Hz(sound.AsSpan((int)((second - (length / 2)) * Rate), (int)(length * Rate)), Rate), 220);

    /// <summary>The level around a second, in decibels, under a raised cosine.</summary>
    private static double Level(short[] sound, double second, double length)
    {
        var (first, frames) = ((int)((second - (length / 2)) * Rate), (int)(length * Rate));
        var (sum, weights) = (0.0, 0.0);
        for (var n = 0; n < frames; n++)
        {
            var weight = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / frames));
            sum += weight * sound[first + n] * sound[first + n];
            weights += weight;
        }

        return 10 * Math.Log10(sum / weights);
    }

    /// <summary>The least and the greatest level of a frequency from second 1 to second 4, without the fall of a string.</summary>
    private static (double Least, double Most) Swing(short[] sound, double hz)
    {
        var levels = new List<double>();
        for (var at = Rate; at < 4 * Rate; at += Rate / 20)
        {
            levels.Add(Strength(sound.AsSpan(at, Rate / 10), hz));
        }

        var fall = (levels[^1] - levels[0]) / (levels.Count - 1);
        var even = levels.Select((level, i) => level - (i * fall)).ToList();
        return (even.Min(), even.Max());
    }

    private static double Strength(ReadOnlySpan<short> sound, double hz)
    {
        var sum = System.Numerics.Complex.Zero;
        for (var n = 0; n < sound.Length; n++)
        {
            var hann = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / sound.Length));
            sum += sound[n] * hann * System.Numerics.Complex.FromPolarCoordinates(1, -2 * Math.PI * hz * n / Rate);
        }

        return 20 * Math.Log10(sum.Magnitude);
    }
}
