namespace Warmup.Takes;

/// <summary>How likely each frame holds a voice: its level against the take's quiet and loud parts, and how harmonic it is.</summary>
internal sealed class Voicing
{
    private const double Softness = 1.5;
    private const double LeastStrength = 0.15;

    private readonly float[] _voice;

    private Voicing(float[] voice, double floor, double top, double threshold) => (_voice, Floor, Top, Threshold) = (voice, floor, top, threshold);

    /// <summary>The level of the quietest frames, in dB.</summary>
    public double Floor { get; }

    /// <summary>The level of the loud frames, in dB.</summary>
    public double Top { get; }

    /// <summary>The level between them above which there is voice, in dB.</summary>
    public double Threshold { get; }

    /// <summary>The likelihood of voice, 0 to 1.</summary>
    public float this[int frame] => _voice[frame];

    public int Count => _voice.Length;

    public static Voicing Of(PitchTrack track)
    {
        if (track.Count == 0)
        {
            return new Voicing([], -120, -120, -120);
        }

        var levels = new float[track.Count];
        for (var f = 0; f < levels.Length; f++)
        {
            levels[f] = LevelOf(track, f);
        }

        var sorted = (float[])levels.Clone();
        Array.Sort(sorted);
        var (floor, top) = (sorted[(int)(sorted.Length * 0.04)], sorted[(int)(sorted.Length * 0.85)]);
        var threshold = Math.Max(floor + Math.Min(9, 0.45 * (top - floor)), top - 32);
        threshold = top - floor < 5 ? floor - 3 : threshold;
        var voice = new float[levels.Length];
        for (var f = 0; f < voice.Length; f++)
        {
            var byLevel = 1 / (1 + Math.Exp((threshold - levels[f]) / Softness));
            var byStrength = 1 / (1 + Math.Exp((LeastStrength - track.At(f)[0].Strength) / 0.02));
            voice[f] = (float)(byLevel * byStrength);
        }

        return new Voicing(voice, floor, top, threshold);
    }

    /// <summary>The level of the low band about a frame.</summary>
    private static float LevelOf(PitchTrack track, int frame)
    {
        var sum = 0.0;
        for (var i = (2 * frame) - 2; i < (2 * frame) + 2; i++)
        {
            sum += Math.Pow(10, track.Low(i) / 10);
        }

        return (float)(10 * Math.Log10((sum / 4) + 1e-12));
    }
}
