using System.Globalization;

namespace Warmup.Reading;

/// <summary>Reads a direction: words, rehearsal marks, tempi, hairpins.</summary>
internal sealed class XmlDirection(XmlPart part)
{
    private Rational _unit = Rational.One;
    private bool _isUnitRead;
    private Rational? _metronome;
    private bool _hasSound;

    public static void Read(XmlCursor xml, XmlPart part)
    {
        var direction = new XmlDirection(part);
        xml.Children(direction, static (x, d) => d.Child(x));
        if (direction._metronome is { } quarters && !direction._hasSound)
        {
            part.AddTempo(part.Now, quarters);
        }
    }

    /// <summary>Reads a sound element: its tempo, in quarter notes a minute.</summary>
    public static bool Sound(XmlCursor xml, XmlPart part, Rational onset)
    {
        if (xml.Attribute("dacapo") is not null || xml.Attribute("dalsegno") is not null || xml.Attribute("tocoda") is not null)
        {
            part.Remark(RemarkKind.Repeat, "jumps were not followed: what is written was read once", default);
        }

        if (xml.Attribute("tempo") is not { } text)
        {
            return false;
        }

        if (!decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var tempo) || tempo <= 0 || tempo > 100_000)
        {
            part.Remark(RemarkKind.Mended, $"a tempo of {TextError.Quote(text)} was left out: it must be above 0", default);
            return false;
        }

        if (!part.Piece.HasTempoAt(onset))
        {
            part.AddTempo(onset, NearFraction.Of((double)tempo));
        }

        return true;
    }

    private void Child(XmlCursor xml)
    {
        if (xml.Name == "direction-type")
        {
            xml.Children(this, static (x, d) => d.Type(x));
        }
        else if (xml.Name == "sound")
        {
            _hasSound |= Sound(xml, part, part.Now);
        }
    }

    private void Type(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "words":
                var isBoxed = xml.Attribute("enclosure") is "rectangle" or "square";
                var words = PlainText.Of(xml.Text());
                var isNumber = words.Length is > 0 and < 6 && words.AsSpan().IndexOfAnyExceptInRange('0', '9') < 0;
                part.Part.Marks.Add(new RawMark(part.Now, isBoxed && isNumber ? MarkKind.LineNumber : MarkKind.Words, words));
                break;
            case "rehearsal":
                part.Part.Marks.Add(new RawMark(part.Now, MarkKind.Rehearsal, PlainText.Of(xml.Text())));
                break;
            case "metronome":
                xml.Children(this, static (x, d) => d.Metronome(x));
                break;
            case "wedge":
                if (xml.Attribute("type") is ("crescendo" or "diminuendo") and var type)
                {
                    part.Hairpin(type);
                }

                break;
            case "segno" or "coda":
                part.Remark(RemarkKind.Repeat, "jumps were not followed: what is written was read once", default);
                break;
            default:
                break;
        }
    }

    private void Metronome(XmlCursor xml)
    {
        switch (xml.Name)
        {
            case "beat-unit":
                var unit = NoteValues.Quarters(xml.Text()) is { Sign: > 0 } value ? value : Rational.One;
                (_unit, _isUnitRead) = _isUnitRead ? (_unit, true) : (unit, true);
                break;
            case "beat-unit-dot":
                _unit *= new Rational(3, 2);
                break;
            case "per-minute":
                if (decimal.TryParse(xml.Text(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && number is > 0 and < 10_000)
                {
                    _metronome = NearFraction.Of((double)number) * _unit;
                }

                break;
            default:
                break;
        }
    }
}
