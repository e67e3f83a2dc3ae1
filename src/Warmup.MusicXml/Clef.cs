namespace Warmup.MusicXml;

/// <summary>A clef as it is written.</summary>
/// <param name="IsBass">The F clef; otherwise the G clef.</param>
/// <param name="IsOctaveDown">Whether it sounds an octave lower.</param>
internal readonly record struct Clef(bool IsBass, bool IsOctaveDown)
{
    private const int LowestTreble = 60;
    private const int LowestOctaveDown = 50;

    /// <summary>The clef of a section.</summary>
    public static Clef Of(Section section, MusicXmlClef wanted)
    {
        if (wanted != MusicXmlClef.ByPitch)
        {
            return new Clef(wanted == MusicXmlClef.Bass, wanted == MusicXmlClef.TrebleOctaveDown);
        }

        var pitches = section.Pitches.AsSpan();
        long sum = 0;
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            sum += pitches[note.PitchIndex].Midi;
        }

        return Of(sum, section.Notes.Count);
    }

    /// <summary>The clef of a number of keyboard notes, by their sum: no mean has to be rounded.</summary>
    public static Clef Of(long sum, long count) => new(sum < LowestOctaveDown * count, sum < LowestTreble * count && sum >= LowestOctaveDown * count);

    public void Write(XmlByteWriter xml)
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
