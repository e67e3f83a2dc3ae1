using System.Globalization;
using System.Runtime.InteropServices;
using Warmup.Audio;
using Warmup.Midi;

namespace Warmup.Listening.Tests;

/// <summary>A score as a synthesizer plays it (fluidsynth with the sound font TimGM6mb) and a pitch tracker hears it (aubio's yin).</summary>
public static class Sound
{
    // General MIDI 81, counted from 1: a steady tone. The sampled voices waver by several cents, which is theirs and not the file's.
    private const int SteadyProgram = 81;

    private const int Rate = 48_000;
    private const int Window = 2048;
    private const int Hop = 512;

    // What of a note is listened to, from its beginning: behind the attack and before the end, where the window reaches into the next.
    private const double From = 0.25;
    private const double To = 0.85;

    /// <summary>The pitch of each sung note, in cents above MIDI note 0, as the median of what is heard in it.</summary>
    /// <param name="score">The score; its drone is left out, since the tracker hears one voice.</param>
    /// <param name="tuning">How the file tunes.</param>
    public static double[] Hear(Score score, MidiTuning tuning)
    {
        var heard = Course(score, tuning);
        return [.. Notes(score).Select(n => MedianBetween(heard, n.Start, n.End))];
    }

    /// <summary>Every pitch that is heard, in cents above MIDI note 0, with its time in seconds.</summary>
    /// <param name="score">The score; its drone is left out, since the tracker hears one voice.</param>
    /// <param name="tuning">How the file tunes.</param>
    public static (double Time, double Cents)[] Course(Score score, MidiTuning tuning)
    {
        var synthesizer = Tool.Get("fluidsynth", "fluidsynth");
        var tracker = Tool.Get("aubiopitch", "aubio-tools");
        var font = Tool.SoundFont();
        using var folder = new Folder();
        var (midi, wave) = (folder.At("a.mid"), folder.At("a.wav"));
        new MidiFormat(new MidiOptions { Tuning = tuning, HasDrone = false, VoiceProgram = SteadyProgram }).Save(score, midi);
        var rate = Rate.ToString(CultureInfo.InvariantCulture);
        synthesizer.Run("-n", "-i", "-q", "-R", "0", "-C", "0", "-g", "0.6", "-r", rate, "-O", "s16", "-F", wave, font, midi);
        return Track(tracker, wave);
    }

    /// <summary>The loudness of a score as a synthesizer plays it without reverb and chorus, in LKFS (ITU-R BS.1770-5).</summary>
    /// <param name="score">The score.</param>
    /// <param name="options">What of it is played.</param>
    /// <param name="font">The sound font.</param>
    public static double Loudness(Score score, MidiOptions options, string font)
    {
        var synthesizer = Tool.Get("fluidsynth", "fluidsynth");
        using var folder = new Folder();
        var (midi, sound) = (folder.At("a.mid"), folder.At("a.raw"));
        new MidiFormat(options).Save(score, midi);
        var rate = LoudnessMeter.Rate.ToString(CultureInfo.InvariantCulture);
        synthesizer.Run("-n", "-i", "-q", "-R", "0", "-C", "0", "-g", "0.6", "-r", rate, "-T", "raw", "-O", "s16", "-F", sound, font, midi);
        var samples = MemoryMarshal.Cast<byte, short>(File.ReadAllBytes(sound));
        var channels = (Left: new short[samples.Length / 2], Right: new short[samples.Length / 2]);
        for (var n = 0; n < channels.Left.Length; n++)
        {
            (channels.Left[n], channels.Right[n]) = (samples[2 * n], samples[(2 * n) + 1]);
        }

        return LoudnessMeter.Of(channels.Left, channels.Right);
    }

    /// <summary>The pitch of each note of the library's own guide tone, in cents above MIDI note 0, as the median of what is heard in it.</summary>
    /// <param name="score">The score; only its voice sounds.</param>
    public static double[] HearGuide(Score score)
    {
        var tracker = Tool.Get("aubiopitch", "aubio-tools");
        using var folder = new Folder();
        var wave = folder.At("a.wav");
        var options = new WavOptions { Channels = WavChannels.Mono, SampleRate = Rate, HasDrone = false, HasBeat = false, CountInBeats = 0 };
        new WavFormat(options).Save(score, wave);
        var heard = Track(tracker, wave);
        return [.. Notes(score).Select(n => MedianBetween(heard, n.Start, n.End))];
    }

    private static (double Time, double Cents)[] Track(Tool tracker, string wave) => Points(tracker.Run(
        "-i", wave, "-r", Rate.ToString(CultureInfo.InvariantCulture), "-p", "yin", "-u", "freq",
        "-B", Window.ToString(CultureInfo.InvariantCulture), "-H", Hop.ToString(CultureInfo.InvariantCulture)));

    /// <summary>The pitches that the score says, in cents above MIDI note 0.</summary>
    public static double[] Expected(Score score) => [.. score.Sections.SelectMany(s => s.Notes.Select(n => Cents(s.PitchOf(n).Hz)))];

    /// <summary>The middle one of some numbers.</summary>
    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }

    private static IEnumerable<(double Start, double End)> Notes(Score score)
    {
        var start = 0.0;
        foreach (var section in score.Sections)
        {
            foreach (var note in section.Notes)
            {
                var (on, off) = (section.SecondsAt(note.Onset).ToDouble(), section.SecondsAt(note.Onset + note.Length).ToDouble());
                yield return (start + on + (From * (off - on)), start + on + (To * (off - on)));
            }

            start += section.Seconds.ToDouble();
        }
    }

    private static (double Time, double Cents)[] Points(string text) =>
    [
        .. text.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => Array.ConvertAll(line.Split(' ', StringSplitOptions.RemoveEmptyEntries), f => double.Parse(f, CultureInfo.InvariantCulture)))
            .Where(p => p[1] > 0)
            .Select(p => (p[0], Cents(p[1]))),
    ];

    private static double MedianBetween((double Time, double Cents)[] heard, double start, double end)
    {
        var inside = heard.Where(p => p.Time >= start && p.Time <= end).Select(p => p.Cents).ToArray();
        Assert.True(inside.Length >= 5, $"only {inside.Length} pitches are heard between {start:0.00} and {end:0.00} s");
        return Median(inside);
    }

    private static double Cents(double hz) => 6900 + (1200 * Math.Log2(hz / 440));
}
