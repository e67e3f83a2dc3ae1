using System.Globalization;

namespace Warmup.Drawing;

/// <summary>Puts a form on pages of A4 in portrait: the steps, the cautions and the table.</summary>
internal sealed class FormDrawing(PrintedForm form, TextShaper shaper)
{
    private const double Size = 8.2;
    private const double Number = 16;
    private const double RowHeight = 20;

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

        Table();
        const string note = "These numbers help with planning. They are no diagnosis; the teacher's ear and a doctor's word overrule them.";
        _composer.Feet(form.Title, note);
        return new PageSet(form.Title, $"A form to fill in. {note}", _composer.Pages);
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

        // The first column has two parts of the width, each other one.
        var part = (_composer.Right - _composer.Left) / (form.Columns.Count + 1);
        double Edge(int column) => column == 0 ? _composer.Left : _composer.Left + (part * (column + 1));
        _composer.Need(40 + RowHeight);
        _composer.Y += 8;
        Headings(Edge);
        foreach (var row in form.Rows)
        {
            if (_composer.Need(RowHeight))
            {
                Headings(Edge);
            }

            _composer.Y += RowHeight;
            _composer.Add(new StrokeShape("row", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 0.5, PageComposer.Hair));
            for (var c = 0; c <= form.Columns.Count; c++)
            {
                var x = c == form.Columns.Count ? _composer.Right : Edge(c);
                _composer.Add(new StrokeShape("column", x, _composer.Y - RowHeight, x, _composer.Y, 0.5, PageComposer.Hair));
                if (c < row.Count && row[c].Length > 0)
                {
                    _composer.Put("cell", x + 4, _composer.Y - 6.5, _composer.Broken(row[c], 9, Edge(c + 1) - x - 8, 1)[0], 9);
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
