using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts the student's sheet on pages of A4 in portrait.</summary>
internal sealed class SheetDrawing(Sheet key, TextShaper shaper, bool hidesNotes)
{
    private const double Label = 62;

    private readonly PageComposer _composer = new(shaper);
    private readonly Sheet _sheet = hidesNotes ? key.WithHiddenNotes() : key;

    public PageSet Draw(CancellationToken cancellation)
    {
        var title = _sheet.Score.Title;
        _composer.Paragraph("title", title, 19, most: 4);
        foreach (var section in _sheet.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            _composer.Need(180);
            _composer.Y += 6;
            if (_sheet.Sections.Count > 1)
            {
                _composer.Add(new StrokeShape("section", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 1, PageComposer.Ink));
                _composer.Y += 5;
                _composer.Paragraph("section-title", section.Section.Title, 13.5, most: 3);
            }

            Header(section);
            Blocks(section, cancellation);
        }

        Close();
        if (hidesNotes)
        {
            Key(cancellation);
        }

        var raga = _sheet.IsSolfege ? string.Empty : TextSheetFormat.NotTheRaga;
        _composer.Feet(title, raga);
        return new PageSet(title, $"A sheet to sing from: the lines in {(_sheet.IsSolfege ? "letters" : "svara letters")} under the {_sheet.Sections[0].TimeNames.Beat}s. {raga}".TrimEnd(), _composer.Pages);
    }

    private void Blocks(SheetSection section, CancellationToken cancellation)
    {
        foreach (var block in section.PrintedBlocks)
        {
            cancellation.ThrowIfCancellationRequested();
            if (section.PrintedBlocks.Count > 1 || block.Times > 1)
            {
                _composer.Need(64);
                _composer.Y += 4;
                _composer.Paragraph("run", block.Heading, 9, PageComposer.Soft);
            }

            new SheetLines(_composer, section.Section, block.Lines.ConvertAll(l => (l, l.Number.ToString(CultureInfo.InvariantCulture)))).Draw(cancellation);
        }
    }

    /// <summary>Writes the lines with their notes on a new page.</summary>
    private void Key(CancellationToken cancellation)
    {
        _composer.Need(_composer.Bottom);
        _composer.Paragraph("title", $"Key to {key.Score.Title}", 15, most: 4);
        foreach (var section in key.Sections)
        {
            if (key.Sections.Count > 1)
            {
                _composer.Need(64);
                _composer.Paragraph("section-title", section.Section.Title, 13.5, most: 3);
            }

            Blocks(section, cancellation);
        }
    }

    private void Header(SheetSection section)
    {
        Row("Scale", section.Section.Scale.Name);
        Tones("up", section.ListNames.Ascent, section.Ascent);
        Tones("down", section.ListNames.Descent, section.Descent);
        foreach (var (label, text) in section.Header)
        {
            Row(label, text);
        }

        _composer.Y += 8;
    }

    private void Row(string label, string text)
    {
        var lines = _composer.Broken(text, 9.5, _composer.Right - _composer.Left - Label, 12);
        for (var l = 0; l < lines.Count; l++)
        {
            _composer.Need(14);
            _composer.Y += 13.5;
            if (l == 0)
            {
                _composer.Put("label", _composer.Left, _composer.Y - 3, label, 8.5, PageComposer.Soft);
            }

            _composer.Put("head", _composer.Left + Label, _composer.Y - 3, lines[l], 9.5);
        }
    }

    private void Tones(string mark, string label, ValueList<SheetTone> tones)
    {
        const double size = 12.5;
        _composer.Need(22);
        _composer.Y += 21;
        _composer.Put("label", _composer.Left + 8, _composer.Y - 6, label, 8.5, PageComposer.Soft);
        var x = _composer.Left + Label;
        foreach (var tone in tones)
        {
            var width = shaper.Width(tone.Letter, size) + shaper.Width(tone.Variant, size * 0.62);
            if (x + width > _composer.Right)
            {
                _composer.Need(22);
                _composer.Y += 21;
                x = _composer.Left + Label;
            }

            x += _composer.Tone($"scale-{mark}", x, _composer.Y - 6, tone, size) + 13;
        }
    }

    /// <summary>Writes the legend, the findings and the cautions below the last line.</summary>
    private void Close()
    {
        _composer.Y += 10;
        var (beat, _, bar) = _sheet.Sections[0].TimeNames;
        var answers = _sheet.Score.Sections.Any(s => s.Lines.Any(l => l.HasAnswer));
        _composer.Paragraph(
            "legend",
            $"Signs:  {SheetSign.Hold} hold one more unit;  {SheetSign.Breath} (raised) breathe;  {SheetSign.Silence} one unit of silence;  a thin line ends a part of the {bar}, a double line the "
            + $"{bar};  a dot above a letter is the upper octave, a dot below the lower one; small numbers over the letters count the {beat}s, those before or under them the lines"
            + (_sheet.HasFasterSpeeds ? $";  one line over the letters of one {beat} is the second speed, two the third, three the fourth" : string.Empty)
            + (_sheet.VariantLegend is { Length: > 0 } variants ? $";  {variants}" : string.Empty)
            + (hidesNotes ? ";  _ a note to hear and write down, the key is on the last page" : string.Empty)
            + (answers ? ";  in a grey field the class answers." : "."),
            8,
            PageComposer.Soft);
        foreach (var finding in _sheet.Score.Findings)
        {
            _composer.Paragraph("finding", $"Note: {finding.Describe()}.", 8.5);
        }

        // The cautions stay together where a page has room for them.
        _composer.Need(130);
        _composer.Y += 6;
        foreach (var caution in _sheet.Score.Cautions)
        {
            _composer.Paragraph("caution", $"{caution.Text} ({caution.Source})", 8);
        }
    }
}
