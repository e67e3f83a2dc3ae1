using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts the contour on pages of A4 in landscape.</summary>
internal sealed class ContourDrawing(Sheet sheet, PitchBand? band, TextShaper shaper, ContourStyle style)
{
    private const double LabelWidth = 40;
    private const double CentsWidth = 40;
    private const double NoteWidth = 4.2;
    private const double Heading = 22;

    // Three shades that differ most in lightness (about 8, 38 and 56 of 100), so that a photocopy and colour-blind eyes keep them apart; the lightest
    // still has a contrast of 3 to 1 against white and the band. Besides, each line has its number at its beginning.
    private static readonly string[] Shades = ["#101820", "#2a5d8f", "#b27d20"];
    private const string BandFill = "#e9ecef";
    private const string BandEdge = "#6b7278";

    private readonly PageComposer _composer = new(shaper, landscape: true) { HasCarets = sheet.HasCarets };

    private double PlotLeft => _composer.Left + LabelWidth;

    private double PlotRight => _composer.Right - CentsWidth;

    public PageSet Draw(CancellationToken cancellation)
    {
        var score = sheet.Score;
        _composer.Paragraph("title", score.Title, 17, most: 2);
        foreach (var section in score.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            Section(section, ReferenceEquals(section, score.Sections[^1]), cancellation);
        }

        Close();
        var raga = sheet.IsSolfege ? string.Empty : TextSheetFormat.NotTheRaga;
        _composer.Feet(score.Title, raga);
        return new PageSet(score.Title, $"A contour of the drill: pitch against time, the {(sheet.IsSolfege ? "notes of the scale" : "svaras")} as horizontal lines. {raga}".TrimEnd(), _composer.Pages);
    }

    private string TonicText(Section section) => sheet.Sections.First(s => ReferenceEquals(s.Section, section)).Header[0].Text;

    private void Section(Section section, bool isLast, CancellationToken cancellation)
    {
        var pitch = new ContourPitch(section, band);
        var time = new ContourTime(section, PlotRight - PlotLeft, style.ShortestNote);

        // A drill of one strip is drawn larger; of several, two or three should stand one above the other.
        var height = Math.Clamp((pitch.High - pitch.Low) / 100 * (time.Strips.Count == 1 ? 15 : style.Semitone), 80, 330);
        _composer.Need(height + Heading + 40);
        if (sheet.Sections.Count > 1)
        {
            _composer.Paragraph("section-title", section.Title, 12.5, most: 2);
        }

        _composer.Paragraph("head", string.Create(
            CultureInfo.InvariantCulture,
            $"{section.Scale.Name};  {TonicText(section)};  tuning {section.Tuning.Name};  {section.Meter}, {section.Tempo.ToDouble():0.###} {sheet.Sections[0].TimeNames.Beat}s a minute"), 9, PageComposer.Soft);
        if (pitch.Band is not null)
        {
            _composer.Paragraph("head", $"Grey band: the comfortable range of {band}{(band!.IsAssumed ? ", assumed and not measured" : string.Empty)}.", 9, PageComposer.Soft);
        }

        foreach (var strip in time.Strips)
        {
            cancellation.ThrowIfCancellationRequested();

            // The legend stands with the last strip.
            _composer.Need(height + Heading + (isLast && strip == time.Strips[^1] ? 6 + CloseHeight() : 0));
            var top = _composer.Y + 12;
            new ContourPlot(_composer, sheet, section, pitch, time, strip, (PlotLeft, top, PlotRight - PlotLeft, height)).Draw(Shades, (BandFill, BandEdge), NoteWidth);
            _composer.Y = top + height + Heading - 12;
        }

        _composer.Y += 6;
    }

    private string Legend =>
        "A thick stroke is a note, as long as it sounds and at its height; thin strokes join the notes of a line. Lines change their shade in turn and begin with their number. "
        + (sheet.Signs.HasBreaths ? "A gap with a v is a breath. " : string.Empty)
        + $"Horizontal lines are the scale's svaras as they are tuned, S the thickest, with their cents above S on the right where there is room; {(sheet.HasCarets ? "carets" : "dots")} on the "
        + $"letters are octaves. {(sheet.Signs.HasBars ? $"Upright lines are the beginnings of {sheet.Sections[0].TimeNames.Bar}s; below stand seconds" : "Below stand seconds")}; each strip has its own measure of them.";

    private double CloseHeight() => ((_composer.Broken(Legend, 8, _composer.Right - _composer.Left, 12).Count + _composer.Broken(sheet.CautionText, 8, _composer.Right - _composer.Left, 12).Count) * 10.8) + 12;

    private void Close()
    {
        _composer.Need(CloseHeight());
        _composer.Y += 4;
        _composer.Paragraph("legend", Legend, 8, PageComposer.Soft);
        _composer.Y += 4;
        _composer.Paragraph("caution", sheet.CautionText, 8);
    }
}
