namespace Warmup.MusicXml;

/// <summary>Writes what a note or rest states about its length.</summary>
/// <param name="Grid">The section's grid.</param>
/// <param name="Divisions">The divisions of a quarter note.</param>
internal readonly record struct DurationWriter(TickGrid Grid, int Divisions)
{
    /// <summary>Writes duration, ties, voice, value, dot, accidental and tuplet, in the order of the standard.</summary>
    public void Write(XmlByteWriter xml, in NotatedNote piece, in WrittenPitch pitch, AccidentalNeed need)
    {
        xml.Raw("        <duration>"u8).Number(piece.Length * Divisions / (Grid.Whole / 4)).Raw("</duration>\n"u8);
        if (!piece.IsRest && !(piece.IsFirst && piece.IsLast))
        {
            xml.Raw(piece.IsFirst ? ""u8 : "        <tie type=\"stop\"/>\n"u8).Raw(piece.IsLast ? ""u8 : "        <tie type=\"start\"/>\n"u8);
        }

        xml.Raw("        <voice>1</voice>\n        <type>"u8).Raw(NoteWriter.TypeName(piece.Type));
        xml.Raw(piece.IsDotted ? "</type>\n        <dot/>\n"u8 : "</type>\n"u8);
        pitch.WriteAccidental(xml, need);
        if (piece.Actual > 0)
        {
            xml.Raw("        <time-modification>\n          <actual-notes>"u8).Number(piece.Actual)
                .Raw("</actual-notes>\n          <normal-notes>"u8).Number(piece.Normal)
                .Raw("</normal-notes>\n          <normal-type>"u8).Raw(NoteWriter.TypeName(piece.SlotType))
                .Raw("</normal-type>\n        </time-modification>\n"u8);
        }
    }

    /// <summary>Writes the notations of a note that has only ties.</summary>
    public static void Tied(XmlByteWriter xml, in NotatedNote piece)
    {
        if (!(piece.IsFirst && piece.IsLast))
        {
            xml.Raw("        <notations>\n"u8);
            TiedMarks(xml, piece);
            xml.Raw("        </notations>\n"u8);
        }
    }

    /// <summary>Writes the ties inside a note's notations.</summary>
    public static void TiedMarks(XmlByteWriter xml, in NotatedNote piece) =>
        xml.Raw(piece.IsFirst ? ""u8 : "          <tied type=\"stop\"/>\n"u8).Raw(piece.IsLast ? ""u8 : "          <tied type=\"start\"/>\n"u8);
}
