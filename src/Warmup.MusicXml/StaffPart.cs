namespace Warmup.MusicXml;

/// <summary>A part with pitches on five lines: a voice or the drone.</summary>
/// <param name="number">Its number.</param>
internal abstract class StaffPart(int number) : Part(number)
{
    /// <summary>The MIDI channel, program and volume in percent, counted from 1.</summary>
    protected abstract (int Channel, int Program, int Volume) Midi { get; }

    public override void WriteMidi(XmlBytes xml) => xml.Raw("        <midi-channel>"u8).Number(Midi.Channel)
        .Raw("</midi-channel>\n        <midi-program>"u8).Number(Midi.Program)
        .Raw("</midi-program>\n        <volume>"u8).Number(Midi.Volume).Raw("</volume>\n"u8);

    /// <summary>The name of the tonic in this part: it decides the key signature.</summary>
    public abstract NoteName TonicName(Section section);

    /// <summary>The clef of a section.</summary>
    public abstract Clef Clef(Section section, MusicXmlClef wanted);

    /// <summary>What writes the measures of a section, to be given them in order.</summary>
    public abstract Action<Measure> Begin(XmlBytes xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals);

    public override void Write(XmlBytes xml, Score score, MusicXmlOptions options, int divisions, CancellationToken cancellation) =>
        new PartWriter(xml, options, divisions, this).Write(score, cancellation);
}
