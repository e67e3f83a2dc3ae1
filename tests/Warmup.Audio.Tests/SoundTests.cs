using FsCheck.Xunit;

namespace Warmup.Audio.Tests;

/// <summary>
/// How it sounds: no clicks, no aliases, a bounded peak, silence where nothing is sung. The bounds follow from sampling (nothing above
/// half the rate) and from the format's promises; each measure is also shown to find the fault it looks for.
/// </summary>
public class SoundTests
{
    // -1 dBFS of 16 bits.
    private static readonly double Limit = Math.Pow(10, -1 / 20.0) * 32_768;

    [Property(MaxTest = 5, Arbitrary = [typeof(Sounds)])]
    public void The_voice_is_silent_but_for_its_notes(Sung sung)
    {
        var sound = Sounds.File(sung.Score).Left;
        var silence = 0;
        foreach (var (section, before) in Sounds.Placed(sung.Score, 4))
        {
            var edge = sung.Score.Sections.All(s => s.TempoChanges.IsEmpty) ? 0 : 1;
            foreach (var note in section.Notes)
            {
                var start = Sounds.Frame(before + section.SecondsAt(note.Onset));
                var end = Sounds.Frame(before + section.SecondsAt(note.End));
                Assert.True(Sounds.IsSilent(sound.AsSpan(silence, Math.Max(0, start - edge - silence))));

                // Raised from nothing, it is heard within 5 ms of its time, and until 5 ms before its end.
                Assert.False(Sounds.IsSilent(sound.AsSpan(start, 220)));
                Assert.False(Sounds.IsSilent(sound.AsSpan(end - 220, 220)));
                silence = end + edge;
            }

            foreach (var breath in section.Breaths)
            {
                var start = Sounds.Frame(before + section.SecondsAt(breath.Onset)) + edge;
                var end = Sounds.Frame(before + section.SecondsAt(breath.Onset + breath.Length)) - edge;
                Assert.True(end - start > 4410);
                Assert.True(Sounds.IsSilent(sound.AsSpan(start, end - start)));
            }
        }

        Assert.True(Sounds.IsSilent(sound.AsSpan(Math.Min(silence, sound.Length))));
    }

    [Property(MaxTest = 5, Arbitrary = [typeof(Sounds)])]
    public void No_note_begins_ends_or_goes_over_with_a_click(Sung sung)
    {
        var sound = Sounds.File(sung.Score, Sounds.VoiceOnly).Left;
        foreach (var (section, before) in Sounds.Placed(sung.Score, 0))
        {
            var inside = 0;
            for (var n = 0; n < section.Notes.Count; n++)
            {
                var note = section.Notes[n];
                var start = Sounds.Frame(before + section.SecondsAt(note.Onset));
                var end = Sounds.Frame(before + section.SecondsAt(note.End));

                // At an edge no step may be larger than inside the note (but for rounding), and in the outermost millisecond it is nearly nothing.
                var earlier = inside;
                inside = Sounds.Step(sound.AsSpan(start + 1800, end - start - 3600));
                if (n > 0 && section.Notes[n - 1].End == note.Onset)
                {
                    // Where one note goes over into the next, no step is much larger than inside the two: on its way a harmonic can pass the middle of a
                    // resonance, which neither note has on one. A click is several times as large.
                    Assert.InRange(Sounds.Step(sound.AsSpan(start - 1800, 3600)), 0, Math.Max(inside, earlier) * 1.25 + 1);
                }
                else
                {
                    Assert.InRange(Sounds.Step(sound.AsSpan(Math.Max(0, start - 1), 1800)), 0, inside + 1);
                    Assert.InRange(Sounds.Step(sound.AsSpan(Math.Max(0, start - 1), 45)), 0, inside / 20);
                }

                if (n + 1 == section.Notes.Count || section.Notes[n + 1].Onset > note.End)
                {
                    Assert.InRange(Sounds.Step(sound.AsSpan(end - 1799, Math.Min(1800, sound.Length - end + 1799))), 0, inside + 1);
                    Assert.InRange(Sounds.Step(sound.AsSpan(end - 44, Math.Min(45, sound.Length - end + 44))), 0, inside / 20);
                }
            }
        }

        // A note cut off in its middle, by contrast, does click.
        var one = sung.Score.Sections[0];
        var middle = Sounds.Frame(one.SecondsAt(one.Notes[0].Onset + (one.Notes[0].Length / 2)));
        var top = Enumerable.Range(middle, 1000).MaxBy(i => Math.Abs((int)sound[i]));
        Assert.True(Sounds.Step([0, sound[top]]) > Sounds.Step(sound.AsSpan(middle, 1000)));
    }

    [Fact]
    public void No_string_is_plucked_or_damped_with_a_click()
    {
        var sound = Sounds.File(Sounds.Drill().ToScore(), Sounds.DroneOnly).Right;
        Assert.True(Sounds.Peak(sound) > 1000);

        // Strokes at 0, 1, 2, 3 s and so on every 5 s (one second from stroke to stroke, two at the end of a cycle).
        for (var s = 5; s < 20; s++)
        {
            var steady = Sounds.Step(sound.AsSpan((s * 44_100) + 4410, 35_000));
            Assert.InRange(Sounds.Step(sound.AsSpan((s * 44_100) - 45, 90)), 0, steady * 1.5);
        }

        Assert.InRange(Math.Abs((int)sound[^1]), 0, 1);
        Assert.InRange(Sounds.Step(sound.AsSpan(sound.Length - 90)), 0, 3);
    }

