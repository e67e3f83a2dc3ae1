namespace Warmup;

/// <summary>Divides a section into measures.</summary>
internal static class MeasurePlan
{
    /// <summary>The parts of an akshara on which a bar of free rhythm may end: quarters, which files write as sixteenth notes.</summary>
    public const int FreeGrid = 4;

    // A longer bar of free rhythm is divided, since very long bars are squeezed on paper.
    private const int LongestFreeBar = 16;
    private const int FreeBar = 8;

    /// <summary>The measures of lines.</summary>
    /// <param name="meter">The meter.</param>
    /// <param name="lines">The lines.</param>
    /// <param name="length">Where the last one ends, in grid steps.</param>
    /// <param name="resolution">Grid steps an akshara.</param>
    public static ValueList<Measure> For(Meter meter, ReadOnlySpan<ScoreLine> lines, int length, int resolution) =>
        meter.IsFree ? Free(lines, length, resolution) : Counted(lines, length, meter.Beats * resolution, resolution);

    private static ValueList<Measure> Counted(ReadOnlySpan<ScoreLine> lines, int length, int avartana, int resolution)
    {
        var measures = new Measure[(length / avartana) + (length % avartana == 0 ? 0 : 1)];
        var (line, onset) = (0, 0);
        for (var m = 0; m < measures.Length; m++)
        {
            while (line < lines.Length && lines[line].OnsetSteps < onset)
            {
                line++;
            }

            measures[m] = new Measure(onset, avartana, resolution, line < lines.Length && lines[line].OnsetSteps == onset);
            onset += avartana;
        }

        return ValueList.Adopt(measures);
    }

    /// <summary>A bar for each line that ends on the grid of bars; lines that do not are taken together until one does.</summary>
    private static ValueList<Measure> Free(ReadOnlySpan<ScoreLine> lines, int length, int resolution)
    {
        var measures = new List<Measure>();
        var onset = 0;
        var part = resolution / FreeGrid;
        foreach (ref readonly var line in lines)
        {
            var end = line.EndSteps;
            if (end % part == 0 || end == length)
            {
                // The very end is filled up to the grid with silence.
                end = (end + part - 1) / part * part;
                Add(measures, onset, end, resolution);
                onset = end;
            }
        }

        return measures.ToValueList();
    }

    private static void Add(List<Measure> measures, int onset, int end, int resolution)
    {
        var first = true;
        while (end - onset > LongestFreeBar * resolution)
        {
            measures.Add(new Measure(onset, FreeBar * resolution, resolution, first));
            onset += FreeBar * resolution;
            first = false;
        }

        measures.Add(new Measure(onset, end - onset, resolution, first));
    }
}
