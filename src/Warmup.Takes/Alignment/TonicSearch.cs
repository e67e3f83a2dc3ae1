namespace Warmup.Takes;

/// <summary>How far above the drill's pitches a take may have been sung: the shifts at which its pitches and the drill's agree best.</summary>
internal static class TonicSearch
{
    private const int BinCents = 10;
    private const int Lowest = 2_000;
    private const int Bins = 900;
    private const int Farthest = 3_000;
    private const int Width = 4;
    private const double Near = 150;

    /// <summary>The shifts in cents that are worth an alignment, the likeliest first.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="track">The take.</param>
    /// <param name="voicing">Where there is voice.</param>
    /// <param name="most">The most shifts.</param>
    public static IReadOnlyList<double> Shifts(DrillNotes drill, PitchTrack track, Voicing voicing, int most)
    {
        var heard = Histogram(track, voicing);
        var wanted = new SortedDictionary<double, double>();
        foreach (var note in drill.Notes)
        {
            wanted[note.Cents] = wanted.GetValueOrDefault(note.Cents) + note.Seconds;
        }

        var total = wanted.Values.Sum();
        var scores = new double[(2 * Farthest / BinCents) + 1];
        for (var s = 0; s < scores.Length; s++)
        {
            var shift = (s * BinCents) - Farthest;
            foreach (var (cents, seconds) in wanted)
            {
                var bin = (int)Math.Round((cents + shift - Lowest) / BinCents);
                if (bin is >= 0 and < Bins)
                {
                    // A long held note must not outweigh all others.
                    scores[s] += Math.Sqrt(seconds / total) * Math.Sqrt(heard[bin]);
                }
            }
        }

        var peaks = new List<(double Shift, double Score)>();
        for (var s = 1; s < scores.Length - 1; s++)
        {
            if (scores[s] > 0 && scores[s] >= scores[s - 1] && scores[s] > scores[s + 1])
            {
                peaks.Add(((s * BinCents) - Farthest, scores[s]));
            }
        }

        peaks.Sort((a, b) => a.Score != b.Score ? b.Score.CompareTo(a.Score) : a.Shift.CompareTo(b.Shift));
        var shifts = new List<double>();
        foreach (var octave in (double[])[0, -1200, 1200])
        {
            // The drill's own tonic, and its octaves, are always tried.
            var near = peaks.FindIndex(p => Math.Abs(p.Shift - octave) <= 70);
            shifts.Add(near < 0 ? octave : peaks[near].Shift);
        }

        foreach (var (shift, _) in peaks)
        {
            if (shifts.Count < most && !shifts.Exists(other => Math.Abs(other - shift) < Near / 3))
            {
                shifts.Add(shift);
            }
        }

        return shifts;
    }

    /// <summary>How much of the take lies at each pitch.</summary>
    private static double[] Histogram(PitchTrack track, Voicing voicing)
    {
        var heard = new double[Bins];
        for (var f = 0; f < track.Count; f++)
        {
            var strongest = track.At(f)[0].Strength;
            if (voicing[f] < 0.3 || strongest <= 0)
            {
                continue;
            }

            var candidates = track.At(f);
            var even = track.EvenAt(f);
            for (var k = 0; k < candidates.Length; k++)
            {
                var bin = (int)Math.Round((even[k] - Lowest) / BinCents);
                if (bin is >= 0 and < Bins)
                {
                    var weight = candidates[k].Strength / strongest;
                    heard[bin] += voicing[f] * weight * weight * weight / track.Count;
                }
            }
        }

        var smooth = new double[Bins];
        for (var b = 0; b < Bins; b++)
        {
            for (var k = -Width; k <= Width; k++)
            {
                smooth[b] += b + k is >= 0 and < Bins ? heard[b + k] * (Width + 1 - Math.Abs(k)) : 0;
            }
        }

        return smooth;
    }
}