    [Theory]
    [InlineData(1046.7, 44_100)]
    [InlineData(391.3, 44_100)]
    [InlineData(391.3, 48_000)]
    [InlineData(2093.9, 48_000)]
    public void Nothing_is_folded_back_from_above_half_the_sample_rate(double hz, int rate)
    {
        var score = Sounds.LongTone(Tonic.FromHz(hz));
        var voice = Sounds.File(score, Sounds.VoiceOnly with { SampleRate = rate }).Left.AsSpan(rate, 1 << 17);
        Assert.True(Folded(voice, hz, rate) < -88, $"voice {Folded(voice, hz, rate):0.0} dB");

        var single = score with { Drone = new Drone([score.Drone!.Strings[1]], 1, 9) };
        var held = Sounds.File(single, Sounds.DroneOnly with { SampleRate = rate, DroneSound = DroneSound.Held }).Right.AsSpan(rate, 1 << 17);
        Assert.True(Folded(held, hz, rate) < -88, $"held drone {Folded(held, hz, rate):0.0} dB");

        // A bare sawtooth is folded: the measure finds it.
        var saw = new short[1 << 17];
        for (var n = 0; n < saw.Length; n++)
        {
            saw[n] = (short)(10_000 * Math.IEEERemainder(hz * n / rate, 1));
        }

        Assert.True(Folded(saw, hz, rate) > -50);
    }

    [Fact]
    public void A_vowel_has_its_strength_below_4_kHz()
    {
        var score = Sounds.LongTone(Tonic.FromHz(150));
        var decibels = Tracker.Decibels(Sounds.File(score, Sounds.VoiceOnly).Left.AsSpan(44_100, 1 << 17));
        var bin = 44_100.0 / (1 << 17);

        // Common practice: an open vowel is strongest in its first two resonances, below 1.5 kHz, and weak above the fourth.
        Assert.InRange(Array.IndexOf(decibels, decibels.Max()) * bin, 150, 1500);
        Assert.True(decibels[(int)(5000 / bin)..].Max() < -30);
    }

    [Theory]
    [InlineData(WavChannels.Mono, DroneSound.Plucked)]
    [InlineData(WavChannels.Mono, DroneSound.Held)]
    [InlineData(WavChannels.Stereo, DroneSound.Plucked)]
    public void The_peak_stays_below_minus_1_dBFS_even_when_all_strings_are_plucked_at_once(WavChannels channels, DroneSound kind)
    {
        var score = (Sounds.Drill("ladder.ends") with { Speeds = [Speed.Third] }).ToScore();
        var strings = Enumerable.Repeat(score.Drone!.Strings[3], 7).Append(score.Drone.Strings[1]).ToValueList();
        score = score with { Drone = new Drone(strings, 0, new Rational(1, 3)) };
        var options = new WavOptions { Channels = channels, DroneSound = kind };
        Assert.InRange(Peak(score, options), 3277, Limit);

        // Not by luck: what the parts reach alone does not add up to the limit either.
        var mono = options with { Channels = WavChannels.Mono, CountInBeats = 0 };
        var alone = Peak(score, mono with { HasDrone = false, HasBeat = false })
            + Peak(score, mono with { HasVoice = false, HasBeat = false })
            + Peak(score, mono with { HasVoice = false, HasDrone = false });
        Assert.InRange(alone, 3 * 3277, Limit);
    }

    [Property(MaxTest = 4, Arbitrary = [typeof(Sounds)])]
    public void The_peak_stays_below_minus_1_dBFS(Sung sung) =>
        Assert.InRange(Peak(sung.Score, new WavOptions { Channels = WavChannels.Mono }), 3277, Limit);

    [Fact]
    public void Levels_lower_a_part_by_their_decibels()
    {
        var score = Sounds.Drill("ladder.take(2)").ToScore();
        var (half, tenth) = (20 * Math.Log10(0.5), -20.0);
        Lowered(Sounds.VoiceOnly, Sounds.VoiceOnly with { VoiceDecibels = half }, 0.5);
        Lowered(Sounds.DroneOnly, Sounds.DroneOnly with { DroneDecibels = tenth }, 0.1);
        Lowered(Sounds.BeatOnly, Sounds.BeatOnly with { BeatDecibels = half }, 0.5);

        void Lowered(WavOptions full, WavOptions lowered, double factor)
        {
            full = full with { Channels = WavChannels.Mono };
            lowered = lowered with { Channels = WavChannels.Mono };
            Assert.InRange(Peak(score, lowered) - (factor * Peak(score, full)), -1, 1);
        }
    }

    private static int Peak(Score score, WavOptions options)
    {
        var file = Sounds.File(score, options);
        return file.Samples.Max(channel => Sounds.Peak(channel));
    }

    /// <summary>The strongest part that is no harmonic, in decibels below the strongest harmonic.</summary>
    private static double Folded(ReadOnlySpan<short> sound, double hz, int rate)
    {
        var decibels = Tracker.Decibels(sound);
        var bin = (double)rate / sound.Length;
        var worst = double.NegativeInfinity;
        for (var b = 6; b < decibels.Length; b++)
        {
            var harmonic = Math.Round(b * bin / hz);
            var isHarmonic = harmonic >= 1 && Math.Abs((b * bin) - (harmonic * hz)) < 8 * bin;
            worst = isHarmonic ? worst : Math.Max(worst, decibels[b]);
        }

        return worst;
    }
}
