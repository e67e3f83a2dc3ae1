namespace Warmup.Drawing;

/// <summary>A strip of the contour: the lines that it holds, and its time in seconds from the section's beginning.</summary>
internal readonly record struct ContourStrip(double From, double To);

/// <summary>Divides the time of a section into strips, all at one scale.</summary>
internal sealed class ContourTime
{
    // The project's own bounds: so much time in a strip, and so much paper for the shortest note, in points.
    private const double LeastSeconds = 8;
    private const double MostSeconds = 60;
    private const double ShortestNote = 9;

    public ContourTime(Section section, double width)
    {
        var shortest = double.MaxValue;
        foreach (var note in section.Notes)
        {
            shortest = Math.Min(shortest, (section.SecondsAt(note.Onset + note.Length) - section.SecondsAt(note.Onset)).ToDouble());
        }

        var end = section.SecondsAt(section.End).ToDouble();
        var start = section.SecondsAt(section.Lines[0].Onset).ToDouble();
        Seconds = Math.Clamp(width * shortest / ShortestNote, LeastSeconds, MostSeconds);
        if (end - start <= Seconds)
        {
            // All of it in one strip: as wide as it goes, but a short drill is not blown up.
            Seconds = Math.Max(end - start, LeastSeconds);
        }

        // A strip ends where a line does; a line longer than a strip is cut.
        var (from, reached) = (start, start);
        foreach (var line in section.Lines)
        {
            var to = section.SecondsAt(line.Onset + line.Length).ToDouble();
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
}
