using MathNet.Numerics.LinearAlgebra;

namespace Warmup.Takes;

/// <summary>The pitch of one note of a take: its course through the note's middle, its mean without vibrato, and how steady it is.</summary>
internal static class NoteContour
{
    private const double Edge = 0.2;
    private const double Widest = 700;
    private const double Near = 90;
    private const double NearCents = 40;
    private const double Slip = 25;

    // So far from a note's pitch, in cents, a frame's candidate is as likely as one that is 0.6 times as strong and has it; and so many times as far it is none.
    private const double Follows = 80;
    private const double FollowsMost = 2;
    private const float LeastShare = 0.35f;

    // The middle of a glide from a note an octave away lies so far off.
    private const double Farthest = 600;
    private const double SlowestVibrato = 4;
    private const double FastestVibrato = 9;

    /// <summary>What was heard of a note.</summary>
    /// <param name="Cents">The pitch in cents above MIDI note 0.</param>
    /// <param name="Spread">The standard deviation without vibrato, in cents.</param>
    /// <param name="Vibrato">The half extent of the vibrato in cents; 0 where there is none.</param>
    /// <param name="Found">The share of the frames that have the pitch, 0 to 1.</param>
    /// <param name="Rival">How strong the strongest other pitch was beside it, 0 to 1.</param>
    /// <param name="Rate">The vibrato's rate in Hz; 0 where there is none.</param>
    public readonly record struct Heard(double Cents, double Spread, double Vibrato, double Found, double Rival, double Rate);

    /// <summary>Measures a note.</summary>
    /// <param name="track">The take.</param>
    /// <param name="onset">Its onset in seconds.</param>
    /// <param name="end">Its end in seconds.</param>
    /// <param name="about">The pitch it should have, in cents above MIDI note 0.</param>
    /// <param name="within">How far it may be from it.</param>
    /// <param name="rate">The singer's rate of vibrato in Hz, known from longer notes; 0 where it is not.</param>
    public static Heard Measure(PitchTrack track, double onset, double end, double about, double within, double rate = 0)
    {
        var (a, b) = (onset + (Edge * (end - onset)), end - (Edge * (end - onset)));
        var (from, to) = ((int)Math.Ceiling(a * PitchTrack.FramesASecond), (int)Math.Floor(b * PitchTrack.FramesASecond));
        if (to < from)
        {
            from = to = (int)Math.Round((a + b) / 2 * PitchTrack.FramesASecond);
        }

        (from, to) = (Math.Clamp(from, 0, track.Count - 1), Math.Clamp(to, 0, track.Count - 1));
        var centre = Centre(track, from, to, about, Math.Min(within, Widest));
        var (times, cents, rivals) = Follow(track, from, to, (a + b) / 2, centre);
        if (cents.Count > 0)
        {
            // The frames agree most on where a wide vibrato turns: once more from its middle.
            var middle = cents.Average();
            (times, cents, rivals) = Follow(track, from, to, (a + b) / 2, Math.Abs(middle - about) <= within ? middle : centre);
        }

        var found = cents.Count / (double)(to - from + 1);
        if (cents.Count == 0)
        {
            return new Heard(centre, 0, 0, 0, 1, 0);
        }

        WithoutSpikes(cents);
        var (mean, spread, vibrato, rateFound) = WithoutVibrato(times, cents, rate);
        return new Heard(mean, spread, vibrato, found, rivals / cents.Count, rateFound);
    }

    /// <summary>The course of a note from its onset to its end: every second frame's candidate that lies nearest to the note's pitch.</summary>
    /// <param name="track">The take.</param>
    /// <param name="onset">Its onset in seconds.</param>
    /// <param name="end">Its end in seconds.</param>
    /// <param name="cents">Its pitch in cents above MIDI note 0.</param>
    public static IEnumerable<(double Seconds, double Cents)> Course(PitchTrack track, double onset, double end, double cents)
    {
        for (var f = (int)Math.Ceiling(onset * PitchTrack.FramesASecond); f < Math.Min(track.Count, end * PitchTrack.FramesASecond); f += 2)
        {
            var (best, off) = (-1, Farthest);
            var candidates = track.At(f);
            for (var k = 0; k < candidates.Length && candidates[k].Strength > LeastShare * candidates[0].Strength; k++)
            {
                (best, off) = Math.Abs(candidates[k].Cents - cents) < off ? (k, Math.Abs(candidates[k].Cents - cents)) : (best, off);
            }

            if (best >= 0)
            {
                yield return (f / (double)PitchTrack.FramesASecond, candidates[best].Cents);
            }
        }
    }

