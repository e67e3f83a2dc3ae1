using System.Globalization;

namespace Warmup.Drawing;

/// <summary>Writes pages as an SVG document. It defines each glyph once and uses it where it stands.</summary>
internal sealed class SvgPages : IDisposable
{
    private const int Digits = 3;

    private readonly SvgWriter _svg;
    private readonly Typefaces _typefaces;

    // The glyphs that have ink.
    private readonly HashSet<(int Font, ushort Glyph)> _drawn = [];

    private SvgPages(Stream destination, Typefaces typefaces)
    {
        _svg = new SvgWriter(destination, Digits);
        _typefaces = typefaces;
    }

    public static void Write(PageSet drawing, Typefaces typefaces, Stream destination, CancellationToken cancellation)
    {
        using var pages = new SvgPages(destination, typefaces);
        pages.Write(drawing, cancellation);
    }

    public void Dispose() => _svg.Dispose();

    private void Write(PageSet drawing, CancellationToken cancellation)
    {
        var (width, height) = (drawing.Pages[0].Width, drawing.Pages[0].Height);
        _svg.DeclareReferences();
        _svg.Attribute("version", "1.1");
        _svg.Attribute("width", $"{_svg.Number(width / 72 * 25.4)}mm");
        _svg.Attribute("height", $"{_svg.Number(height * drawing.Pages.Count / 72 * 25.4)}mm");
        _svg.Attribute("viewBox", $"0 0 {_svg.Number(width)} {_svg.Number(height * drawing.Pages.Count)}");
        _svg.Element("title", drawing.Title);
        _svg.Element("desc", drawing.Description);
        Define(drawing);
        for (var p = 0; p < drawing.Pages.Count; p++)
        {
            cancellation.ThrowIfCancellationRequested();
            _svg.Begin("g", "page");
            _svg.Attribute("transform", $"translate(0 {_svg.Number(height * p)})");
            Draw(new BoxShape("paper", 0, 0, width, height, "#ffffff"));
            foreach (var shape in drawing.Pages[p].Shapes)
            {
                Draw(shape);
            }

            _svg.End();
        }
    }

    /// <summary>Defines all glyphs that have ink.</summary>
    private void Define(PageSet drawing)
    {
        var used = new SortedSet<(int Font, ushort Glyph)>(drawing.Pages
            .SelectMany(p => p.Shapes.OfType<TextShape>())
            .SelectMany(t => t.Text.Glyphs)
            .Select(g => (g.Font, g.Glyph)));
        _svg.Begin("defs");
        foreach (var (font, glyph) in used)
        {
            var outline = _typefaces.Outline(font, glyph);
            if (outline.Length > 0)
            {
                _svg.Begin("path");
                _svg.Attribute("id", Typefaces.Id(font, glyph));
                _svg.Attribute("d", outline);
                _svg.End();
                _drawn.Add((font, glyph));
            }
        }

        _svg.End();
    }

    private void Draw(Shape shape)
    {
        switch (shape)
        {
            case TextShape text:
                Draw(text);
                break;
            case BoxShape box:
                _svg.Begin("rect", box.Kind);
                _svg.Attributes(("x", box.X), ("y", box.Y), ("width", box.Width), ("height", box.Height));
                _svg.Attribute("fill", box.Colour);
                _svg.End();
                break;
            case StrokeShape stroke:
                _svg.Begin("line", stroke.Kind);
                _svg.Attributes(("x1", stroke.X1), ("y1", stroke.Y1), ("x2", stroke.X2), ("y2", stroke.Y2), ("stroke-width", stroke.Width));
                Line(stroke.Colour, stroke.Dash);
                break;
            case CurveShape curve:
                _svg.Begin("polyline", curve.Kind);
                _svg.Attribute("points", string.Join(' ', curve.Points.Select(p => $"{_svg.Number(p.X)},{_svg.Number(p.Y)}")));
                _svg.Attributes(("stroke-width", curve.Width));
                _svg.Attribute("fill", "none");
                Line(curve.Colour, curve.Dash);
                break;
            case DotShape dot:
                _svg.Begin("circle", dot.Kind);
                _svg.Attributes(("cx", dot.X), ("cy", dot.Y), ("r", dot.Radius));
                _svg.Attribute("fill", dot.Colour);
                _svg.End();
                break;
        }
    }

    /// <summary>Ends a line with its colour and its dashes.</summary>
    private void Line(string colour, double dash)
    {
        _svg.Attribute("stroke", colour);
        if (dash > 0)
        {
            _svg.Attribute("stroke-dasharray", $"{_svg.Number(dash)} {_svg.Number(dash)}");
        }

        _svg.End();
    }

    private void Draw(TextShape text)
    {
        _svg.Begin("g", text.Kind);
        _svg.Attribute("role", "img");
        _svg.Attribute("fill", text.Colour);
        _svg.Attribute("transform", $"translate({_svg.Number(text.X)} {_svg.Number(text.Y)})");
        _svg.Element("title", text.Text.Text);
        foreach (var glyph in text.Text.Glyphs)
        {
            if (_drawn.Contains((glyph.Font, glyph.Glyph)))
            {
                var scale = (text.Size / _typefaces.Units(glyph.Font)).ToString("0.######", CultureInfo.InvariantCulture);
                _svg.Begin("use");
                _svg.Reference(Typefaces.Id(glyph.Font, glyph.Glyph));
                _svg.Attribute("transform", $"translate({_svg.Number(glyph.X * text.Size)} {_svg.Number(glyph.Y * text.Size)}) scale({scale})");
                _svg.End();
            }
        }

        _svg.End();
    }
}
