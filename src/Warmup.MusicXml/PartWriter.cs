namespace Warmup.MusicXml;

/// <summary>Writes a part with pitches: the measures of all sections, with what changes between them.</summary>
internal sealed class PartWriter(XmlByteWriter xml, MusicXmlOptions options, int divisions, StaffPart part)
{
    private readonly Accidentals _accidentals = new();
    private KeySignature? _key;
    private Clef? _clef;
    private Meter? _meter;
    private Rational _measureLength;
    private int _number;

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
        var clef = part.Clef(section, options.Clef);
        var write = part.Begin(xml, section, options, divisions, _accidentals);
        var signature = FreeBars.Lengths(section, options.FreeBars);
        var isFirstPart = part.Number == 1;
        for (var m = 0; m < section.Measures.Count; m++)
        {
            cancellation.ThrowIfCancellationRequested();
            var measure = section.Measures[m];
            xml.Raw("    <measure number=\""u8).Number(++_number).Raw("\">\n"u8);
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
            if (m == section.Measures.Count - 1)
            {
                NextClef(score, index);
                xml.Raw("      <barline location=\"right\">\n        <bar-style>"u8)
                    .Raw(index == score.Sections.Count - 1 ? "light-heavy"u8 : "light-light"u8)
                    .Raw("</bar-style>\n      </barline>\n"u8);
            }
            else if (EndsAvartana(section.Meter, measure))
            {
                xml.Raw("      <barline location=\"right\">\n        <bar-style>light-light</bar-style>\n      </barline>\n"u8);
            }

            xml.Raw("    </measure>\n"u8);
        }
    }

    /// <summary>Whether a measure is an anga, and the last of its avartana.</summary>
    private static bool EndsAvartana(Meter meter, Measure measure) =>
        measure.Length < meter.Beats && meter.AccentOf((measure.Onset + measure.Length).Floor()) == BeatAccent.Avartana;

    /// <summary>
    /// Writes a change of clef before the bar line, as engravers do: after the bar line, one editor shows the old clef first.
    /// </summary>
    private void NextClef(Score score, int index)
    {
        if (index + 1 < score.Sections.Count && part.Clef(score.Sections[index + 1], options.Clef) is var clef && clef != _clef)
        {
            xml.Raw("      <attributes>\n"u8);
            clef.Write(xml);
            xml.Raw("      </attributes>\n"u8);
            _clef = clef;
        }
    }

    /// <summary>Writes what differs from the measure before; in the first measure, everything.</summary>
    private void Attributes(Section section, KeySignature key, Clef clef, Rational length, TickGrid grid)
    {
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
