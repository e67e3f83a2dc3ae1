namespace Warmup.MusicXml;

/// <summary>A part that sings the score, or sings it so many semitones higher.</summary>
/// <param name="number">Its number.</param>
/// <param name="semitones">The semitones above the score.</param>
internal sealed class VoicePart(int number, int semitones) : StaffPart(number)
{
    public override (string Name, string Sound) Instrument => ("Voice", "voice.vocals");

    // General MIDI's choir aahs.
    protected override (int Channel, int Program, int Volume) Midi => (Number, 53, 80);

    public override void Check(Score score)
    {
        foreach (var section in score.Sections)
        {
            WrittenPitch.Of(section, semitones, microtones: false);
        }
    }

    public override NoteName TonicName(Section section) => WrittenPitch.TonicName(section, semitones);

    public override Clef Clef(Section section, MusicXmlClef wanted) => MusicXml.Clef.Of(section, wanted, semitones);

    public override Action<Measure> Begin(XmlBytes xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals)
    {
        var layout = new MeasureLayout(section);
        var pitches = WrittenPitch.Of(section, semitones, options.Microtones);
        var notes = new NoteWriter(xml, section, pitches, new Timing(layout.Clock, divisions), accidentals, options, Number == 1);
        return measure => notes.Write(layout.Next(measure));
    }
}
