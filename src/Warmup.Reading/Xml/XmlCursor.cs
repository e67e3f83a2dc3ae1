using System.Globalization;
using System.Text;
using System.Xml;

namespace Warmup.Reading;

/// <summary>An XML reader that goes forward through elements, with bounds, and says where it is.</summary>
internal sealed class XmlCursor(XmlReader xml)
{
    private readonly StringBuilder _text = new();

    public string Name => xml.LocalName;

    public PiecePlace Place => xml is IXmlLineInfo { LineNumber: > 0 } at ? new PiecePlace(PlaceKind.TextLine, at.LineNumber, at.LinePosition) : default;

    /// <summary>A reader of untrusted bytes: no document type is resolved, no entity expanded.</summary>
    public static XmlReader Open(MemoryStream stream)
    {
        // Files that say UTF-16 and were saved as UTF-8 are found in the wild; with a reader of text what they say does not count.
        Span<byte> head = stackalloc byte[128];
        head = head[..stream.Read(head)];
        var mark = head.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0;
        stream.Position = mark;
        return head[mark..].StartsWith("<?xml"u8) && Encoding.Latin1.GetString(head).Contains("utf-16", StringComparison.OrdinalIgnoreCase)
            ? XmlReader.Create(new StreamReader(stream, new UTF8Encoding(false, true), false, 1 << 12, leaveOpen: true), Settings)
            : XmlReader.Create(stream, Settings);
    }

    private static XmlReaderSettings Settings { get; } = new()
    {
        DtdProcessing = DtdProcessing.Ignore,
        XmlResolver = null,
        MaxCharactersFromEntities = 1,
        MaxCharactersInDocument = ReadingLimits.Bytes,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        IgnoreWhitespace = true,
        CloseInput = false,
    };

    /// <summary>Goes to the root element.</summary>
    public void MoveToRoot()
    {
        if (xml.MoveToContent() != XmlNodeType.Element)
        {
            throw Error("there is no root element");
        }
    }

    public string? Attribute(string name) => xml.GetAttribute(name);

    /// <summary>
    /// Visits the children of the present element in order. <paramref name="visit"/> stands at each child and may read it to its end; what it leaves
    /// is skipped. Afterwards the cursor stands after the element.
    /// </summary>
    public void Children<T>(T state, Action<XmlCursor, T> visit)
    {
        if (xml.IsEmptyElement)
        {
            xml.Read();
            return;
        }

        var depth = xml.Depth;
        if (depth >= ReadingLimits.Depth)
        {
            throw Error(string.Create(CultureInfo.InvariantCulture, $"elements lie more than {ReadingLimits.Depth} deep in each other"));
        }

        xml.Read();
        while (xml.NodeType != XmlNodeType.EndElement || xml.Depth > depth)
        {
            if (xml.EOF)
            {
                throw Error("the file ends inside an element");
            }

            if (xml.NodeType == XmlNodeType.Element && xml.Depth == depth + 1)
            {
                _visited = false;
                visit(this, state);
                if (!_visited)
                {
                    Skip();
                }

                _visited = true;
            }
            else
            {
                xml.Read();
            }
        }

        xml.Read();
        _visited = true;
    }

    // Whether the element that a visitor was called for has been read to its end.
    private bool _visited;

    /// <summary>The text of the present element, and of no element in it; the cursor stands after it.</summary>
    public string Text()
    {
        _visited = true;
        if (xml.IsEmptyElement)
        {
            xml.Read();
            return string.Empty;
        }

        var depth = xml.Depth;
        var first = string.Empty;
        _text.Clear();
        while (xml.Read() && (xml.NodeType != XmlNodeType.EndElement || xml.Depth > depth))
        {
            if (xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace && xml.Depth == depth + 1)
            {
                if (first.Length == 0)
                {
                    first = xml.Value;
                }
                else
                {
                    _text.Append(xml.Value);
                }

                if (first.Length + _text.Length > ReadingLimits.Text)
                {
                    throw Error(string.Create(CultureInfo.InvariantCulture, $"a text has more than {ReadingLimits.Text} characters"));
                }
            }
            else if (xml.Depth > ReadingLimits.Depth)
            {
                throw Error(string.Create(CultureInfo.InvariantCulture, $"elements lie more than {ReadingLimits.Depth} deep in each other"));
            }
        }

        xml.Read();
        return _text.Length == 0 ? first : first + _text;
    }

    /// <summary>The present element's text as a number.</summary>
    public decimal Number(decimal low, decimal high)
    {
        var (name, place) = (Name, Place);
        var text = Text();
        return decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number >= low && number <= high
            ? number
            : throw new ReadingException(
                string.Create(CultureInfo.InvariantCulture, $"<{name}> must be a number from {low} to {high}, not {TextError.Quote(text)}"), place);
    }

    public int Integer(int low, int high) => Number(low, high) is var number && decimal.Truncate(number) == number
        ? (int)number
        : throw Error("a whole number is expected before this place");

    /// <summary>Passes the present element with all that it holds.</summary>
    public void Skip()
    {
        _visited = true;
        if (xml.IsEmptyElement)
        {
            xml.Read();
            return;
        }

        var depth = xml.Depth;
        while (xml.Read() && (xml.NodeType != XmlNodeType.EndElement || xml.Depth > depth))
        {
            if (xml.Depth > ReadingLimits.Depth)
            {
                throw Error(string.Create(CultureInfo.InvariantCulture, $"elements lie more than {ReadingLimits.Depth} deep in each other"));
            }
        }

        xml.Read();
    }

    public ReadingException Error(string message) => new(message, Place);
}
