namespace Warmup;

/// <summary>Divides a section into measures.</summary>
internal static class MeasurePlan
{
    /// <summary>The parts of an akshara on which a bar of free rhythm may end: quarters, which files write as sixteenth notes.</summary>
    public const int FreeGrid = 4;

    // A longer bar of free rhythm is divided, since very long bars are squeezed on paper.
    private const int LongestFreeBar = 16;
    private const int FreeBar = 8;

    public static ValueList<Measure> For(Meter meter, ReadOnlySpan<ScoreLine> lines, Rational length) =>
        meter.IsFree ? Free(lines, length) : Counted(meter, lines, length);

    private static ValueList<Measure> Counted(Meter meter, ReadOnlySpan<ScoreLine> lines, Rational length)
    {
        long avartana = meter.Beats;
        var measures = new Measure[(length / avartana).Ceiling()];
        var line = 0;
        for (var m = 0; m < measures.Length; m++)
        {
            var onset = m * avartana;
            while (line < lines.Length && lines[line].Onset < onset)
            {
                line++;
            }

            measures[m] = new Measure(onset, avartana, line < lines.Length && lines[line].Onset == onset);
        }

        return ValueList.Adopt(measures);
    }

    /// <summary>A bar for each line that ends on the grid; lines that do not are taken together until one does.</summary>
    private static ValueList<Measure> Free(ReadOnlySpan<ScoreLine> lines, Rational length)
    {
        var measures = new List<Measure>();
        var onset = Rational.Zero;
        foreach (var line in lines)
        {
            var end = line.Onset + line.Length;
            if ((end * FreeGrid).IsInteger || end == length)
            {
                // The very end is filled up to the grid with silence.
                end = new Rational((end * FreeGrid).Ceiling(), FreeGrid);
                Add(measures, onset, end);
                onset = end;
            }
        }

        return measures.ToValueList();
    }

    private static void Add(List<Measure> measures, Rational onset, Rational end)
    {
        var first = true;
        while (end - onset > LongestFreeBar)
        {
            measures.Add(new Measure(onset, FreeBar, first));
            onset += FreeBar;
            first = false;
        }

        measures.Add(new Measure(onset, end - onset, first));
    }
}
