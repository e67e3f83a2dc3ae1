using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// The contour picture: pitch against time, the scale's svaras as lines at their tuned height, the lines of the drill in three shades in turn, breaths as
/// gaps, and a comfortable range as a band.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record ContourOptions : DrawingOptions
{
    /// <summary>The comfortable range that is drawn as a band, with whose it is; <see langword="null"/>, the default, for none.</summary>
    public PitchBand? Band { get; init; }

    /// <summary>
    /// The labels of the svaras' lines, without octave dots. <see langword="null"/>, the default, takes what the score sings where that is svara letters in a
    /// script, solfa or numbers, and Latin svara letters otherwise.
    /// </summary>
    public Syllables? Letters { get; init; }

    internal override string Subject => "contour";

    internal override PageSet Draw(Score score, TextShaper shaper, CancellationToken cancellation)
    {
        var sheet = Sheet.Of(score, Letters, cancellation);
        PageSet? first = null;
        foreach (var style in ContourStyle.All)
        {
            var pages = new ContourDrawing(sheet, Band, shaper, style).Draw(cancellation);
            if (pages.Pages.Count <= ContourStyle.MostPages)
            {
                return pages;
            }

            first ??= pages;
        }

        return first!;
    }
}
