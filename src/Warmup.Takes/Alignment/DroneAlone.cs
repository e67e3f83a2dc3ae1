namespace Warmup.Takes;

/// <summary>
/// How likely each frame of a take holds a drone and no voice. A drone has the pitch of S or P and is softer than the voice; strings that are struck keep one
/// pitch besides, to a few cents and for long, where a voice that sings S or P sways about it.
/// </summary>
internal static class DroneAlone
{
    private const double Fifth = 702;

    // Cents about S and P.
    private const int Near = 50;

    // Cents about a string's pitch, and frames on end that keep to them.
    private const int Exact = 4;
    private const int Steady = 16;

    // So many frames hold two strings where one is struck after the other.
    private const int Struck = 4;

    // What is less than this is no voice anyway.
    private const double LeastVoice = 0.3;

    // Of all frames that have the pitch of S or P so many lie so near to one where strings sound: four times what would by chance.
    private const double Share = 0.4;

    /// <summary>The likelihood of each frame, 0 to 1.</summary>
    /// <param name="track">The take.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="tonic">The tonic in cents above MIDI note 0.</param>
    /// <param name="most">The likelihood of a frame that has the pitch and is soft, but keeps to no string's.</param>
    public static float[] Of(PitchTrack track, Voicing voicing, double tonic, double most)
    {
        var alone = new float[track.Count];
        var offs = new double[alone.Length];
        for (var f = 0; f < alone.Length; f++)
        {
            offs[f] = Off(track.At(f)[0].Cents - tonic);
            alone[f] = double.IsNaN(offs[f]) || !voicing.HasGround ? 0 : (float)(most * voicing.Softness(f));
        }

        if (!voicing.MayHaveStrings || StringsAt(offs, voicing) is not { } strings)
        {
            return alone;
        }

        var from = 0;
        for (var f = 0; f <= offs.Length; f++)
        {
            if (f < offs.Length && Math.Abs(offs[f] - strings) <= Exact && (f == from || Math.Abs(track.At(f)[0].Cents - track.At(f - 1)[0].Cents) < Near))
            {
                continue;
            }

            var (first, last) = f - from >= Steady ? (Math.Max(0, from - Struck), Math.Min(f + Struck, offs.Length)) : (f, f);
            for (var k = first; k < last; k++)
            {
                alone[k] = voicing.Softness(k) > 0 ? 1 : alone[k];
            }

            from = f + 1;
        }

        return alone;
    }

    /// <summary>How far from the tonic's S and P the strings lie, in cents; <see langword="null"/> where no strings sound.</summary>
    private static double? StringsAt(double[] offs, Voicing voicing)
    {
        var cents = new int[(2 * Near) + 1];
        var all = 0;
        for (var f = 0; f < offs.Length; f++)
        {
            if (voicing[f] >= LeastVoice && !double.IsNaN(offs[f]))
            {
                cents[(int)Math.Round(offs[f]) + Near]++;
                all++;
            }
        }

        // Where most lies, and the more the nearer.
        var (at, most) = (0, 0);
        for (var c = Exact; c < cents.Length - Exact; c++)
        {
            var about = 0;
            for (var k = -Exact; k <= Exact; k++)
            {
                about += (Exact + 1 - Math.Abs(k)) * cents[c + k];
            }

            (at, most) = about > most ? (c, about) : (at, most);
        }

        var near = 0;
        for (var c = at - Exact; most > 0 && c <= at + Exact; c++)
        {
            near += cents[c];
        }

        return near > 0 && near >= Share * all ? at - Near : null;
    }

    /// <summary>How far a pitch lies from S or P in its octave, in cents; not a number where it is far from both.</summary>
    private static double Off(double aboveTonic)
    {
        var inOctave = aboveTonic - (1200 * Math.Round(aboveTonic / 1200));
        var fromFifth = inOctave - (inOctave < 0 ? Fifth - 1200 : Fifth);
        return Math.Abs(inOctave) < Near ? inOctave : Math.Abs(fromFifth) < Near ? fromFifth : double.NaN;
    }
}
