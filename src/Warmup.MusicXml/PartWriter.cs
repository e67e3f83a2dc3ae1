namespace Warmup.MusicXml;

/// <summary>Writes a part with pitches: the measures of all sections, with what changes between them.</summary>
internal sealed class PartWriter(XmlByteWriter xml, MusicXmlOptions options, int divisions, StaffPart part)
{
    private readonly Accidentals _accidentals = new();
    private KeySignature? _key;
    private Clef? _clef;
    private Meter? _meter;
    private Section? _section;
    private Rational _measureLength;
    private int _number;
    private bool _endsDouble;

    public void Write(Score score, CancellationToken cancellation)
    {
        xml.Raw("  <part id=\"P"u8).Number(part.Number).Raw("\">\n"u8);
        for (var i = 0; i < score.Sections.Count; i++)
        {
            Section(score, i, cancellation);
        }

        xml.Raw("  </part>\n"u8);
    }

    private void Section(Score score, int index, CancellationToken cancellation)
    {
        var section = score.Sections[index];
        var grid = TickGrid.Of(section);
        var key = KeySignature.Of(part.Written(section), options.Key);
        var clef = part.Clef(score, options.Clef);
        var write = part.Begin(xml, section, options, divisions, _accidentals);
        var signature = FreeBars.Lengths(section, options.FreeBars);
        var isFirstPart = part.Number == 1;
        for (var m = 0; m < section.Measures.Count; m++)
        {
            cancellation.ThrowIfCancellationRequested();
            var measure = section.Measures[m];
            BeginMeasure(xml, ++_number, options);
            if (isFirstPart && options.HasNewSystems && measure.IsLineStart && _number > 1)
            {
                xml.Raw("      <print new-system=\"yes\"/>\n"u8);
            }

            Attributes(section, key, clef, signature(measure), grid);
            if (m == 0 && isFirstPart)
            {
                Directions.Write(xml, score, index);
            }

            _accidentals.BeginMeasure();
            write(measure);
            var line = m < section.Measures.Count - 1
                ? EndsAvartana(section.Meter, measure) ? "light-light"u8 : "regular"u8
                : index < score.Sections.Count - 1 ? "light-light"u8 : "light-heavy"u8;
            var hasOwn = !line.SequenceEqual("regular"u8);
            if (AngaLines.AreIn(section, measure))
            {
                AngaLines.Close(xml, _number == 1 ? default : _endsDouble ? "light-light"u8 : "regular"u8, hasOwn);
            }

            if (hasOwn)
            {
                AngaLines.Line(xml, "right"u8, line);
            }

            _endsDouble = hasOwn;

            xml.Raw("    </measure>\n"u8);
        }
    }

    /// <summary>Whether a measure is an anga, and the last of its avartana.</summary>
    private static bool EndsAvartana(Meter meter, Measure measure) =>
        measure.Length < meter.Beats && meter.AccentOf((measure.Onset + measure.Length).Floor()) == BeatAccent.Avartana;

    /// <summary>Writes what differs from the measure before; in the first measure, everything.</summary>
    private void Attributes(Section section, KeySignature key, Clef clef, Rational length, TickGrid grid)
    {
        if (ReferenceEquals(section, _section) && length == _measureLength)
        {
            return;
        }

        _section = section;
        var newKey = _key != key;
        var newClef = _clef != clef;

        // The hidden time signature of a free bar follows its length; that of a tala stays.
        var newTime = section.Meter.IsFree
            ? _meter is not { IsFree: true } || length != _measureLength
            : _meter is null || _meter.IsFree || length != _measureLength
                || _meter.SignatureGroups != section.Meter.SignatureGroups || _meter.SignatureType != section.Meter.SignatureType;
        if (!newKey && !newClef && !newTime)
        {
            return;
        }

        xml.Raw("      <attributes>\n"u8);
        if (_number == 1)
        {
            xml.Raw("        <divisions>"u8).Number(divisions).Raw("</divisions>\n"u8);
        }

        if (newKey)
        {
            _accidentals.SetKey(key);
            key.Write(xml);
        }

        if (newTime)
        {
            Time(xml, section.Meter, grid.Ticks(length), grid);
        }

        if (newClef)
        {
            clef.Write(xml);
        }

        xml.Raw("      </attributes>\n"u8);
        (_key, _clef, _meter, _measureLength) = (key, clef, section.Meter, length);
    }

    /// <summary>Begins a measure; where lines have numbers, its own is not to be shown beside them.</summary>
    public static void BeginMeasure(XmlByteWriter xml, int number, MusicXmlOptions options) => xml.Raw("    <measure number=\""u8).Number(number)
        .Raw(options.LineMarks == MusicXmlLineMarks.Numbers ? "\" implicit=\"yes\">\n"u8 : "\">\n"u8);

    /// <summary>Writes the time signature of a measure: the meter's own, or the beats of an anga where the measure is one.</summary>
    public static void Time(XmlByteWriter xml, Meter meter, long length, TickGrid grid)
    {
        xml.Raw(meter.IsFree ? "        <time print-object=\"no\">\n          <beats>"u8 : "        <time>\n          <beats>"u8);
        var type = meter.SignatureType;
        if (meter.IsFree || length != meter.Beats * grid.Akshara)
        {
            // The beat where the bar is a whole number of them, otherwise eighths, sixteenths, and so on.
            while (length * type % grid.Whole != 0 && type < 1 << TickGrid.ShortestType)
            {
                type *= 2;
            }

            xml.Number(length * type / grid.Whole);
        }
        else if (AngaLines.IsTala(meter))
        {
            // The angas of a tala stand at the head and as dashed lines; with plus signs the digits of two editors touch.
            xml.Number(meter.Beats);
        }
        else
        {
            for (var i = 0; i < meter.SignatureGroups.Count; i++)
            {
                xml.Raw(i == 0 ? ""u8 : "+"u8).Number(meter.SignatureGroups[i]);
            }
        }

        xml.Raw("</beats>\n          <beat-type>"u8).Number(type).Raw("</beat-type>\n        </time>\n"u8);
    }
}
