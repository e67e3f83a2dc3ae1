using System.Globalization;
using System.Text;
using System.Xml;

namespace Warmup.TestSupport;

/// <summary>
/// Writes a document the plain way, with <see cref="XmlWriter"/> and from nothing but the public score: what the format's fast writer is
/// compared with, in bytes by the tests and in time by the benchmarks.
/// </summary>
/// <remarks>
/// It knows one kind of drill, that of the benchmark's job: one section, each note an eighth, each line in a measure of 4/4 that silence
/// fills, a tonic on the keyboard, and the format's default options. It follows the rules of notation, not the library's code: a mode is
/// looked up by its semitones, and a rest is the longest value that lies on its own grid.
/// </remarks>
public static class PlainMusicXml
{
    private const int EighthsAMeasure = 8;

    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
        CloseOutput = false,
    };

    public static void Write(Score score, Stream destination)
    {
        using var xml = XmlWriter.Create(destination, Settings);
        xml.WriteProcessingInstruction("xml", "version=\"1.0\" encoding=\"UTF-8\" standalone=\"no\"");
        xml.WriteDocType("score-partwise", "-//Recordare//DTD MusicXML 4.0 Partwise//EN", "http://www.musicxml.org/dtds/partwise.dtd", null);
        xml.WriteStartElement("score-partwise");
        xml.WriteAttributeString("version", "4.0");
        xml.WriteStartElement("work");
        xml.WriteElementString("work-title", Short(score.Title));
        xml.WriteEndElement();
        Identification(xml, score.Title);
        Page(xml);
        PartList(xml);
        xml.WriteStartElement("part");
        xml.WriteAttributeString("id", "P1");
        Section(xml, score.Sections[0]);
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteWhitespace("\n");
    }

    /// <summary>A title above 60 characters ends before a colon; the whole is kept as a field.</summary>
    private static string Short(string title) => title.Length > 60 && title[..61].LastIndexOf(": ", StringComparison.Ordinal) is > 0 and var colon
        ? title[..colon]
        : title;

    private static void Identification(XmlWriter xml, string title)
    {
        xml.WriteStartElement("identification");
        xml.WriteStartElement("encoding");
        xml.WriteElementString("software", "Warmup");
        Supports(xml, "accidental", null);
        Supports(xml, "beam", null);
        Supports(xml, "print", "new-system");
        xml.WriteEndElement();
        if (Short(title) != title)
        {
            xml.WriteStartElement("miscellaneous");
            xml.WriteStartElement("miscellaneous-field");
            xml.WriteAttributeString("name", "title");
            xml.WriteString(title);
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
    }

    private static void Supports(XmlWriter xml, string element, string? attribute)
    {
        xml.WriteStartElement("supports");
        xml.WriteAttributeString("element", element);
        xml.WriteAttributeString("type", "yes");
        if (attribute is not null)
        {
            xml.WriteAttributeString("attribute", attribute);
            xml.WriteAttributeString("value", "yes");
        }

        xml.WriteEndElement();
    }

    /// <summary>A4 with margins of 15 mm; the staff's 40 tenths are 7 mm.</summary>
    private static void Page(XmlWriter xml)
    {
        xml.WriteStartElement("defaults");
        xml.WriteStartElement("scaling");
        xml.WriteElementString("millimeters", "7");
        xml.WriteElementString("tenths", "40");
        xml.WriteEndElement();
        xml.WriteStartElement("page-layout");
        xml.WriteElementString("page-height", Tenths(297));
        xml.WriteElementString("page-width", Tenths(210));
        xml.WriteStartElement("page-margins");
        xml.WriteAttributeString("type", "both");
        foreach (var margin in (string[])["left-margin", "right-margin", "top-margin", "bottom-margin"])
        {
            xml.WriteElementString(margin, Tenths(15));
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static string Tenths(decimal millimetres) => (millimetres * 40 / 7).ToString("0.##", CultureInfo.InvariantCulture);

    private static void PartList(XmlWriter xml)
    {
        xml.WriteStartElement("part-list");
        xml.WriteStartElement("score-part");
        xml.WriteAttributeString("id", "P1");
        xml.WriteStartElement("part-name");
        xml.WriteAttributeString("print-object", "no");
        xml.WriteString("Voice");
        xml.WriteEndElement();
        xml.WriteStartElement("score-instrument");
        xml.WriteAttributeString("id", "P1-I1");
        xml.WriteElementString("instrument-name", "Voice");
        xml.WriteElementString("instrument-sound", "voice.vocals");
        xml.WriteEndElement();
        xml.WriteStartElement("midi-instrument");
        xml.WriteAttributeString("id", "P1-I1");
        xml.WriteElementString("midi-channel", "1");
        xml.WriteElementString("midi-program", "53");
        xml.WriteElementString("volume", "80");
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Section(XmlWriter xml, Section section)
    {
        var key = PlainKey.Of(section);
        for (var line = 0; line < section.Lines.Count; line++)
        {
            xml.WriteStartElement("measure");
            xml.WriteAttributeString("number", Text(line + 1));
            xml.WriteAttributeString("implicit", "yes");
            if (line == 0)
            {
                Attributes(xml, section, key);
                Words(xml, $"do = {section.TonicName}, {section.Scale.Name}");
                Tempo(xml, section.Tempo);
            }
            else
            {
                xml.WriteStartElement("print");
                xml.WriteAttributeString("new-system", "yes");
                xml.WriteEndElement();
                xml.WriteStartElement("direction");
                xml.WriteAttributeString("placement", "above");
                xml.WriteStartElement("direction-type");
                xml.WriteStartElement("words");
                xml.WriteAttributeString("enclosure", "rectangle");
                xml.WriteAttributeString("font-style", "normal");
                xml.WriteAttributeString("font-weight", "bold");
                xml.WriteString(Text(line + 1));
                xml.WriteEndElement();
                xml.WriteEndElement();
                xml.WriteEndElement();
            }

            Notes(xml, section, section.Lines[line], new PlainAccidentals(key));
            if (line == section.Lines.Count - 1)
            {
                xml.WriteStartElement("barline");
                xml.WriteAttributeString("location", "right");
                xml.WriteElementString("bar-style", "light-heavy");
                xml.WriteEndElement();
            }

            xml.WriteEndElement();
        }
    }

    private static void Attributes(XmlWriter xml, Section section, PlainKey key)
    {
        xml.WriteStartElement("attributes");
        xml.WriteElementString("divisions", "2");
        xml.WriteStartElement("key");
        xml.WriteElementString("fifths", Text(key.Fifths));
        if (key.Mode is not null)
        {
            xml.WriteElementString("mode", key.Mode);
        }

        xml.WriteEndElement();
        xml.WriteStartElement("time");
        xml.WriteElementString("beats", "4");
        xml.WriteElementString("beat-type", "4");
        xml.WriteEndElement();

        // By the tonic: treble from F3, the treble an octave down from A2, bass below.
        var tonic = section.Tonic.Midi;
        xml.WriteStartElement("clef");
        xml.WriteElementString("sign", tonic < 45 ? "F" : "G");
        xml.WriteElementString("line", tonic < 45 ? "4" : "2");
        if (tonic is >= 45 and < 53)
        {
            xml.WriteElementString("clef-octave-change", "-1");
        }

        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Words(XmlWriter xml, string text)
    {
        xml.WriteStartElement("direction");
        xml.WriteAttributeString("placement", "above");
        xml.WriteStartElement("direction-type");
        xml.WriteElementString("words", text);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Tempo(XmlWriter xml, Rational tempo)
    {
        var number = (decimal)tempo.Numerator / tempo.Denominator;
        xml.WriteStartElement("direction");
        xml.WriteAttributeString("placement", "above");
        xml.WriteStartElement("direction-type");
        xml.WriteStartElement("metronome");
        xml.WriteElementString("beat-unit", "quarter");
        xml.WriteElementString("per-minute", Math.Round(number, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture));
        xml.WriteEndElement();
        xml.WriteEndElement();
        xml.WriteStartElement("sound");
        xml.WriteAttributeString("tempo", number.ToString("0.############", CultureInfo.InvariantCulture));
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Notes(XmlWriter xml, Section section, ScoreLine line, PlainAccidentals accidentals)
    {
        for (var i = 0; i < line.NoteCount; i++)
        {
            var note = section.Notes[line.FirstNote + i];
            var name = section.PitchOf(note).Name;
            xml.WriteStartElement("note");
            xml.WriteStartElement("pitch");
            xml.WriteElementString("step", name.Letter.ToString());
            if (name.Alteration != 0)
            {
                xml.WriteElementString("alter", Text(name.Alteration));
            }

            xml.WriteElementString("octave", Text(name.Octave));
            xml.WriteEndElement();
            Value(xml, 1, "eighth");
            accidentals.Write(xml, name);

            // Two eighths of a beat hang together.
            if (i % 2 == 1 || i + 1 < line.NoteCount)
            {
                xml.WriteStartElement("beam");
                xml.WriteAttributeString("number", "1");
                xml.WriteString(i % 2 == 0 ? "begin" : "end");
                xml.WriteEndElement();
            }

            xml.WriteStartElement("lyric");
            xml.WriteAttributeString("number", "1");
            xml.WriteElementString("syllabic", "single");
            xml.WriteElementString("text", OctaveDotted.Of(section.SyllableOf(note), section.PitchOf(note).Tone.Octave));
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        for (var at = line.NoteCount; at < EighthsAMeasure;)
        {
            var length = at % 4 == 0 ? 4 : at % 2 == 0 ? 2 : 1;
            xml.WriteStartElement("note");
            xml.WriteStartElement("rest");
            xml.WriteEndElement();
            Value(xml, length, length == 4 ? "half" : length == 2 ? "quarter" : "eighth");
            xml.WriteEndElement();
            at += length;
        }
    }

    private static void Value(XmlWriter xml, int duration, string type)
    {
        xml.WriteElementString("duration", Text(duration));
        xml.WriteElementString("voice", "1");
        xml.WriteElementString("type", type);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
