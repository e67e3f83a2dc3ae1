using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>A part that sings the score as it is, or higher or lower.</summary>
/// <param name="number">Its number.</param>
/// <param name="semitones">How many semitones above the score it sings.</param>
internal sealed class VoicePart(int number, int semitones) : StaffPart(number)
{
    // The section that was last transposed, and what it became: several members need it in turn.
    private Section? _section;
    private Section? _written;

    public override (string Name, string Sound) Instrument => ("Voice", "voice.vocals");

    // General MIDI's choir aahs.
    protected override (int Channel, int Program, int Volume) Midi => (Number, 53, 80);

    public override void Check(Score score)
    {
        foreach (var section in score.Sections)
        {
            CheckRange(section);
        }
    }

    public override Section Written(Section section)
    {
        if (ReferenceEquals(section, _section))
        {
            return _written!;
        }

        try
        {
            (_section, _written) = (section, section.Transposed(semitones));
            return _written;
        }
        catch (ArgumentOutOfRangeException unwritable)
        {
            throw new ExportException(
                string.Create(CultureInfo.InvariantCulture, $"'{section.Title}' cannot be written {semitones} semitones higher for the second voice"), unwritable);
        }
    }

    public override Clef Clef(Score score, MusicXmlClef wanted) => MusicXml.Clef.Of(score, semitones, wanted);

    public override Action<Measure> Begin(XmlByteWriter xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals)
    {
        xml.Forget();
        var layout = new MeasureLayout(section);
        var pitches = WrittenPitch.Of(Written(section), options.HasMicrotones);
        var notes = new NoteWriter(xml, section, pitches, new DurationWriter(layout.Grid, divisions), accidentals, options, Number == 1);
        return measure => notes.Write(layout.Next(measure), measure, layout);
    }

    private void CheckRange(Section section)
    {
        foreach (var pitch in section.Pitches)
        {
            if (pitch.Midi + semitones is < 0 or > 127)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"{pitch.Tone} of the second voice would be MIDI note {pitch.Midi + semitones}; it must lie from 0 to 127"));
            }
        }

        var tonic = section.Tonic.Midi + semitones;
        if (tonic < Tonic.LowestMidi || tonic > Tonic.HighestMidi)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"the second voice's tonic would be MIDI note {tonic}; it must lie from C1 ({Tonic.LowestMidi}) to C7 ({Tonic.HighestMidi})"));
        }

        _ = Written(section);
    }
}