    /// <summary>
    /// The candidate of each frame that is strong and near to a pitch: in a room a wide vibrato sounds on, so that a frame has it at both of its turns.
    /// </summary>
    private static (List<double> Times, List<double> Cents, double Rivals) Follow(PitchTrack track, int from, int to, double middle, double centre)
    {
        var (times, cents, rivals) = (new List<double>(), new List<double>(), 0.0);
        for (var f = from; f <= to; f++)
        {
            var (best, most) = (-1, 0.0);
            var candidates = track.At(f);
            var even = track.EvenAt(f);
            for (var k = 0; k < candidates.Length && candidates[k].Strength > LeastShare * candidates[0].Strength; k++)
            {
                var off = Math.Abs(even[k] - centre) / Follows;
                var likely = candidates[k].Strength * Math.Exp(-off * off / 2);
                (best, most) = off < FollowsMost && likely > most ? (k, likely) : (best, most);
            }

            if (best >= 0)
            {
                times.Add((f / (double)PitchTrack.FramesASecond) - middle);
                cents.Add(candidates[best].Cents);
                rivals += 1 - (candidates[best].Strength / candidates[0].Strength);
            }
        }

        return (times, cents, rivals);
    }

    /// <summary>The pitch that most of the frames agree on.</summary>
    private static double Centre(PitchTrack track, int from, int to, double about, double within)
    {
        var (best, most) = (about, -1.0);
        for (var trial = about - within; trial <= about + within; trial += 10)
        {
            var sum = 0.0;
            for (var f = from; f <= to; f++)
            {
                var candidates = track.At(f);
                var even = track.EvenAt(f);
                for (var k = 0; k < candidates.Length; k++)
                {
                    var off = (even[k] - trial) / NearCents;
                    if (candidates[k].Strength > 0 && Math.Abs(off) < 3)
                    {
                        var share = candidates[k].Strength / candidates[0].Strength;
                        sum += share * share * Math.Exp(-off * off / 2);
                    }
                }
            }

            // Of two that are alike, the one that is nearer to the drill.
            var away = (trial - about) / (within > 2 * Near ? Widest : Near);
            sum *= Math.Exp(-away * away / 2);
            (best, most) = sum > most ? (trial, sum) : (best, most);
        }

        return best;
    }

    /// <summary>A frame that leaps away from both its neighbours is a slip of the track: it takes the middle of the three.</summary>
    private static void WithoutSpikes(List<double> cents)
    {
        for (var i = 1; i + 1 < cents.Count; i++)
        {
            var (low, high) = (Math.Min(cents[i - 1], cents[i + 1]), Math.Max(cents[i - 1], cents[i + 1]));
            if (cents[i] < low - Slip || cents[i] > high + Slip)
            {
                cents[i] = Math.Clamp(cents[i], low, high);
            }
        }
    }

    /// <summary>The mean of a course with its slope and its vibrato fitted to it.</summary>
    private static (double Mean, double Spread, double Vibrato, double Rate) WithoutVibrato(List<double> times, List<double> cents, double known)
    {
        var (mean, spread) = Trimmed(times, cents);
        var seconds = times[^1] - times[0];
        if (times.Count < 8 || spread < 4 || seconds < 0.9 / FastestVibrato)
        {
            return (mean, spread, 0, 0);
        }

        var values = Vector<double>.Build.DenseOfEnumerable(cents);
        var (least, bestMean, bestSpread, extent, bestRate) = (spread * spread * cents.Count, mean, spread, 0.0, 0.0);
        var (slowest, fastest) = known > 0 ? (known - 0.25, known + 0.26) : (Math.Max(SlowestVibrato, 0.8 / seconds), FastestVibrato);
        for (var rate = slowest; rate <= fastest; rate += 0.25)
        {
            var w = 2 * Math.PI * rate;
            var slope = seconds > 1.6 / rate;
            var columns = Matrix<double>.Build.Dense(times.Count, slope ? 4 : 3, (r, c) => c switch
            {
                0 => 1,
                1 => Math.Cos(w * times[r]),
                2 => Math.Sin(w * times[r]),
                _ => times[r],
            });
            var fit = columns.TransposeThisAndMultiply(columns).Solve(columns.TransposeThisAndMultiply(values));
            var rest = (values - (columns * fit)).L2Norm();
            var amplitude = Math.Sqrt((fit[1] * fit[1]) + (fit[2] * fit[2]));
            if (rest * rest < least && amplitude < 250)
            {
                (least, bestMean, bestSpread, extent, bestRate) = (rest * rest, fit[0], rest / Math.Sqrt(cents.Count), amplitude, rate);
            }
        }

        // A vibrato explains most of what moves; anything less is left in.
        return least < (known > 0 ? 0.7 : 0.5) * spread * spread * cents.Count ? (bestMean, bestSpread, extent, bestRate) : (mean, spread, 0, 0);
    }

    private static (double Mean, double Spread) Trimmed(List<double> times, List<double> cents)
    {
        var sorted = cents.Order().ToList();
        var middle = sorted[sorted.Count / 2];
        var (sum, squares, count) = (0.0, 0.0, 0);
        foreach (var value in cents)
        {
            if (Math.Abs(value - middle) < 120)
            {
                sum += value;
                squares += value * value;
                count++;
            }
        }

        _ = times;
        var mean = sum / count;
        return (mean, Math.Sqrt(Math.Max(0, (squares / count) - (mean * mean))));
    }
}
