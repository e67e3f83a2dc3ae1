namespace Warmup.MusicXml;

/// <summary>A clef as it is written.</summary>
/// <param name="IsBass">The F clef; otherwise the G clef.</param>
/// <param name="IsOctaveDown">Whether it sounds an octave lower.</param>
internal readonly record struct Clef(bool IsBass, bool IsOctaveDown)
{
    private const int LowestTreble = 60;
    private const int LowestOctaveDown = 50;

    public static Clef Of(Section section, MusicXmlClef wanted)
    {
        if (wanted == MusicXmlClef.ByPitch)
        {
            var pitches = section.Pitches.AsSpan();
            long sum = 0;
            foreach (var note in section.Notes)
            {
                sum += pitches[note.PitchIndex].Midi;
            }

            // Compared as sums, so that the mean need not be rounded.
            long count = section.Notes.Count;
            wanted = sum >= LowestTreble * count ? MusicXmlClef.Treble
                : sum >= LowestOctaveDown * count ? MusicXmlClef.TrebleOctaveDown
                : MusicXmlClef.Bass;
        }

        return new Clef(wanted == MusicXmlClef.Bass, wanted == MusicXmlClef.TrebleOctaveDown);
    }

    public void Write(XmlBytes xml)
    {
        xml.Raw("        <clef>\n          <sign>"u8).Raw(IsBass ? "F"u8 : "G"u8).Raw("</sign>\n          <line>"u8)
            .Raw(IsBass ? "4"u8 : "2"u8).Raw("</line>\n"u8);
        if (IsOctaveDown)
        {
            xml.Raw("          <clef-octave-change>-1</clef-octave-change>\n"u8);
        }

        xml.Raw("        </clef>\n"u8);
    }
}
