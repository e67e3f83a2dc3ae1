using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts the student's sheet on pages of A4 in portrait.</summary>
internal sealed class SheetDrawing
{
    private readonly Sheet _key;
    private readonly Sheet _sheet;
    private readonly SheetStyle _style;
    private readonly PageComposer _composer;
    private readonly SheetClose _close;

    private SheetDrawing(Sheet key, Sheet sheet, TextShaper shaper, SheetStyle style)
    {
        (_key, _sheet, _style) = (key, sheet, style);
        _composer = new PageComposer(shaper) { HasCarets = sheet.HasCarets };
        var isDivided = sheet.Sections.Any(s => s.PrintedBlocks.Any(b => Lines(s, b).IsDivided));
        _close = new SheetClose(_composer, sheet, HidesNotes, isDivided);
    }

    private bool HidesNotes => !ReferenceEquals(_key, _sheet);

    /// <summary>Draws a sheet: closer where that saves a page.</summary>
    public static PageSet Draw(Sheet key, TextShaper shaper, bool hidesNotes, CancellationToken cancellation)
    {
        var sheet = hidesNotes ? key.WithHiddenNotes(cancellation) : key;
        var styles = SheetStyle.For(Letters(sheet, shaper, cancellation));
        var best = new SheetDrawing(key, sheet, shaper, styles[0]).Draw(cancellation);
        foreach (var style in styles.Skip(1))
        {
            if (best.Pages.Count == (hidesNotes ? 2 : 1))
            {
                return best;
            }

            var closer = new SheetDrawing(key, sheet, shaper, style).Draw(cancellation);
            best = closer.Pages.Count < best.Pages.Count ? closer : best;
        }

        return best;
    }

    /// <summary>One size for the letters of all rows: that of the block that needs the smallest.</summary>
    private static double Letters(Sheet sheet, TextShaper shaper, CancellationToken cancellation)
    {
        var composer = new PageComposer(shaper);
        var size = SheetLines.Size;
        foreach (var section in sheet.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            foreach (var block in section.PrintedBlocks)
            {
                size = Math.Min(size, SheetLines.SizeOf(shaper, section.Section, block.Lines, composer.Right - composer.Left));
            }
        }

        return size;
    }

    private PageSet Draw(CancellationToken cancellation)
    {
        var title = _sheet.Score.Title;
        _composer.Paragraph("title", title, _style.IsClose ? 15 : 19, most: _style.IsClose ? 2 : 4);
        var head = new SheetHead(_composer, _style.IsClose);
        for (var s = 0; s < _sheet.Sections.Count; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            var section = _sheet.Sections[s];
            if (s > 0)
            {
                _composer.Need(130);
            }

            _composer.Y += _style.IsClose ? 3 : 6;
            if (_sheet.Sections.Count > 1)
            {
                _composer.Add(new StrokeShape("section", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 1, PageComposer.Ink));
                _composer.Y += 5;
                _composer.Paragraph("section-title", section.Section.Title, _style.IsClose ? 11.5 : 13.5, most: 3);
            }

            head.Draw(section, s > 0 ? _sheet.Sections[s - 1] : null);
            Blocks(section, s == _sheet.Sections.Count - 1 ? _close.Height : 0, cancellation);
        }

        _close.Draw();
        if (HidesNotes)
        {
            Key(cancellation);
        }

        var raga = _sheet.IsSolfege ? string.Empty : TextSheetFormat.NotTheRaga;
        _composer.Feet(title, raga);
        return new PageSet(title, $"A sheet to sing from: the lines in {(_sheet.IsSolfege ? "letters" : "svara letters")} under the {_sheet.Sections[0].TimeNames.Beat}s. {raga}".TrimEnd(), _composer.Pages);
    }

    /// <summary>Draws the blocks of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="tail">The height of what must follow its last rows on the same page.</param>
    /// <param name="cancellation">Stops the work.</param>
    private void Blocks(SheetSection section, double tail, CancellationToken cancellation)
    {
        for (var b = 0; b < section.PrintedBlocks.Count; b++)
        {
            cancellation.ThrowIfCancellationRequested();
            var block = section.PrintedBlocks[b];
            if (section.PrintedBlocks.Count > 1 || block.Times > 1)
            {
                // A heading keeps its first two rows.
                _composer.Need(4 + (9 * 1.35) + 10 + (2 * _style.Leading * _style.Letters));
                _composer.Y += 4;
                _composer.Paragraph("run", block.Heading, 9, PageComposer.Soft);
            }

            Lines(section, block).Draw(b == section.PrintedBlocks.Count - 1 ? tail : 0, cancellation);
        }
    }

    private SheetLines Lines(SheetSection section, SheetBlock block) =>
        new(_composer, section.Section, block.Lines.ConvertAll(l => (l, l.Number.ToString(CultureInfo.InvariantCulture))), _style);

    /// <summary>Writes the lines with their notes on a new page.</summary>
    private void Key(CancellationToken cancellation)
    {
        _composer.Need(_composer.Bottom);
        _composer.Paragraph("title", $"Key to {_key.Score.Title}", 15, most: 4);
        foreach (var section in _key.Sections)
        {
            if (_key.Sections.Count > 1)
            {
                _composer.Need(64);
                _composer.Paragraph("section-title", section.Section.Title, 13.5, most: 3);
            }

            Blocks(section, 0, cancellation);
        }
    }
}
