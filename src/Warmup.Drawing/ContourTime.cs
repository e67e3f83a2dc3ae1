namespace Warmup.Drawing;

/// <summary>A strip of the contour: its time in seconds from the section's beginning.</summary>
internal readonly record struct ContourStrip(double From, double To);

/// <summary>Divides the time of a section into strips, all at one scale.</summary>
internal sealed class ContourTime
{
    // The project's own settings: the time in a strip, and the width of the shortest note in points.
    private const double LeastSeconds = 8;
    private const double MostSeconds = 60;
    private const double ShortestNote = 9;

    public ContourTime(Section section, double width)
    {
        var shortest = double.MaxValue;
        foreach (var note in section.Notes)
        {
            shortest = Math.Min(shortest, (section.SecondsAt(note.End) - section.SecondsAt(note.Onset)).ToDouble());
        }

        Lines = section.Lines.ConvertAll(l => Span(section, l.Onset, l.Length));
        Breaths = section.Breaths.ConvertAll(b => Span(section, b.Onset, b.Length));
        Measures = section.Measures.ConvertAll(m => section.SecondsAt(m.Onset).ToDouble());
        var (start, end) = (Lines[0].From, Lines[^1].To);
        Seconds = Math.Clamp(width * shortest / ShortestNote, LeastSeconds, MostSeconds);
        if (end - start <= Seconds)
        {
            // All of it fits one strip, as wide as the paper; a short drill is not stretched.
            Seconds = Math.Max(end - start, LeastSeconds);
        }

        // A strip ends where a line does; a line longer than a strip is cut.
        var (from, reached) = (start, start);
        foreach (var (_, to) in Lines)
        {
            if (to - from > Seconds + 1e-6 && reached > from)
            {
                Strips.Add(new ContourStrip(from, reached));
                from = reached;
            }

            while (to - from > Seconds + 1e-6)
            {
                Strips.Add(new ContourStrip(from, from + Seconds));
                from += Seconds;
            }

            reached = to;
        }

        if (reached > from)
        {
            Strips.Add(new ContourStrip(from, reached));
        }
    }

    /// <summary>The seconds that the whole width stands for.</summary>
    public double Seconds { get; }

    public List<ContourStrip> Strips { get; } = [];

    /// <summary>When each line begins and ends, with its hold and breath.</summary>
    public ValueList<(double From, double To)> Lines { get; }

    public ValueList<(double From, double To)> Breaths { get; }

    public ValueList<double> Measures { get; }

    private static (double From, double To) Span(Section section, Rational onset, Rational length) =>
        (section.SecondsAt(onset).ToDouble(), section.SecondsAt(onset + length).ToDouble());
}
