using System.Diagnostics;

namespace Warmup.Takes.Tests;

/// <summary>
/// A voice of real speech sounds: periods of vowels that espeak-ng speaks are laid one after the other at the pitch that is wanted. Where the
/// program is missing, there is no such voice.
/// </summary>
internal static class SpeechVoice
{
    private static readonly Lazy<double[][]?> Vowels = new(() => Load("[[A:A:A:A:]]") is { } a && Load("[[i:i:i:i:]]") is { } i ? [a, i] : null);

    public static bool IsThere => Vowels.Value is not null;

    public static double[] Sing(double[] cents, double[] level, double[] vowel, Random random)
    {
        var voice = new double[cents.Length];
        var vowels = Vowels.Value ?? throw new InvalidOperationException("espeak-ng is not installed");
        var source = vowels.Select(Steady).ToArray();
        var at = 0.0;
        var read = new double[2];
        while (at < voice.Length)
        {
            var i = (int)at;
            if (level[i] <= 0)
            {
                at += 1;
                continue;
            }

            var which = (int)vowel[i];
            var (sound, period) = source[which];
            var target = VoiceMaker.Rate / Pitches.Hz(cents[i]);

            // One grain of two source periods about a mark of the steady middle, walking to and fro through it.
            var (low, high) = (2.0 * period, sound.Length - (3 * period));
            read[which] = read[which] < low || read[which] > high ? low + (period * random.Next(1, 4)) : read[which] + period;
            var centre = Mark(sound, read[which], period);
            var half = (int)Math.Min(period, target);
            for (var k = -half; k <= half; k++)
            {
                // The grain lies on the exact time of its mark, between the samples.
                var j = (int)Math.Round(at) + k;
                var from = centre + (j - at);
                if (j >= 0 && j < voice.Length && from >= 0 && from < sound.Length - 1)
                {
                    var (n, part) = ((int)from, from - (int)from);
                    voice[j] += level[j] * (0.5 + (0.5 * Math.Cos(Math.PI * (j - at) / half))) * ((sound[n] * (1 - part)) + (sound[n + 1] * part));
                }
            }

            at += target;
        }

        return voice;
    }

    private static double Mark(double[] sound, double about, double period)
    {
        var best = (int)about;
        for (var i = (int)(about - (period / 2)); i < about + (period / 2); i++)
        {
            best = sound[i] > sound[best] ? i : best;
        }

        return best;
    }

    /// <summary>The quarter of a second that repeats itself best, and its period in samples.</summary>
    private static (double[] Sound, double Period) Steady(double[] sound)
    {
        const int Length = VoiceMaker.Rate / 4;
        var (best, most, period) = (0, double.MinValue, 0);
        for (var from = 0; from + Length + 1000 < sound.Length; from += 480)
        {
            var power = Enumerable.Range(from, Length).Sum(i => sound[i] * sound[i]);
            if (power < 1)
            {
                continue;
            }

            for (var lag = VoiceMaker.Rate / 280; lag < VoiceMaker.Rate / 70; lag++)
            {
                var sum = 0.0;
                for (var i = from; i < from + Length; i += 2)
                {
                    sum += sound[i] * sound[i + lag];
                }

                sum /= power * (1 + (0.0002 * lag));
                (best, most, period) = sum > most ? (from, sum, lag) : (best, most, period);
            }
        }

        return (sound[best..(best + Length)], period);
    }

    private static double[]? Load(string phonemes)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("espeak-ng") { ArgumentList = { "-v", "en", "-p", "40", "-s", "80", "--stdout", phonemes }, RedirectStandardOutput = true })!;
            using var memory = new MemoryStream();
            process.StandardOutput.BaseStream.CopyTo(memory);
            process.WaitForExit();

            // espeak-ng cannot know the length that it writes into the head of a pipe.
            var bytes = memory.ToArray();
            var samples = new double[(bytes.Length - 44) / 2];
            for (var i = 0; i < samples.Length; i++)
            {
                samples[i] = BitConverter.ToInt16(bytes, 44 + (2 * i)) / 32768.0;
            }

            // From 22,050 to the corpus's rate; exactness does not matter here, the marks are set anew.
            var count = (int)(samples.Length * (VoiceMaker.Rate / 22_050.0)) - 2;
            return [.. Enumerable.Range(0, count).Select(i => i * 22_050.0 / VoiceMaker.Rate).Select(x => (samples[(int)x] * (1 - (x % 1))) + (samples[(int)x + 1] * (x % 1)))];
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
