namespace Warmup.Drawing;

/// <summary>A strip of the contour: its time in seconds from the section's beginning. It fills the width of the paper.</summary>
internal readonly record struct ContourStrip(double From, double To);

/// <summary>
/// Divides the time of a section into strips. A drill that fits one is one strip; else each speed and tempo has strips of its own, of about the same number of
/// seconds, so that fast notes are as wide as slow ones.
/// </summary>
internal sealed class ContourTime
{
    // The project's own setting: the most time in a strip, in seconds.
    private const double MostSeconds = 60;

    public ContourTime(Section section, double width, double shortestNote)
    {
        Lines = section.Lines.ConvertAll(l => Span(section, l.Onset, l.Length));
        Breaths = section.Breaths.ConvertAll(b => Span(section, b.Onset, b.Length));
        Measures = section.Measures.ConvertAll(m => section.SecondsAt(m.Onset).ToDouble());
        var all = (From: 0, To: section.Lines.Count);
        if (Seconds(all) <= Most(section, all, width, shortestNote))
        {
            Strips.Add(new ContourStrip(Lines[0].From, Lines[^1].To));
            return;
        }

        foreach (var run in Runs(section))
        {
            Divide(run, Most(section, run, width, shortestNote));
        }
    }

    public List<ContourStrip> Strips { get; } = [];

    /// <summary>When each line begins and ends, with its hold and breath.</summary>
    public ValueList<(double From, double To)> Lines { get; }

    public ValueList<(double From, double To)> Breaths { get; }

    public ValueList<double> Measures { get; }

    private static (double From, double To) Span(Section section, Rational onset, Rational length) =>
        (section.SecondsAt(onset).ToDouble(), section.SecondsAt(onset + length).ToDouble());

    /// <summary>Neighbouring lines of one speed and tempo, by their indexes.</summary>
    private static IEnumerable<(int From, int To)> Runs(Section section)
    {
        var from = 0;
        for (var l = 1; l <= section.Lines.Count; l++)
        {
            if (l == section.Lines.Count
                || section.Lines[l].Speed != section.Lines[from].Speed
                || section.TempoAt(section.Lines[l].Onset) != section.TempoAt(section.Lines[from].Onset))
            {
                yield return (from, l);
                from = l;
            }
        }
    }

    private double Seconds((int From, int To) lines) => Lines[lines.To - 1].To - Lines[lines.From].From;

    /// <summary>The most seconds of a strip in which the shortest note of some lines is still wide enough.</summary>
    private static double Most(Section section, (int From, int To) lines, double width, double shortestNote)
    {
        var shortest = double.MaxValue;
        for (var n = section.Lines[lines.From].FirstNote; n < section.Notes.Count && section.Notes[n].LineIndex < lines.To; n++)
        {
            shortest = Math.Min(shortest, (section.SecondsAt(section.Notes[n].End) - section.SecondsAt(section.Notes[n].Onset)).ToDouble());
        }

        return Math.Min(MostSeconds, width * shortest / shortestNote);
    }

    /// <summary>Divides lines into as few strips as their time needs, each about as long as the others; a line longer than a strip is cut.</summary>
    private void Divide((int From, int To) lines, double most)
    {
        var begin = Lines[lines.From].From;
        var each = Math.Max(Seconds(lines) / Math.Ceiling((Seconds(lines) / most) - 1e-6), 1e-3);
        var from = begin;
        var strip = 1;
        for (var l = lines.From; l < lines.To; l++)
        {
            var (start, end) = Lines[l];

            // A strip ends where a line does, the nearest to its share of the time.
            if (start > from + 1e-6 && (end - from > most + 1e-6 || ((start + end) / 2) - begin >= (strip * each) - 1e-6))
            {
                Strips.Add(new ContourStrip(from, start));
                from = start;
                strip++;
            }

            var parts = Math.Max(1, (int)Math.Ceiling(((end - from) / most) - 1e-6));
            for (var p = 1; p < parts; p++)
            {
                var cut = from + ((end - from) / (parts - p + 1));
                Strips.Add(new ContourStrip(from, cut));
                from = cut;
                strip++;
            }
        }

        Strips.Add(new ContourStrip(from, Lines[lines.To - 1].To));
    }
}
