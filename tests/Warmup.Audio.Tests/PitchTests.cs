using FsCheck.Xunit;

namespace Warmup.Audio.Tests;

/// <summary>
/// What is heard, measured by <see cref="Tracker"/>. Expected: the score's frequencies, and the just ratios 9/8, 5/4, 3/2, 5/3
/// worked out by hand on 220 Hz.
/// </summary>
public class PitchTests
{
    [Property(MaxTest = 4, Arbitrary = [typeof(Sounds)])]
    public void Every_note_sounds_within_a_cent_of_the_score(Sung sung)
    {
        var sound = Sounds.File(sung.Score, Sounds.VoiceOnly).Left;
        foreach (var (section, before, note) in Sounds.Placed(sung.Score, 0).SelectMany(p => p.Section.Notes.Select(n => (p.Section, p.Before, n))))
        {
            var hz = Tracker.Hz(Steady(sound, section, note, before), 44_100);
            Assert.InRange(Tracker.Cents(hz, section.PitchOf(note).Hz), -1, 1);
        }
    }

    [Theory]
    [InlineData(44_100, WavChannels.Stereo)]
    [InlineData(48_000, WavChannels.Mono)]
    public void Just_tuning_sounds_in_its_ratios(int rate, WavChannels channels)
    {
        var section = (Sounds.Drill("ladder.drop(4)") with { Tuning = Tuning.Just }).ToScore().Sections[0];
        var sound = Sounds.File(
            (Sounds.Drill("ladder.drop(4)") with { Tuning = Tuning.Just }).ToScore(), Sounds.VoiceOnly with { SampleRate = rate, Channels = channels }).Left;
        double[] expected = [220, 247.5, 275, 330, 1100.0 / 3, 440];
        Assert.Equal(expected.Length, section.Notes.Count);
        for (var n = 0; n < expected.Length; n++)
        {
            var middle = sound.AsSpan((n * rate) + (rate / 10), rate * 8 / 10);
            Assert.InRange(Tracker.Cents(Tracker.Hz(middle, rate), expected[n]), -0.05, 0.05);
        }
    }

    [Theory]
    [InlineData(24)]
    [InlineData(36)]
    [InlineData(84)]
    [InlineData(96)]
    public void The_lowest_and_highest_tonics_sound_in_tune(int midi)
    {
        // Equal steps from A4 = 440 Hz (ISO 16).
        var sound = Sounds.File(Sounds.LongTone(Tonic.FromMidi(midi)), Sounds.VoiceOnly).Left;
        var hz = Tracker.Hz(sound.AsSpan(44_100, 44_100), 44_100);
        Assert.InRange(Tracker.Cents(hz, 440 * Math.Pow(2, (midi - 69) / 12.0)), -0.05, 0.05);
    }

    [Theory]
    [InlineData(DroneSound.Plucked)]
    [InlineData(DroneSound.Held)]
    public void Every_string_of_the_drone_sounds_within_a_cent(DroneSound kind)
    {
        var score = (Sounds.Drill() with { Tuning = Tuning.Just }).ToScore();

        // Low P, S, S and low S on 220 Hz: 3/4, 1, 1 and 1/2 of it.
        double[] expected = [165, 220, 220, 110];
        for (var i = 0; i < expected.Length; i++)
        {
            var drone = new Drone([score.Drone!.Strings[i]], 1, 5);
            var sound = Sounds.File(score with { Drone = drone }, Sounds.DroneOnly with { DroneSound = kind }).Right;
            Assert.InRange(Tracker.Cents(Tracker.Hz(sound.AsSpan(44_100, 88_200), 44_100), expected[i]), -1, 1);
        }
    }

    [Fact]
    [Trait("Run", "whole")]
    public void A_tone_of_an_hour_does_not_drift_by_a_thousandth_of_a_cent()
    {
        // 600 aksharas at 10 a minute. The tonic is no round number of turns a second or a frame.
        var score = (Sounds.Drill("figure(1).take(1).repeat(600)") with { Tempo = 10, Tonic = Tonic.FromHz(146.83 * Math.Sqrt(0.993)) }).ToScore();
        var tone = score.Drone!.Strings[1];
        var hz = tone.Hz;
        Assert.Equal(146.83 * Math.Sqrt(0.993), hz, 1e-9);
        Assert.Equal(3600, score.Seconds);

        int[] seconds = [1, 2, 11, 61, 601, 3597];
        using var windows = new Windows([.. seconds.Select(s => s * 44_100L)], 44_100);
        new WavFormat(Sounds.DroneOnly with { Channels = WavChannels.Mono, DroneSound = DroneSound.Held, HasMarkers = false })
            .Write(score with { Drone = new Drone([tone], 1, 2) }, windows);

        // The phase at each moment against the tone's own wave from the beginning. From window to window a whole turn cannot be lost:
        // what the windows before have shown of the drift is much smaller.
        var phases = seconds.Select((s, i) => Tracker.Phase(windows.Samples[i], hz / 44_100, s * 44_100.0) / (2 * Math.PI)).ToArray();
        for (var i = 1; i < seconds.Length; i++)
        {
            var turns = Math.IEEERemainder(phases[i] - phases[0], 1);
            var drift = turns / (hz * (seconds[i] - seconds[0]));
            Assert.InRange(Tracker.Cents(1 + drift, 1), -0.1 / (seconds[i] - seconds[0]), 0.1 / (seconds[i] - seconds[0]));
        }

        // A tenth of a turn over the hour would be 0.0003 cents.
        Assert.InRange(Math.IEEERemainder(phases[^1] - phases[0], 1), -0.001, 0.001);
    }

    [Theory]
    [InlineData(3.7)]
    [InlineData(0.21)]
    public void The_tracker_itself_is_within_a_hundredth_of_a_cent(double offset)
    {
        // A sum of five harmonics without any code of the library.
        var hz = 203.1 * Math.Pow(2, offset / 12);
        var sound = new short[30_000];
        for (var n = 0; n < sound.Length; n++)
        {
            sound[n] = (short)Enumerable.Range(1, 5).Sum(h => 4000.0 / h * Math.Sin((2 * Math.PI * h * hz * n / 44_100) + h));
        }

        Assert.InRange(Tracker.Cents(Tracker.Hz(sound, 44_100), hz), -0.01, 0.01);
    }

    private static ReadOnlySpan<short> Steady(short[] sound, Section section, ScoreNote note, Rational before = default)
    {
        var start = Sounds.Frame(before + section.SecondsAt(note.Onset));
        var end = Sounds.Frame(before + section.SecondsAt(note.End));

        // Without the edges; at most a second.
        return sound.AsSpan(start + 1800, Math.Min(44_100, end - start - 3600));
    }
}
