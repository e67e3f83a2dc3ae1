namespace Warmup.MusicXml;

/// <summary>Writes the beams of a note: they join all eighths and shorter values of an akshara, or of a tuplet wider than one.</summary>
internal static class Beam
{
    public static void Write(XmlByteWriter xml, ReadOnlySpan<NotatedNote> pieces, int index)
    {
        var beams = pieces[index].Beams;
        var before = Joined(pieces, index - 1) ? pieces[index - 1].Beams : 0;
        var after = Joined(pieces, index) ? pieces[index + 1].Beams : 0;
        if (before + after == 0)
        {
            return;
        }

        // Each level that there is on either side goes on; for an eighth that is all.
        xml.Raw(before == 0 ? "        <beam number=\"1\">begin</beam>\n"u8
            : after == 0 ? "        <beam number=\"1\">end</beam>\n"u8
            : "        <beam number=\"1\">continue</beam>\n"u8);
        for (var level = 2; level <= beams; level++)
        {
            xml.Raw("        <beam number=\""u8).Number(level).Raw("\">"u8)
                .Raw(level <= before ? level <= after ? "continue"u8 : "end"u8
                    : level <= after ? "begin"u8
                    : before > 0 ? "backward hook"u8 : "forward hook"u8)
                .Raw("</beam>\n"u8);
        }
    }

    /// <summary>Whether a beam joins a piece and the next one.</summary>
    private static bool Joined(ReadOnlySpan<NotatedNote> pieces, int index) =>
        index >= 0 && index + 1 < pieces.Length
        && pieces[index].Beams > 0 && pieces[index + 1].Beams > 0
        && pieces[index].BeamGroup == pieces[index + 1].BeamGroup;
}
