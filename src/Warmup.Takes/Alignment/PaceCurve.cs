namespace Warmup.Takes;

/// <summary>How fast a take goes: sung seconds for a second of the drill, over the take.</summary>
internal sealed class PaceCurve
{
    private const double Reach = 4;
    private readonly (double At, double Ratio)[] _ratios;

    private PaceCurve((double At, double Ratio)[] ratios, double whole) => (_ratios, Whole) = (ratios, whole);

    /// <summary>The pace of the whole take.</summary>
    public double Whole { get; }

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

        return new PaceCurve([.. ratios], Median(ratios.ConvertAll(r => r.Ratio)));
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

        return near.Count < 4 ? Whole : Median(near);
    }

    private static double Median(List<double> values)
    {
        if (values.Count == 0)
        {
            return 1;
        }

        values.Sort();
        return values.Count % 2 == 1 ? values[values.Count / 2] : (values[(values.Count / 2) - 1] + values[values.Count / 2]) / 2;
    }
}
