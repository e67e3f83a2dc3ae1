using System.Globalization;
using System.Text;
using System.Xml;

namespace Warmup.Sheets;

/// <summary>Draws shapes into an SVG document. Text is escaped by the XML writer; characters XML forbids are shown as '?'.</summary>
internal sealed class SvgCanvas : IDisposable
{
    private const string Namespace = "http://www.w3.org/2000/svg";

    private readonly XmlWriter _xml;

    public SvgCanvas(Stream destination, int width, int height, string paperWidth, string paperHeight)
    {
        _xml = XmlWriter.Create(destination, new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n", CloseOutput = false });
        _xml.WriteStartDocument();
        _xml.WriteStartElement("svg", Namespace);
        _xml.WriteAttributeString("width", paperWidth);
        _xml.WriteAttributeString("height", paperHeight);
        _xml.WriteAttributeString("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        _xml.WriteAttributeString("font-family", "'DejaVu Sans', 'Liberation Sans', Arial, sans-serif");
    }

    /// <summary>What a reader without eyes is told.</summary>
    public void Describe(string title, string description)
    {
        _xml.WriteAttributeString("role", "img");
        Element("title", title);
        Element("desc", description);
    }

    public void Rectangle(double x, double y, double width, double height, string fill, string? stroke = null, double radius = 0, string? dash = null)
    {
        _xml.WriteStartElement("rect", Namespace);
        Numbers(("x", x), ("y", y), ("width", width), ("height", height));
        if (radius > 0)
        {
            Numbers(("rx", radius));
        }

        _xml.WriteAttributeString("fill", fill);
        Stroke(stroke, 1.2, dash);
        _xml.WriteEndElement();
    }

    public void Line(double x1, double y1, double x2, double y2, string stroke, double width = 1, string? dash = null)
    {
        _xml.WriteStartElement("line", Namespace);
        Numbers(("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2));
        Stroke(stroke, width, dash);
        _xml.WriteEndElement();
    }

    public void Text(double x, double y, string text, double size, string fill, string anchor = "start", bool bold = false, double turn = 0)
    {
        _xml.WriteStartElement("text", Namespace);
        Numbers(("x", x), ("y", y), ("font-size", size));
        _xml.WriteAttributeString("fill", fill);
        if (anchor != "start")
        {
            _xml.WriteAttributeString("text-anchor", anchor);
        }

        if (bold)
        {
            _xml.WriteAttributeString("font-weight", "bold");
        }

        if (turn != 0)
        {
            _xml.WriteAttributeString("transform", $"rotate({Number(turn)} {Number(x)} {Number(y)})");
        }

        _xml.WriteString(Allowed(text));
        _xml.WriteEndElement();
    }

    public void Dispose()
    {
        _xml.WriteEndElement();
        _xml.WriteEndDocument();
        _xml.Dispose();
    }

    private static string Number(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private static string Allowed(string text) => string.Concat(text.EnumerateRunes().Select(r =>
        r.Value is >= 0x20 and not 0xFFFE and not 0xFFFF and not (>= 0x7F and <= 0x9F) ? r.ToString() : "?"));

    private void Element(string name, string text)
    {
        _xml.WriteStartElement(name, Namespace);
        _xml.WriteString(Allowed(text));
        _xml.WriteEndElement();
    }

    private void Numbers(params ReadOnlySpan<(string Name, double Value)> attributes)
    {
        foreach (var (name, value) in attributes)
        {
            _xml.WriteAttributeString(name, Number(value));
        }
    }

    private void Stroke(string? stroke, double width, string? dash)
    {
        if (stroke is null)
        {
            return;
        }

        _xml.WriteAttributeString("stroke", stroke);
        Numbers(("stroke-width", width));
        if (dash is not null)
        {
            _xml.WriteAttributeString("stroke-dasharray", dash);
        }
    }
}
