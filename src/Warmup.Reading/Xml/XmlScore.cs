using System.Globalization;
using System.Xml;

namespace Warmup.Reading;

/// <summary>Reads MusicXML, part by part or measure by measure, of any version.</summary>
internal sealed class XmlScore
{
    private readonly RawPiece _piece = new() { Format = "MusicXML" };
    private readonly Dictionary<string, XmlPart> _parts = new(StringComparer.Ordinal);
    private readonly List<XmlPart> _order = [];
    private readonly CancellationToken _cancellation;
    private string _title = string.Empty;
    private int _notes;

    private XmlScore(CancellationToken cancellation) => _cancellation = cancellation;

    public static RawPiece Read(MemoryStream stream, CancellationToken cancellation)
    {
        var score = new XmlScore(cancellation);
        using var xml = XmlCursor.Open(stream);
        var cursor = new XmlCursor(xml);
        try
        {
            cursor.MoveToRoot();
            score.Root(cursor);
        }
        catch (XmlException broken)
        {
            throw new ReadingException(Words(broken), new PiecePlace(PlaceKind.TextLine, Math.Max(1, broken.LineNumber), Math.Max(1, broken.LinePosition)), broken);
        }
        catch (Exception encoding) when (encoding is System.Text.DecoderFallbackException or ArgumentException or OverflowException)
        {
            throw new ReadingException(encoding is OverflowException ? "a time is too long or too finely divided" : "the text is not in the encoding that it names", cursor.Place, encoding);
        }

        return score.ToPiece();
    }

    private static string Words(XmlException broken) => broken.Message.Contains("MaxCharacters", StringComparison.Ordinal)
        ? string.Create(CultureInfo.InvariantCulture, $"the document is longer than {ReadingLimits.Bytes} characters")
        : $"this is no well-formed XML: {OneLine.Of(broken.Message)}";

    private void Root(XmlCursor xml)
    {
        var byMeasure = xml.Name == "score-timewise";
        if (!byMeasure && xml.Name != "score-partwise")
        {
            throw xml.Error($"the root is <{OneLine.Cut(xml.Name, 40)}>; a MusicXML file has <score-partwise> or <score-timewise>");
        }

        xml.Children((Score: this, ByMeasure: byMeasure), static (x, s) => s.Score.Child(x, s.ByMeasure));
    }

    private void Child(XmlCursor xml, bool byMeasure)
    {
        switch (xml.Name)
        {
            case "work":
                xml.Children(this, static (x, s) => s.Title(x, "work-title"));
                break;
            case "movement-title":
                Title(xml, "movement-title");
                break;
            case "identification":
                xml.Children(this, static (x, s) => s.Identification(x));
                break;
            case "part-list":
                xml.Children(this, static (x, s) => s.ListedPart(x));
                break;
            case "part" when !byMeasure:
                var part = Part(xml);
                xml.Children((this, part), static (x, s) => s.Item1.Measure(x, s.part));
                break;
            case "measure" when byMeasure:
                xml.Children(this, static (x, s) =>
                {
                    if (x.Name == "part")
                    {
                        s.Contents(x, s.Part(x), false);
                    }
                });
                break;
            default:
                break;
        }
    }

    private void Title(XmlCursor xml, string name)
    {
        if (xml.Name == name && _title.Length == 0)
        {
            _title = PlainText.Of(xml.Text());
        }
    }

    private void Identification(XmlCursor xml)
    {
        if (xml.Name == "encoding")
        {
            xml.Children(this, static (x, s) =>
            {
                if (x.Name == "software" && !s._piece.IsOurs)
                {
                    s._piece.IsOurs = x.Text() == "Warmup";
                }
            });
        }
        else if (xml.Name == "miscellaneous")
        {
            xml.Children(this, static (x, s) => s.Field(x));
        }
    }

    private void Field(XmlCursor xml)
    {
        const string Offset = "tonic-offset-cents-";
        var name = xml.Attribute("name") ?? string.Empty;
        if (name == "title")
        {
            _title = PlainText.Of(xml.Text());
        }
        else if (name.StartsWith(Offset, StringComparison.Ordinal) && int.TryParse(name.AsSpan(Offset.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var section))
        {
            _piece.TonicOffsets[section] = (double)xml.Number(-100, 100);
        }
    }

    private void ListedPart(XmlCursor xml)
    {
        if (xml.Name == "score-part")
        {
            var part = Part(xml);
            xml.Children(part, static (x, p) =>
            {
                if (x.Name == "part-name")
                {
                    p.Part.Name = PlainText.Of(x.Text());
                }
            });
        }
    }

    private XmlPart Part(XmlCursor xml)
    {
        var id = xml.Attribute("id") ?? throw xml.Error("a part has no id");
        if (_parts.TryGetValue(id, out var known))
        {
            return known;
        }

        if (_parts.Count >= ReadingLimits.Parts)
        {
            throw xml.Error(string.Create(CultureInfo.InvariantCulture, $"there are more than {ReadingLimits.Parts} parts"));
        }

        var part = new XmlPart(_piece);
        part.Part.Name = PlainText.Of(id);
        _parts.Add(id, part);
        _order.Add(part);
        return part;
    }

    private void Measure(XmlCursor xml, XmlPart part)
    {
        if (xml.Name == "measure")
        {
            Contents(xml, part, xml.Attribute("implicit") == "yes");
        }
    }

    private void Contents(XmlCursor xml, XmlPart part, bool isImplicit)
    {
        _cancellation.ThrowIfCancellationRequested();
        part.BeginMeasure(xml);
        xml.Children(part, static (x, p) => p.Child(x));
        _notes += part.EndMeasure(isImplicit);
        if (_notes > ReadingLimits.Notes)
        {
            throw xml.Error(string.Create(CultureInfo.InvariantCulture, $"there are more than {ReadingLimits.Notes} notes"));
        }
    }

    private RawPiece ToPiece()
    {
        _piece.Title = _title;
        foreach (var part in _order)
        {
            _piece.Parts.Add(part.Finish());
        }

        _piece.Tempi.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        _piece.Keys.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        _piece.Meters.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        return _piece;
    }
}
