using System.Globalization;

namespace Warmup.Drawing;

/// <summary>Puts a form on pages of A4 in portrait: the steps, the cautions, what was sung, and the table.</summary>
internal sealed class FormDrawing(PrintedForm form, TextShaper shaper)
{
    private const double Size = 8.2;
    private const double Number = 16;
    private const double RowHeight = 20;
    private const double CellLine = 10.5;
    private const int MostCellLines = 4;

    private readonly PageComposer _composer = new(shaper);

    public PageSet Draw()
    {
        _composer.Paragraph("title", form.Title, 15, most: 3);
        foreach (var part in form.Parts)
        {
            _composer.Need(44);
            _composer.Y += 5;
            _composer.Paragraph("part", part.Heading, 10.5, most: 2);
            for (var s = 0; s < part.Steps.Count; s++)
            {
                Step(s + 1, part.Steps[s]);
            }
        }

        _composer.Need(100);
        _composer.Y += 8;
        foreach (var caution in Cautions.All)
        {
            _composer.Paragraph("caution", $"{caution.Text} ({caution.Source})", 7.2);
        }

        if (!form.Sung.IsEmpty)
        {
            new SungDrawing(form.Sung, _composer).Draw();
        }

        Table();
        const string note = "These numbers help with planning. They are no diagnosis; the teacher's ear and a doctor's word overrule them.";
        _composer.Feet(form.Title, note);
        return new PageSet(form.Title, $"{(form.Sung.IsEmpty ? "A form to fill in." : "A report: notes that were to be sung as steps, over them what was sung, and a table.")} {note}", _composer.Pages);
    }

    private void Step(int number, string text)
    {
        _composer.Need(Size * 1.35);
        _composer.Put("number", _composer.Left, _composer.Y + (Size * 1.05), string.Create(CultureInfo.InvariantCulture, $"{number}."), Size, PageComposer.Soft);
        _composer.Paragraph("step", text, Size, indent: Number);
        _composer.Y += 1.5;
    }

    /// <summary>Draws the table; each page that it reaches has the headings.</summary>
    private void Table()
    {
        if (form.Rows.IsEmpty)
        {
            return;
        }

        // One column has two parts of the width, each other one.
        var part = (_composer.Right - _composer.Left) / (form.Columns.Count + 1);
        double Edge(int column) => _composer.Left + (part * (column > form.WideColumn ? column + 1 : column));
        _composer.Need(40 + RowHeight);
        _composer.Y += 8;
        Headings(Edge);
        foreach (var row in form.Rows)
        {
            var cells = row.Select((cell, c) => _composer.Broken(cell, 9, Edge(c + 1) - Edge(c) - 8, MostCellLines)).ToList();
            var height = RowHeight + (CellLine * (cells.Select(c => c.Count).Append(1).Max() - 1));
            if (_composer.Need(height))
            {
                Headings(Edge);
            }

            _composer.Y += height;
            _composer.Add(new StrokeShape("row", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 0.5, PageComposer.Hair));
            for (var c = 0; c <= form.Columns.Count; c++)
            {
                var x = c == form.Columns.Count ? _composer.Right : Edge(c);
                _composer.Add(new StrokeShape("column", x, _composer.Y - height, x, _composer.Y, 0.5, PageComposer.Hair));
                for (var l = 0; c < cells.Count && l < cells[c].Count; l++)
                {
                    _composer.Put("cell", x + 4, _composer.Y - height + RowHeight - 6.5 + (CellLine * l), cells[c][l], 9);
                }
            }
        }
    }

    private void Headings(Func<int, double> edge)
    {
        var headings = form.Columns.Select((c, i) => _composer.Broken(c, 7.5, edge(i + 1) - edge(i) - 6, 3)).ToList();
        var lines = headings.Max(h => h.Count);
        for (var l = 0; l < lines; l++)
        {
            _composer.Y += 10;
            for (var c = 0; c < headings.Count; c++)
            {
                var at = l - (lines - headings[c].Count);
                if (at >= 0)
                {
                    _composer.Put("heading", edge(c) + 4, _composer.Y - 2, headings[c][at], 7.5, PageComposer.Soft);
                }
            }
        }

        _composer.Y += 2;
        _composer.Add(new StrokeShape("row", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 0.8, PageComposer.Ink));
    }
}
