namespace Warmup.Takes;

/// <summary>How likely each frame holds a voice: its level against the take's quiet and loud parts, or how far it rises above what would sound without it, and how harmonic it is.</summary>
internal sealed class Voicing
{
    private const double Slope = 1.5;
    private const double LeastSoft = 3;
    private const double SoftOver = 4;
    private const double LeastStrength = 0.15;

    // Before and after all sound, what lies so far below the loudest frames says nothing of what sounds beside the voice: a drone is switched on.
    private const double Silence = 45;

    // What is heard of a breath lies so far below the voice: a drone's swings seldom do.
    private const double Breath = 30;

    // Nothing softer beside the loud frames is voice.
    private const double Softest = 32;

    // What rises so far above all that would sound without it is voice, however soft; what does not rise at all is none. In dB.
    private const double Rises = -5;
    private const double LeastRise = -23;

    // Something sounds all the time if the quietest frames lie no farther below the voice.
    private const double Steady = 20;

    // Strings that are struck die away between two strokes, but not to silence.
    private const double NeverSilent = 40;

    private readonly float[] _voice;
    private readonly float[] _levels;

    private Voicing(float[] voice, float[] levels, double floor, double quiet, double top, double threshold) =>
        (_voice, _levels, HasGround, MayHaveStrings, Floor, Top, Threshold) = (voice, levels, top - quiet < Steady, top - quiet < NeverSilent, floor, top, threshold);

    /// <summary>The level of the quietest frames, in dB.</summary>
    public double Floor { get; }

    /// <summary>The level of the loud frames, in dB.</summary>
    public double Top { get; }

    /// <summary>The level between them above which there is voice, in dB.</summary>
    public double Threshold { get; }

    /// <summary>The likelihood of voice, 0 to 1.</summary>
    public float this[int frame] => _voice[frame];

    /// <summary>Whether something sounds all the time beside the voice.</summary>
    public bool HasGround { get; }

    /// <summary>Whether it is never silent while the voice pauses, so that strings may be struck beside it.</summary>
    public bool MayHaveStrings { get; }

    /// <summary>How clearly a frame lies below the voice's usual level, 0 to 1: a drone alone does, and soft singing.</summary>
    public float Softness(int frame) => (float)Math.Clamp((Top - LeastSoft - _levels[frame]) / SoftOver, 0, 1);

    public int Count => _voice.Length;

    public static Voicing Of(PitchTrack track)
    {
        if (track.Count == 0)
        {
            return new Voicing([], [], -120, -120, -120, -120);
        }

        var levels = new float[track.Count];
        for (var f = 0; f < levels.Length; f++)
        {
            levels[f] = LevelOf(track, f);
        }

        var all = (float[])levels.Clone();
        Array.Sort(all);
        var silence = all[(int)(all.Length * 0.98)] - Silence;
        var (first, last) = (Array.FindIndex(levels, l => l > silence), Array.FindLastIndex(levels, l => l > silence));
        var sorted = levels[first..(last + 1)];
        Array.Sort(sorted);
        var (floor, top) = (all[(int)(all.Length * 0.04)], all[(int)(all.Length * 0.85)]);

        // One silent breath shows that nothing sounds all the time, however long the voice sings on. So does one that is heard, where all else is as loud as singing.
        var (breath, quiet) = (sorted[(int)(sorted.Length * 0.01)], sorted[(int)(sorted.Length * 0.04)]);
        quiet = breath < top - Silence || (breath < top - Breath && top - quiet < Steady) ? breath : quiet;
        var threshold = Math.Max(quiet + Math.Min(9, 0.45 * (top - quiet)), top - Softest);
        threshold = top - quiet < 5 ? quiet - 3 : threshold;
        var voice = new float[levels.Length];
        for (var f = 0; f < voice.Length; f++)
        {
            var byLevel = Above(levels[f], threshold, Slope);
            var byRise = Above(track.Rise(f), Rises, Slope) * Above(levels[f], top - Softest, Slope);
            var byStrength = Above(track.At(f)[0].Strength, LeastStrength, 0.02) * Above(track.Rise(f), LeastRise, Slope);
            voice[f] = (float)(Math.Max(byLevel, byRise) * byStrength);
        }

        return new Voicing(voice, levels, floor, quiet, top, threshold);
    }

    /// <summary>How clearly a value lies above a bound, 0 to 1.</summary>
    private static double Above(double value, double bound, double slope) => 1 / (1 + Math.Exp((bound - value) / slope));

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
