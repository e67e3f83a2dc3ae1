using MathNet.Numerics.LinearAlgebra;

namespace Warmup.Takes;

/// <summary>
/// When one note goes over into the next where both have a vibrato that is about as wide as the step between them: a step and a vibrato that runs on
/// through it are fitted to the course together.
/// </summary>
internal static class VibratoStep
{
    // So far to either side of where the step may be the course is looked at: more than a cycle of the slowest vibrato.
    private const double Reach = 0.3;

    // A glide's usual length in seconds, and the places that are tried.
    private const double Glide = 0.07;
    private const double Spacing = 0.01;

    // So far beyond both notes a frame may lie, in cents.
    private const double Beyond = 200;
    private const float LeastShare = 0.5f;
    private const int LeastFrames = 16;

    /// <summary>The time of the step that leaves least of the course over; none where too little could be followed.</summary>
    /// <param name="track">The take.</param>
    /// <param name="a">The pitch before, in cents above MIDI note 0.</param>
    /// <param name="b">The pitch after.</param>
    /// <param name="rate">The vibrato's rate in Hz.</param>
    /// <param name="from">The earliest that the step may be, in seconds.</param>
    /// <param name="to">The latest.</param>
    /// <param name="begin">Where the note before begins.</param>
    /// <param name="end">Where the note after ends.</param>
    public static double? Time(PitchTrack track, double a, double b, double rate, double from, double to, double begin, double end)
    {
        var (times, cents) = Course(track, Math.Min(a, b) - Beyond, Math.Max(a, b) + Beyond, Math.Max(begin, from - Reach), Math.Min(end, to + Reach));
        if (times.Count < LeastFrames)
        {
            return null;
        }

        var (best, least) = ((double?)null, double.PositiveInfinity);
        var w = 2 * Math.PI * rate;
        for (var at = from; at <= to; at += Spacing)
        {
            var step = times.ConvertAll(t => Math.Clamp(((t - at) / Glide) + 0.5, 0, 1));
            var columns = Matrix<double>.Build.Dense(times.Count, 2, (r, c) => c == 0 ? Math.Cos(w * (times[r] - at)) : Math.Sin(w * (times[r] - at)));
            var values = Vector<double>.Build.Dense(times.Count, r => cents[r] - a - ((b - a) * step[r]));
            var fit = columns.TransposeThisAndMultiply(columns).Solve(columns.TransposeThisAndMultiply(values));
            var left = (values - (columns * fit)).L2Norm();
            (best, least) = left < least ? (at, left) : (best, least);
        }

        return best;
    }

    /// <summary>The strongest pitch of each frame that lies within bounds, where there is one.</summary>
    private static (List<double> Times, List<double> Cents) Course(PitchTrack track, double lowest, double highest, double from, double to)
    {
        var (times, cents) = (new List<double>(), new List<double>());
        for (var f = (int)Math.Ceiling(from * PitchTrack.FramesASecond); f < Math.Min(track.Count, to * PitchTrack.FramesASecond); f++)
        {
            var candidates = track.At(f);
            foreach (var candidate in candidates)
            {
                if (candidate.Strength > LeastShare * candidates[0].Strength && candidate.Cents >= lowest && candidate.Cents <= highest)
                {
                    times.Add(f / (double)PitchTrack.FramesASecond);
                    cents.Add(candidate.Cents);
                    break;
                }
            }
        }

        return (times, cents);
    }
}
