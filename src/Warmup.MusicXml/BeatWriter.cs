using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>Writes the part of the beat: a stroke for each akshara on one line, an accent on the first of each anga, and what the hand does.</summary>
internal sealed class BeatWriter(XmlByteWriter xml, MusicXmlOptions options, int number)
{
    private int _number;

    public void Write(Score score, CancellationToken cancellation)
    {
        var divisions = Divisions(score);
        Section? before = null;
        var length = Rational.Zero;
        xml.Raw("  <part id=\"P"u8).Number(number).Raw("\">\n"u8);
        foreach (var section in score.Sections)
        {
            var signature = FreeBars.Lengths(section, options.FreeBars);
            foreach (var measure in section.Measures)
            {
                cancellation.ThrowIfCancellationRequested();
                PartWriter.BeginMeasure(xml, ++_number, options);
                Attributes(section, signature(measure), before is null || before.Meter != section.Meter || length != signature(measure), divisions);
                Measure(section, measure, divisions);
                if (AngaLines.AreIn(section, measure))
                {
                    AngaLines.Close(xml, before is null ? default : ReferenceEquals(before, section) ? "regular"u8 : "light-light"u8, hasOwn: true);
                }

                xml.Raw("    </measure>\n"u8);
                (before, length) = (section, signature(measure));
            }
        }

        xml.Raw("  </part>\n"u8);
    }

    /// <summary>The divisions of a quarter in which each beat and each free bar is a whole number.</summary>
    public static int Divisions(Score score)
    {
        // The finest beat is a 32nd, and a free bar ends on a part of an akshara that is as fine.
        var divisions = 1;
        foreach (var section in score.Sections)
        {
            foreach (var measure in section.Measures)
            {
                var quarters = 4 * section.Meter.BeatValue;
                while (!(quarters * divisions).IsInteger || !(measure.Length * quarters * divisions).IsInteger)
                {
                    divisions = divisions <= MusicXmlFormat.MostDivisions / 2
                        ? divisions * 2
                        : throw new ExportException(string.Create(
                            CultureInfo.InvariantCulture, $"a measure of {measure.Length} aksharas is not a whole number of beats or of their halves, quarters and so on"));
                }
            }
        }

        return divisions;
    }

    private void Attributes(Section section, Rational signature, bool newTime, int divisions)
    {
        if (!newTime)
        {
            return;
        }

        xml.Raw("      <attributes>\n"u8);
        if (_number == 1)
        {
            xml.Raw("        <divisions>"u8).Number(divisions).Raw("</divisions>\n        <key>\n          <fifths>0</fifths>\n        </key>\n"u8);
        }

        var grid = TickGrid.Of(section);
        PartWriter.Time(xml, section.Meter, grid.Ticks(signature), grid);
        if (_number == 1)
        {
            xml.Raw(
                """
                        <clef>
                          <sign>percussion</sign>
                        </clef>
                        <staff-details>
                          <staff-lines>1</staff-lines>
                        </staff-details>

                """u8);
        }

        xml.Raw("      </attributes>\n"u8);
    }

    private void Measure(Section section, Measure measure, int divisions)
    {
        var meter = section.Meter;
        var beat = (4 * meter.BeatValue * divisions).Numerator;
        if (meter.IsFree)
        {
            xml.Raw("      <note>\n        <rest measure=\"yes\"/>\n        <duration>"u8).Number((measure.Length * beat).Numerator)
                .Raw("</duration>\n        <voice>1</voice>\n        <type>whole</type>\n      </note>\n"u8);
            return;
        }

        var first = measure.Onset.Floor();
        var end = first + measure.Length.Floor();
        var endsAnga = meter.AccentOf(first) != BeatAccent.None;
        for (var b = first; b < end; b++)
        {
            var beginsAnga = endsAnga;
            if (beginsAnga && b > first && AngaLines.IsTala(meter))
            {
                AngaLines.Write(xml);
            }

            endsAnga = meter.AccentOf(b + 1) != BeatAccent.None;
            xml.Raw("      <note>\n        <unpitched>\n          <display-step>E</display-step>\n          <display-octave>4</display-octave>\n        </unpitched>\n        <duration>"u8)
                .Number(beat).Raw("</duration>\n        <instrument id=\"P"u8)
                .Number(number).Raw("-I1\"/>\n        <voice>1</voice>\n        <type>"u8)
                .Raw(NoteWriter.TypeName(int.Log2(meter.BeatType))).Raw("</type>\n"u8).Raw(meter.IsCompound ? "        <dot/>\n"u8 : ""u8)
                .Raw("        <notehead>x</notehead>\n"u8);
            Beams(int.Log2(meter.BeatType) - 2, beginsAnga, endsAnga);
            xml.Raw(beginsAnga ? "        <notations>\n          <articulations>\n            <accent/>\n          </articulations>\n        </notations>\n"u8 : ""u8);
            if (options.Beat == MusicXmlBeat.Gestures)
            {
                xml.Raw("        <lyric number=\"1\">\n          <syllabic>single</syllabic>\n          <text>"u8).Text(Word(meter, b))
                    .Raw("</text>\n        </lyric>\n"u8);
            }

            xml.Raw("      </note>\n"u8);
        }
    }

    private void Beams(int levels, bool beginsAnga, bool endsAnga)
    {
        for (var level = 1; level <= levels && !(beginsAnga && endsAnga); level++)
        {
            xml.Raw("        <beam number=\""u8).Number(level).Raw("\">"u8)
                .Raw(beginsAnga ? "begin"u8 : endsAnga ? "end"u8 : "continue"u8).Raw("</beam>\n"u8);
        }
    }

    /// <summary>What the hand does; where the meter has no gestures, the number of the beat in its avartana.</summary>
    private static string Word(Meter meter, long beat) => meter.KriyaOf(beat) is { } kriya
        ? KriyaWords.Of(kriya, silent: "-")
        : ((beat % meter.Beats) + 1).ToString(CultureInfo.InvariantCulture);
}
