namespace Warmup.MusicXml;

/// <summary>
/// Writes what stands above the first measure of a section: its title, its tala, tonic and scale, and the tempo. Each has a
/// direction of its own: where two share one, an editor drops one of them.
/// </summary>
internal static class Directions
{
    public static void Write(XmlByteWriter xml, Score score, int index)
    {
        var section = score.Sections[index];
        var before = index == 0 ? null : score.Sections[index - 1];

        // Editors put the first nearest to the staff, and each next one above it.
        var head = ScoreHeader.Of(section);
        if (HasSpeeds(section.Lines.AsSpan()))
        {
            Words(xml, $"{head}, {MeterWords.Of(section.Meter).Speed(section.Speed)}", "<words>"u8);
        }
        else if (before is null || head != ScoreHeader.Of(before))
        {
            Words(xml, head, "<words>"u8);
        }

        var title = ScoreHeader.ShortTitle(section.Title);
        if (title.Length > 0 && title != ScoreHeader.ShortTitle(before?.Title ?? score.Title))
        {
            Words(xml, title, "<words font-weight=\"bold\" font-size=\"14\">"u8);
        }

        if (section.CountIn.Sign > 0)
        {
            Words(xml, "count-in", "<words>"u8);
        }

        Tempo(xml, section.Meter, section.Tempo);
    }

    /// <summary>Writes what stands where a line begins: its number, and the speed and the tempo where they change. Those of the first stand at the head.</summary>
    public static void Line(XmlByteWriter xml, Section section, int line, MusicXmlLineMarks marks)
    {
        // As words at the note: one engraver puts all rehearsal marks of a measure at its beginning. The first begins where the piece or its title does; without a number the others all stand at one height, clear of the tempo.
        if (marks == MusicXmlLineMarks.Numbers && line > 0)
        {
            xml.Raw("      <direction placement=\"above\">\n        <direction-type>\n          <words enclosure=\"rectangle\" font-style=\"normal\" font-weight=\"bold\">"u8).Number(line + 1)
                .Raw("</words>\n        </direction-type>\n      </direction>\n"u8);
        }

        var lines = section.Lines.AsSpan();
        if (line > 0 && lines[line].Speed != lines[line - 1].Speed)
        {
            Words(xml, MeterWords.Of(section.Meter).Speed(lines[line].Speed), "<words>"u8);
        }

        if (line > 0 && section.TempoAt(lines[line].Onset) is var tempo && tempo != section.TempoAt(lines[line - 1].Onset))
        {
            Tempo(xml, section.Meter, tempo);
        }
    }

    /// <summary>Writes how loud a section begins: above the staff, since the syllables stand below.</summary>
    public static void Dynamics(XmlByteWriter xml, MusicXmlDynamics dynamics)
    {
        if (dynamics != MusicXmlDynamics.None)
        {
            xml.Raw("      <direction placement=\"above\">\n        <direction-type>\n          <dynamics>\n            <"u8).Raw(Mark(dynamics))
                .Raw("/>\n          </dynamics>\n        </direction-type>\n      </direction>\n"u8);
        }
    }

    /// <summary>Writes the beginning or the end of a hairpin, above the staff, since the syllables stand below.</summary>
    /// <param name="xml">The writer.</param>
    /// <param name="type">The type in the standard: crescendo, diminuendo, stop.</param>
    public static void Hairpin(XmlByteWriter xml, ReadOnlySpan<byte> type)
    {
        xml.Raw("      <direction placement=\"above\">\n        <direction-type>\n          <wedge type=\""u8).Raw(type)
            .Raw("\" number=\"1\"/>\n        </direction-type>\n"u8);
        xml.Raw("      </direction>\n"u8);
    }

    private static ReadOnlySpan<byte> Mark(MusicXmlDynamics dynamics) => dynamics switch
    {
        MusicXmlDynamics.Pianissimo => "pp"u8,
        MusicXmlDynamics.Piano => "p"u8,
        MusicXmlDynamics.MezzoPiano => "mp"u8,
        MusicXmlDynamics.MezzoForte => "mf"u8,
        MusicXmlDynamics.Forte => "f"u8,
        _ => "ff"u8,
    };

    private static bool HasSpeeds(ReadOnlySpan<ScoreLine> lines)
    {
        foreach (var line in lines)
        {
            if (line.Speed != lines[0].Speed)
            {
                return true;
            }
        }

        return false;
    }

    private static void Words(XmlByteWriter xml, string text, ReadOnlySpan<byte> tag) =>
        xml.Raw("      <direction placement=\"above\">\n        <direction-type>\n          "u8).Raw(tag).Text(text)
            .Raw("</words>\n        </direction-type>\n      </direction>\n"u8);

    /// <summary>Writes a whole number to read and the exact tempo to play, in the same direction.</summary>
    private static void Tempo(XmlByteWriter xml, Meter meter, Rational tempo)
    {
        var shown = (tempo + new Rational(1, 2)).Floor();
        var quarters = tempo * 4 * meter.BeatValue;
        xml.Raw(
            """
                  <direction placement="above">
                    <direction-type>
                      <metronome>
                        <beat-unit>
            """u8);
        xml.Raw(NoteWriter.TypeName(int.Log2(meter.BeatType))).Raw("</beat-unit>\n"u8).Raw(meter.IsCompound ? "            <beat-unit-dot/>\n"u8 : ""u8)
            .Raw("            <per-minute>"u8).Number(Math.Max(1, shown))
            .Raw("</per-minute>\n          </metronome>\n        </direction-type>\n        <sound tempo=\""u8)
            .Number((decimal)quarters.Numerator / quarters.Denominator).Raw("\"/>\n      </direction>\n"u8);
    }
}
