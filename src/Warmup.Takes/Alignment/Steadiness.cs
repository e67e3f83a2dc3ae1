using MathNet.Numerics.Statistics;

namespace Warmup.Takes;

/// <summary>
/// How steadily this singer sings: how far the notes of a take lie from their pitch and from their length. Faults are measured by it: half a semitone beside its
/// pitch is rather another note from a singer who is never ten cents off, and a note of double length rather two from one who keeps time.
/// </summary>
/// <param name="Cents">The standard deviation of a note's mean from its pitch, in cents.</param>
/// <param name="Length">The standard deviation of the logarithm of a note's length from the pace.</param>
internal readonly record struct Steadiness(double Cents, double Length)
{
    // From the median distance to the standard deviation of what is spread normally: a few faults do not move a median.
    private const double OfMedian = 1.4826;

    /// <summary>The steadiness of a take, and the fewer notes it has, the more what is usual among singers.</summary>
    /// <param name="cents">How far the notes are off their pitch, in cents.</param>
    /// <param name="notes">The drill.</param>
    /// <param name="spans">The notes in the take.</param>
    /// <param name="pace">How fast it goes.</param>
    /// <param name="weights">What is usual, and how many notes it counts.</param>
    public static Steadiness Of(IEnumerable<double> cents, DrillNote[] notes, SungSpan[] spans, PaceCurve pace, AlignmentWeights weights)
    {
        // A line's last note may be held, or let go for the breath: its length says little.
        var lengths = spans.Where(s => !s.IsOther && !notes[s.Note].IsLast)
            .Select(s => Math.Log((s.To - s.From) / (notes[s.Note].Seconds * pace.At(s.From / (double)PitchTrack.FramesASecond) * PitchTrack.FramesASecond)));
        return new Steadiness(
            Math.Max(weights.LeastDeviation, Deviation(cents, weights.Deviation, weights.Usual)), Math.Max(weights.LeastLength, Deviation(lengths, weights.Length, weights.Usual)));
    }

    private static double Deviation(IEnumerable<double> offs, double usual, double usualCount)
    {
        var sizes = offs.Select(Math.Abs).ToList();
        if (sizes.Count == 0)
        {
            return usual;
        }

        var own = OfMedian * sizes.Median();
        return Math.Sqrt(((sizes.Count * own * own) + (usualCount * usual * usual)) / (sizes.Count + usualCount));
    }
}
