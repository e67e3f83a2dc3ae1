namespace Warmup.Drawing;

/// <summary>The heights of a section's contour, in cents above the middle tonic: the span that is drawn, and the tones that have a line.</summary>
internal sealed class ContourPitch
{
    // The project's own settings, in cents: the room beyond the outermost note, and how far the band may widen the picture.
    private const double Room = 90;
    private const double Widening = 500;

    public ContourPitch(Section section, PitchBand? band)
    {
        var (low, high) = (section.Pitches[0].Cents, section.Pitches[0].Cents);
        foreach (var pitch in section.Pitches)
        {
            (low, high) = (Math.Min(low, pitch.Cents), Math.Max(high, pitch.Cents));
        }

        if (band is not null)
        {
            Band = (section.CentsOf(band.Low), section.CentsOf(band.High));
            var (least, most) = (low - Widening, high + Widening);
            (low, high) = (Math.Max(least, Math.Min(low, Band.Value.Low)), Math.Min(most, Math.Max(high, Band.Value.High)));
        }

        (Low, High) = (low - Room, high + Room);
        Lines = section.TonesBetween(Low, High);
    }

    public double Low { get; }

    public double High { get; }

    /// <summary>The ends of the band.</summary>
    public (double Low, double High)? Band { get; }

    /// <summary>The tones that have a line, from the lowest.</summary>
    public ValueList<(ScaleTone Tone, double Cents)> Lines { get; }
}
