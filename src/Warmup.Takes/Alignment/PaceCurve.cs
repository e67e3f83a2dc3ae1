using MathNet.Numerics.Statistics;

namespace Warmup.Takes;

/// <summary>How fast a take goes: sung seconds for a second of the drill, over the take.</summary>
internal sealed class PaceCurve
{
    private const double Reach = 4;

    // So much faster or slower than the whole take may a part of it go: more is rather notes divided or run together.
    private const double MostChange = 1.3;
    private readonly (double At, double Ratio)[] _ratios;

    // A note's length is odd where its logarithm is so far from the drill's: more than a third longer or less.
    private const double OddLength = 0.35;

    private PaceCurve((double At, double Ratio)[] ratios, double whole) => (_ratios, Whole) = (ratios, whole);

    /// <summary>The pace of the whole take.</summary>
    public double Whole { get; }

    /// <summary>The share of the notes whose length is far from the drill's, 0 to 1.</summary>
    public double Odd => _ratios.Length == 0 ? 0 : _ratios.Count(r => Math.Abs(Math.Log(r.Ratio)) > OddLength) / (double)_ratios.Length;

    public static PaceCurve Of(DrillNote[] notes, SungSpan[] spans)
    {
        var ratios = new List<(double At, double Ratio)>();
        for (var s = 1; s < spans.Length; s++)
        {
            var (before, after) = (notes[spans[s - 1].Note], notes[spans[s].Note]);
            if (after.Index == before.Index + 1 && after.Line == before.Line)
            {
                var sung = (spans[s].From - spans[s - 1].From) / (double)PitchTrack.FramesASecond;
                ratios.Add((spans[s].From / (double)PitchTrack.FramesASecond, Math.Clamp(sung / (after.Onset - before.Onset), 0.2, 5)));
            }
        }

        return new PaceCurve([.. ratios], ratios.Count == 0 ? 1 : ratios.Select(r => r.Ratio).Median());
    }

    /// <summary>The pace about a time in seconds: the median of the nearest notes.</summary>
    public double At(double seconds)
    {
        var low = 0;
        var high = _ratios.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _ratios[middle].At < seconds - Reach ? (middle + 1, high) : (low, middle);
        }

        var near = new List<double>();
        for (; low < _ratios.Length && _ratios[low].At <= seconds + Reach; low++)
        {
            near.Add(_ratios[low].Ratio);
        }

        return near.Count < 4 ? Whole : Math.Clamp(near.Median(), Whole / MostChange, Whole * MostChange);
    }
}
