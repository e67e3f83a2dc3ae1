namespace Warmup.MusicXml;

/// <summary>
/// Writes what stands above the first measure of a section: its title, the tonic where it lies off the keyboard, and the tempo. Each is
/// a direction of its own, since an editor drops one of two that share one.
/// </summary>
internal static class Directions
{
    public static void Write(XmlBytes xml, Score score, int index)
    {
        var section = score.Sections[index];
        if ((score.Sections.Count > 1 || section.Title != score.Title) && section.Title.Length > 0)
        {
            Words(xml, section.Title, "<words font-weight=\"bold\">"u8);
        }

        if (ScoreHeader.TonicText(section) is { } tonic)
        {
            Words(xml, tonic, "<words>"u8);
        }

        Tempo(xml, section);
    }

    private static void Words(XmlBytes xml, string text, ReadOnlySpan<byte> tag) =>
        xml.Raw("      <direction placement=\"above\">\n        <direction-type>\n          "u8).Raw(tag).Text(text)
            .Raw("</words>\n        </direction-type>\n      </direction>\n"u8);

    /// <summary>A whole number to read and the exact tempo to play, in the same direction.</summary>
    private static void Tempo(XmlBytes xml, Section section)
    {
        var beat = section.Meter.BeatType;
        var shown = (section.Tempo + new Rational(1, 2)).Floor();
        var quarters = section.Tempo * 4 / beat;
        xml.Raw(
            """
                  <direction placement="above">
                    <direction-type>
                      <metronome>
                        <beat-unit>
            """u8);
        xml.Raw(NoteWriter.TypeName(int.Log2(beat))).Raw("</beat-unit>\n            <per-minute>"u8).Number(Math.Max(1, shown))
            .Raw("</per-minute>\n          </metronome>\n        </direction-type>\n        <sound tempo=\""u8)
            .Number((decimal)quarters.Numerator / quarters.Denominator).Raw("\"/>\n      </direction>\n"u8);
    }
}
