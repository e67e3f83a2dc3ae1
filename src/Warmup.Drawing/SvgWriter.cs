using System.Globalization;
using System.Text;
using System.Xml;

namespace Warmup.Drawing;

/// <summary>Writes an SVG document element by element. It escapes text, and shows characters that XML forbids as '?'.</summary>
internal sealed class SvgWriter : IDisposable
{
    private const string Svg = "http://www.w3.org/2000/svg";
    private const string Link = "http://www.w3.org/1999/xlink";

    private readonly XmlWriter _xml;
    private readonly int _digits;
    private readonly string _format;

    /// <summary>Begins the document and its root.</summary>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="digits">The digits after the point that numbers keep.</param>
    public SvgWriter(Stream destination, int digits)
    {
        _xml = XmlWriter.Create(destination, new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true, NewLineChars = "\n", CloseOutput = false });
        _digits = digits;
        _format = "0." + new string('#', digits);
        _xml.WriteStartDocument();
        Begin("svg");
    }

    /// <summary>Begins an element.</summary>
    public void Begin(string element, string? kind = null)
    {
        _xml.WriteStartElement(element, Svg);
        if (kind is not null)
        {
            Attribute("class", kind);
        }
    }

    public void End() => _xml.WriteEndElement();

    public void Attribute(string name, string value) => _xml.WriteAttributeString(name, value);

    public void Attributes(params ReadOnlySpan<(string Name, double Value)> attributes)
    {
        foreach (var (name, value) in attributes)
        {
            Attribute(name, Number(value));
        }
    }

    /// <summary>Declares that the document uses references.</summary>
    public void DeclareReferences() => _xml.WriteAttributeString("xmlns", "xlink", null, Link);

    /// <summary>A reference to an element of the document by its name.</summary>
    public void Reference(string id) => _xml.WriteAttributeString("xlink", "href", Link, "#" + id);

    /// <summary>Writes text into the element that has begun.</summary>
    public void Text(string text) => _xml.WriteString(Allowed(text));

    /// <summary>Writes an element that holds only text.</summary>
    public void Element(string element, string text)
    {
        Begin(element);
        Text(text);
        End();
    }

    /// <summary>A number as the document writes it.</summary>
    public string Number(double value) => Math.Round(value, _digits).ToString(_format, CultureInfo.InvariantCulture);

    /// <summary>Ends the root and the document.</summary>
    public void Dispose()
    {
        End();
        _xml.WriteEndDocument();
        _xml.Dispose();
    }

    private static string Allowed(string text) => string.Concat(text.EnumerateRunes().Select(r =>
        r.Value is >= 0x20 and not 0xFFFE and not 0xFFFF and not (>= 0x7F and <= 0x9F) ? r.ToString() : "?"));
}
