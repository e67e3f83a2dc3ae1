using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SkiaSharp;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>Reads drawn SVG documents back.</summary>
internal sealed partial class Drawn
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly XName Href = XName.Get("href", "http://www.w3.org/1999/xlink");

    private readonly Dictionary<string, SKRect> _ink;

    public Drawn(Score score, DrawingOptions? options = null)
        : this(Bytes(options is null ? new SvgFormat() : new SvgFormat(options), score))
    {
    }

    public Drawn(byte[] svg)
    {
        Root = XDocument.Parse(Encoding.UTF8.GetString(svg)).Root!;
        _ink = Root.Element(Svg + "defs")!.Elements().ToDictionary(
            p => "#" + p.Attribute("id")!.Value,
            p =>
            {
                using var path = SKPath.ParseSvgPathData(p.Attribute("d")!.Value);
                return path.TightBounds;
            });
    }

    public XElement Root { get; }

    public List<XElement> Pages => [.. Root.Elements(Svg + "g").Where(g => g.Attribute("class")!.Value == "page")];

    public static byte[] Bytes(IScoreFormat format, Score score)
    {
        using var stream = new MemoryStream();
        format.Write(score, stream);
        Assert.True(stream.CanWrite, "the stream is not closed");
        return stream.ToArray();
    }

    public List<XElement> Of(string kind) => [.. Pages.Elements().Where(e => e.Attribute("class")!.Value == kind)];

    public string[] Texts(string kind) => [.. Of(kind).Select(Title)];

    /// <summary>All texts of the document in order, with a space between.</summary>
    public string AllText => string.Join(' ', Root.Descendants(Svg + "g").Where(g => g.Element(Svg + "title") is not null).Select(Title));

    public static string Title(XElement text) => text.Element(Svg + "title")!.Value;

    public static (double X, double Y) Place(XElement text)
    {
        var numbers = Numbers().Matches(text.Attribute("transform")!.Value);
        return (double.Parse(numbers[0].Value, CultureInfo.InvariantCulture), double.Parse(numbers[1].Value, CultureInfo.InvariantCulture));
    }

    public static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The glyphs of a text from left to right, by the references to their outlines.</summary>
    public static string[] Glyphs(XElement text) => [.. text.Elements(Svg + "use").OrderBy(u => Place(u).X).Select(u => u.Attribute(Href)!.Value)];

    /// <summary>From where to where the ink of a text reaches on its page, sideways.</summary>
    public (double Left, double Right) Ink(XElement text)
    {
        var (x, _) = Place(text);
        var edges = text.Elements(Svg + "use").Select(u =>
        {
            var numbers = Numbers().Matches(u.Attribute("transform")!.Value).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)).ToArray();
            var ink = _ink[u.Attribute(Href)!.Value];
            return (Left: x + numbers[0] + (ink.Left * numbers[2]), Right: x + numbers[0] + (ink.Right * numbers[2]));
        }).ToList();
        return (edges.Min(e => e.Left), edges.Max(e => e.Right));
    }

    /// <summary>The middle of a text's ink, sideways.</summary>
    public double Middle(XElement text) => (Ink(text).Left + Ink(text).Right) / 2;

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Numbers();
}
