namespace Warmup.Drawing;

/// <summary>The heights of a section's contour: the svaras that get a line, and the span that is drawn, in cents above the middle tonic.</summary>
internal sealed class ContourPitch
{
    // The project's own settings: the room beyond the outermost note, and how far a singer's range may widen the picture.
    private const double Room = 90;
    private const double Widening = 500;

    public ContourPitch(Section section, Singer? singer)
    {
        var (low, high) = (section.Pitches[0].Cents, section.Pitches[0].Cents);
        foreach (var pitch in section.Pitches)
        {
            (low, high) = (Math.Min(low, pitch.Cents), Math.Max(high, pitch.Cents));
        }

        if (singer is not null)
        {
            Band = (CentsOf(section, singer.Low), CentsOf(section, singer.High));
            var (least, most) = (low - Widening, high + Widening);
            (low, high) = (Math.Max(least, Math.Min(low, Band.Value.Low)), Math.Min(most, Math.Max(high, Band.Value.High)));
        }

        (Low, High) = (low - Room, high + Room);
        for (var octave = -3; octave <= 3; octave++)
        {
            foreach (var degree in section.Scale.Degrees)
            {
                var tone = new ScaleTone(degree, octave);
                var cents = section.Tuning.Cents(tone);
                if (cents >= Low && cents <= High)
                {
                    Lines.Add((tone, cents));
                }
            }
        }

        // Notes of a pattern's own letters may lie outside the scale's list; they get their line too.
        foreach (var pitch in section.Pitches)
        {
            if (!Lines.Exists(l => l.Tone == pitch.Tone))
            {
                Lines.Add((pitch.Tone, pitch.Cents));
            }
        }

        Lines.Sort((a, b) => (a.Cents, a.Tone).CompareTo((b.Cents, b.Tone)));
    }

    public double Low { get; }

    public double High { get; }

    /// <summary>The singer's comfortable range.</summary>
    public (double Low, double High)? Band { get; }

    public List<(ScaleTone Tone, double Cents)> Lines { get; } = [];

    /// <summary>A note of the keyboard, tuned to the tonic's A4, above the section's tonic.</summary>
    private static double CentsOf(Section section, NoteName note) => ((note.Midi - section.Tonic.Midi) * 100) - section.Tonic.OffsetCents;
}
