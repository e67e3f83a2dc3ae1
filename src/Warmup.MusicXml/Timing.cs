namespace Warmup.MusicXml;

/// <summary>Writes what a note or rest says about its length.</summary>
/// <param name="Clock">The section's clock.</param>
/// <param name="Divisions">The divisions of a quarter note.</param>
internal readonly record struct Timing(Clock Clock, int Divisions)
{
    /// <summary>Duration, ties, voice, value, dot, accidental and tuplet, in the order the standard has them.</summary>
    public void Write(XmlBytes xml, in NotatedNote piece, in WrittenPitch pitch, AccidentalNeed need)
    {
        xml.Raw("        <duration>"u8).Number(piece.Length * Divisions / (Clock.Whole / 4)).Raw("</duration>\n"u8);
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

    /// <summary>The notation of ties alone.</summary>
    public static void Tied(XmlBytes xml, in NotatedNote piece)
    {
        if (!(piece.IsFirst && piece.IsLast))
        {
            xml.Raw("        <notations>\n"u8);
            TiedMarks(xml, piece);
            xml.Raw("        </notations>\n"u8);
        }
    }

    /// <summary>The ties inside a note's notations.</summary>
    public static void TiedMarks(XmlBytes xml, in NotatedNote piece) =>
        xml.Raw(piece.IsFirst ? ""u8 : "          <tied type=\"stop\"/>\n"u8).Raw(piece.IsLast ? ""u8 : "          <tied type=\"start\"/>\n"u8);
}
