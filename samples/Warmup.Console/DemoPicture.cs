using System.Globalization;
using System.Text;

namespace Warmup.Cli;

/// <summary>A small picture of a drill for the demo's index: a stroke for each note, as high as it sounds, on a line for each S.</summary>
internal static class DemoPicture
{
    private const double Width = 240;
    private const double Height = 90;
    private const double Edge = 6;

    /// <summary>The picture as SVG that stands in a page.</summary>
    public static string Of(Score score)
    {
        var section = score.Sections[0];
        var notes = section.Notes.Select(n => (From: n.Onset.ToDouble(), To: n.End.ToDouble(), Pitch: Math.Log2(section.PitchOf(n).Hz))).ToList();
        var (low, high, end) = (notes.Min(n => n.Pitch), notes.Max(n => n.Pitch), notes.Max(n => n.To));
        double X(double time) => Edge + (time / end * (Width - (2 * Edge)));
        double Y(double pitch) => Height - Edge - ((pitch - low) / Math.Max(high - low, 0.1) * (Height - (2 * Edge)));
        var picture = new StringBuilder();
        picture.Append(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 0 {Width} {Height}\" role=\"img\" aria-label=\"The drill's notes over time\">");
        for (var tonic = Math.Log2(section.Tonic.Hz) - 2; tonic <= high + 0.01; tonic++)
        {
            if (tonic >= low - 0.01)
            {
                picture.Append(CultureInfo.InvariantCulture, $"<path class=\"tonic\" d=\"M0 {Y(tonic):0.#}H{Width}\"/>");
            }
        }

        picture.Append("<path class=\"note\" d=\"");
        foreach (var (from, to, pitch) in notes)
        {
            picture.Append(CultureInfo.InvariantCulture, $"M{X(from):0.#} {Y(pitch):0.#}H{Math.Max(X(from) + 0.5, X(to) - 1):0.#}");
        }

        return picture.Append("\"/></svg>").ToString();
    }
}
