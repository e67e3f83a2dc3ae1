using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts the contour on pages of A4, across.</summary>
internal sealed class ContourDrawing(Score score, SungLetters letters, Singer? singer, TextShaper shaper)
{
    private const double LabelWidth = 40;
    private const double CentsWidth = 40;
    private const double NoteWidth = 4.2;
    private const double Heading = 22;

    // Three shades that differ in lightness first (about 8, 38 and 56 of 100), so that a photocopy and colour-blind eyes keep them
    // apart; the lightest is still three times as dark as white or the band. The number at its beginning names each line besides.
    private static readonly string[] Shades = ["#101820", "#2a5d8f", "#b27d20"];
    private const string Band = "#e9ecef";
    private const string BandEdge = "#6b7278";

    private readonly Flow _flow = new(shaper, landscape: true);

    private double PlotLeft => _flow.Left + LabelWidth;

    private double PlotRight => _flow.Right - CentsWidth;

    public PageSet Draw(CancellationToken cancellation)
    {
        _flow.Paragraph("title", score.Title, 17, most: 2);
        foreach (var section in score.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            Section(section, cancellation);
        }

        Close();
        _flow.Feet(score.Title, TextSheetFormat.NotTheRaga);
        return new PageSet(score.Title, $"A contour of the drill: pitch against time, the svaras as horizontal lines. {TextSheetFormat.NotTheRaga}", _flow.Pages);
    }

    private void Section(Section section, CancellationToken cancellation)
    {
        var pitch = new ContourPitch(section, singer);
        var time = new ContourTime(section, PlotRight - PlotLeft);

        // A drill of one strip is drawn larger; of several, two should stand one above the other.
        var height = Math.Clamp((pitch.High - pitch.Low) / 100 * (time.Strips.Count == 1 ? 15 : 10), 100, 330);
        _flow.Need(height + Heading + 40);
        if (score.Sections.Count > 1)
        {
            _flow.Paragraph("section-title", section.Title, 12.5, most: 2);
        }

        _flow.Paragraph("head", string.Create(
            CultureInfo.InvariantCulture,
            $"{section.Scale.Name};  S = {section.TonicName} (kattai {section.Tonic.KattaiNumber}, {section.Tonic.Hz:0.00} Hz);  tuning {section.Tuning.Name};  {section.Meter}, {section.Tempo.ToDouble():0.###} aksharas a minute"), 9, Flow.Soft);
        if (pitch.Band is not null)
        {
            _flow.Paragraph("head", $"Grey band: the comfortable range of {singer}{(singer!.IsRangeAssumed ? ", assumed and not measured" : string.Empty)}.", 9, Flow.Soft);
        }

        foreach (var strip in time.Strips)
        {
            cancellation.ThrowIfCancellationRequested();
            _flow.Need(height + Heading);
            var top = _flow.Y + 12;
            new ContourPlot(_flow, section, pitch, letters, time, strip, (PlotLeft, top, PlotRight - PlotLeft, height)).Draw(Shades, (Band, BandEdge), NoteWidth);
            _flow.Y = top + height + Heading - 12;
        }

        _flow.Y += 6;
    }

    private void Close()
    {
        _flow.Y += 4;
        _flow.Paragraph(
            "legend",
            "A thick stroke is a note, as long as it sounds and at its height; thin strokes join the notes of a line. Lines change their shade in turn and begin with their number. A gap with a "
            + "v is a breath. Horizontal lines are the scale's svaras as they are tuned, S the thickest, with their cents above S on the right; dots on the letters are octaves. Upright lines are the "
            + "beginnings of avartanas, or of bars; below stand seconds.",
            8,
            Flow.Soft);
        var text = string.Join(' ', ((IEnumerable<Caution>)Cautions.All).Select(c => $"{c.Text} ({c.Source})"));
        var lines = _flow.Broken(text, 8, _flow.Right - _flow.Left, 12);
        _flow.Need((lines.Count * 10.8) + 4);
        _flow.Y += 4;
        _flow.Paragraph("caution", text, 8);
    }
}
