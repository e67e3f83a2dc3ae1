namespace Warmup.MusicXml;

/// <summary>A part with pitches on five lines: a voice or the drone.</summary>
/// <param name="number">Its number.</param>
internal abstract class StaffPart(int number) : ScorePart(number)
{
    /// <summary>The MIDI channel and program, counted from 1, and the volume in percent.</summary>
    protected abstract (int Channel, int Program, int Volume) Midi { get; }

    public override void WriteMidi(XmlByteWriter xml) => xml.Raw("        <midi-channel>"u8).Number(Midi.Channel)
        .Raw("</midi-channel>\n        <midi-program>"u8).Number(Midi.Program)
        .Raw("</midi-program>\n        <volume>"u8).Number(Midi.Volume).Raw("</volume>\n"u8);

    /// <summary>A section at the height at which this part writes it: its tonic decides the key signature.</summary>
    public abstract Section Written(Section section);

    /// <summary>The clef of the part, the same throughout.</summary>
    public abstract Clef Clef(Score score, MusicXmlClef wanted);

    /// <summary>Begins a section; what it returns writes the section's measures, which must come in order.</summary>
    public abstract Action<Measure> Begin(XmlByteWriter xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals);

    public override void Write(XmlByteWriter xml, Score score, MusicXmlOptions options, int divisions, CancellationToken cancellation) =>
        new PartWriter(xml, options, divisions, this).Write(score, cancellation);
}
