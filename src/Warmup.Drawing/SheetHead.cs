using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>What stands above the lines of a section: the scale, the tonic, the time and so on, in one column or in two.</summary>
internal sealed class SheetHead(PageComposer composer, bool isClose)
{
    private const double Label = 62;
    private const double ColumnGap = 14;
    private const double ToneSize = 12.5;

    private double _left;
    private double _right;

    /// <summary>Draws the head of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="before">The section before, whose scale and rows are not said again; none for the first.</param>
    public void Draw(SheetSection section, SheetSection? before)
    {
        var rows = section.Header.Where(row => before?.Header.Contains(row) != true).ToList();
        var parts = new List<Action>();
        if (before?.Section.Scale != section.Section.Scale || !section.Ascent.Equals(before.Ascent))
        {
            parts.Add(() => Row("Scale", section.Section.Scale.Name));
            parts.Add(() => Tones("up", section.ListNames.Ascent, section.Ascent));
            parts.Add(() => Tones("down", section.ListNames.Descent, section.Descent));
        }

        parts.AddRange(rows.Select(row => (Action)(() => Row(row.Label, row.Text))));
        var (top, lowest) = (composer.Y, composer.Y);
        var columns = isClose && parts.Count > 3 ? 2 : 1;
        var width = (composer.Right - composer.Left - ((columns - 1) * ColumnGap)) / columns;
        foreach (var column in parts.Chunk(Math.Max(1, (parts.Count + columns - 1) / columns)).Select((parts, index) => (Parts: parts, Index: index)))
        {
            (_left, _right) = (composer.Left + (column.Index * (width + ColumnGap)), composer.Left + (column.Index * (width + ColumnGap)) + width);
            composer.Y = top;
            foreach (var part in column.Parts)
            {
                part();
            }

            lowest = Math.Max(lowest, composer.Y);
        }

        composer.Y = lowest + (isClose ? 4 : 8);
    }

    private void Row(string label, string text)
    {
        var lines = composer.Broken(text, 9.5, _right - _left - Label, 12);
        for (var l = 0; l < lines.Count; l++)
        {
            composer.Y += 13.5;
            if (l == 0)
            {
                composer.Put("label", _left, composer.Y - 3, label, 8.5, PageComposer.Soft);
            }

            composer.Put("head", _left + Label, composer.Y - 3, lines[l], 9.5);
        }
    }

    private void Tones(string mark, string label, ValueList<SheetTone> tones)
    {
        // Closer where the tones would not fit their column.
        var widths = tones.ConvertAll(t => composer.Shaper.Width(t.Letter, ToneSize) + (t.Variant.Length > 0 ? PageComposer.VariantWidth(composer.Shaper, t) * ToneSize : 0));
        var gap = Math.Clamp((_right - _left - Label - widths.Sum()) / Math.Max(1, tones.Count - 1), 5, 13);
        composer.Y += 21;
        composer.Put("label", _left + 8, composer.Y - 6, label, 8.5, PageComposer.Soft);
        var x = _left + Label;
        for (var t = 0; t < tones.Count; t++)
        {
            if (x + widths[t] > _right + 0.01)
            {
                composer.Y += 21;
                x = _left + Label;
            }

            x += composer.Tone($"scale-{mark}", x, composer.Y - 6, tones[t], ToneSize) + gap;
        }
    }
}
