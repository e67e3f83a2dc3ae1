using System.Globalization;
using System.Text;
using System.Xml;

namespace Warmup.Drawing;

/// <summary>Writes pages as an SVG document. Every glyph is defined once and used where it stands.</summary>
internal static class SvgPages
{
    private const string Svg = "http://www.w3.org/2000/svg";
    private const string Link = "http://www.w3.org/1999/xlink";

    public static void Write(PageSet drawing, Faces faces, Stream destination, CancellationToken cancellation)
    {
        using var xml = XmlWriter.Create(
            destination, new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n", CloseOutput = false });
        var (width, height) = (drawing.Pages[0].Width, drawing.Pages[0].Height);
        xml.WriteStartDocument();
        xml.WriteStartElement("svg", Svg);
        xml.WriteAttributeString("xmlns", "xlink", null, Link);
        xml.WriteAttributeString("version", "1.1");
        xml.WriteAttributeString("width", $"{Number(width / 72 * 25.4)}mm");
        xml.WriteAttributeString("height", $"{Number(height * drawing.Pages.Count / 72 * 25.4)}mm");
        xml.WriteAttributeString("viewBox", $"0 0 {Number(width)} {Number(height * drawing.Pages.Count)}");
        xml.WriteElementString("title", Svg, Allowed(drawing.Title));
        xml.WriteElementString("desc", Svg, Allowed(drawing.Description));
        var drawn = Definitions(xml, drawing, faces);
        for (var p = 0; p < drawing.Pages.Count; p++)
        {
            cancellation.ThrowIfCancellationRequested();
            xml.WriteStartElement("g", Svg);
            xml.WriteAttributeString("class", "page");
            xml.WriteAttributeString("transform", $"translate(0 {Number(height * p)})");
            Box(xml, new BoxMark("paper", 0, 0, width, height, "#ffffff"));
            foreach (var mark in drawing.Pages[p].Marks)
            {
                Draw(xml, mark, faces, drawn);
            }

            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteEndDocument();
    }

    /// <summary>Defines all glyphs and returns those that have ink.</summary>
    private static HashSet<(int Font, ushort Glyph)> Definitions(XmlWriter xml, PageSet drawing, Faces faces)
    {
        var used = new SortedSet<(int Font, ushort Glyph)>(drawing.Pages
            .SelectMany(p => p.Marks.OfType<TextMark>())
            .SelectMany(t => t.Text.Glyphs)
            .Select(g => (g.Font, g.Glyph)));
        var drawn = new HashSet<(int Font, ushort Glyph)>();
        xml.WriteStartElement("defs", Svg);
        foreach (var (font, glyph) in used)
        {
            var outline = faces.Outline(font, glyph);
            if (outline.Length > 0)
            {
                xml.WriteStartElement("path", Svg);
                xml.WriteAttributeString("id", Faces.Id(font, glyph));
                xml.WriteAttributeString("d", outline);
                xml.WriteEndElement();
                drawn.Add((font, glyph));
            }
        }

        xml.WriteEndElement();
        return drawn;
    }

    private static void Draw(XmlWriter xml, Mark mark, Faces faces, HashSet<(int Font, ushort Glyph)> drawn)
    {
        switch (mark)
        {
            case TextMark text:
                Text(xml, text, faces, drawn);
                break;
            case BoxMark box:
                Box(xml, box);
                break;
            case StrokeMark stroke:
                xml.WriteStartElement("line", Svg);
                xml.WriteAttributeString("class", stroke.Kind);
                Numbers(xml, ("x1", stroke.X1), ("y1", stroke.Y1), ("x2", stroke.X2), ("y2", stroke.Y2), ("stroke-width", stroke.Width));
                xml.WriteAttributeString("stroke", stroke.Colour);
                if (stroke.Dash > 0)
                {
                    xml.WriteAttributeString("stroke-dasharray", $"{Number(stroke.Dash)} {Number(stroke.Dash)}");
                }

                xml.WriteEndElement();
                break;
            case DotMark dot:
                xml.WriteStartElement("circle", Svg);
                xml.WriteAttributeString("class", dot.Kind);
                Numbers(xml, ("cx", dot.X), ("cy", dot.Y), ("r", dot.Radius));
                xml.WriteAttributeString("fill", dot.Colour);
                xml.WriteEndElement();
                break;
        }
    }

    private static void Text(XmlWriter xml, TextMark mark, Faces faces, HashSet<(int Font, ushort Glyph)> drawn)
    {
        xml.WriteStartElement("g", Svg);
        xml.WriteAttributeString("class", mark.Kind);
        xml.WriteAttributeString("role", "img");
        xml.WriteAttributeString("fill", mark.Colour);
        xml.WriteAttributeString("transform", $"translate({Number(mark.X)} {Number(mark.Y)})");
        xml.WriteElementString("title", Svg, Allowed(mark.Text.Text));
        foreach (var glyph in mark.Text.Glyphs)
        {
            if (drawn.Contains((glyph.Font, glyph.Glyph)))
            {
                var scale = (mark.Size / faces.Units(glyph.Font)).ToString("0.######", CultureInfo.InvariantCulture);
                xml.WriteStartElement("use", Svg);
                xml.WriteAttributeString("xlink", "href", Link, "#" + Faces.Id(glyph.Font, glyph.Glyph));
                xml.WriteAttributeString("transform", $"translate({Number(glyph.X * mark.Size)} {Number(glyph.Y * mark.Size)}) scale({scale})");
                xml.WriteEndElement();
            }
        }

        xml.WriteEndElement();
    }

    private static void Box(XmlWriter xml, BoxMark box)
    {
        xml.WriteStartElement("rect", Svg);
        xml.WriteAttributeString("class", box.Kind);
        Numbers(xml, ("x", box.X), ("y", box.Y), ("width", box.Width), ("height", box.Height));
        xml.WriteAttributeString("fill", box.Colour);
        xml.WriteEndElement();
    }

    private static void Numbers(XmlWriter xml, params ReadOnlySpan<(string Name, double Value)> attributes)
    {
        foreach (var (name, value) in attributes)
        {
            xml.WriteAttributeString(name, Number(value));
        }
    }

    private static string Number(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>The text without what XML forbids.</summary>
    private static string Allowed(string text) => string.Concat(text.EnumerateRunes().Select(r =>
        r.Value is >= 0x20 and not 0xFFFE and not 0xFFFF and not (>= 0x7F and <= 0x9F) ? r.ToString() : "?"));
}
