namespace Warmup.MusicXml;

/// <summary>A clef as it is written.</summary>
/// <param name="IsBass">The F clef; otherwise the G clef.</param>
/// <param name="IsOctaveDown">Whether it sounds an octave lower.</param>
internal readonly record struct Clef(bool IsBass, bool IsOctaveDown)
{
    // The lowest tonics of voices. Women and children commonly take a tonic from F3 up, men one from A2 to E3 (common practice); lower ones are a
    // bass's. Between two of them lies no tonic that either would choose, so that no drill changes its clef for a semitone.
    private const int LowestTrebleTonic = 53;
    private const int LowestOctaveDownTonic = 45;

    // The mean notes of a held drone, which has no singer.
    private const int LowestTreble = 60;
    private const int LowestOctaveDown = 50;

    /// <summary>The clef of a voice, one for the whole score: by its tonic, or the one wanted.</summary>
    /// <param name="score">The score.</param>
    /// <param name="semitones">How many semitones above the score the voice sings.</param>
    /// <param name="wanted">The clef wanted.</param>
    public static Clef Of(Score score, int semitones, MusicXmlClef wanted)
    {
        if (wanted != MusicXmlClef.ByPitch)
        {
            return new Clef(wanted == MusicXmlClef.Bass, wanted == MusicXmlClef.TrebleOctaveDown);
        }

        var (sum, count) = (0L, score.Sections.Count);
        foreach (var section in score.Sections)
        {
            sum += section.Tonic.Midi + semitones;
        }

        return ByLowest(sum, count, LowestTrebleTonic, LowestOctaveDownTonic);
    }

    /// <summary>The clef of a drone's notes, by their sum: no mean has to be rounded.</summary>
    public static Clef OfDrone(long sum, long count) => ByLowest(sum, count, LowestTreble, LowestOctaveDown);

    private static Clef ByLowest(long sum, long count, int treble, int octaveDown) =>
        new(sum < octaveDown * count, sum < treble * count && sum >= octaveDown * count);

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
