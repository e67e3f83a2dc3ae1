using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>A pitch as a part writes it.</summary>
/// <param name="Name">The written name.</param>
/// <param name="Alter">The alteration in semitones; with a fraction where a tuning's deviation is asked for.</param>
internal readonly record struct WrittenPitch(NoteName Name, decimal Alter)
{
    // Asked once a pitch and not once a note: decimals are slow.
    private readonly bool _isPlain = Alter == Name.Alteration;


    /// <summary>The tonic's name in a part that sings so many semitones above the section.</summary>
    public static NoteName TonicName(Section section, int semitones)
    {
        if (semitones % 12 == 0)
        {
            var name = section.TonicName;
            return new NoteName(name.Letter, name.Alteration, name.Octave + (semitones / 12));
        }

        var midi = section.Tonic.Midi + semitones;
        return midi >= Tonic.LowestMidi && midi <= Tonic.HighestMidi
            ? Spelling.ChooseTonic(Tonic.FromMidi(midi), section.Scale, out _)
            : throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"the second voice's tonic would be MIDI note {midi}; it must lie from C1 ({Tonic.LowestMidi}) to C7 ({Tonic.HighestMidi})"));
    }

    /// <summary>The pitches of a section, as a part so many semitones above it writes them.</summary>
    public static WrittenPitch[] Of(Section section, int semitones, bool microtones)
    {
        var tonic = TonicName(section, semitones);
        var written = new WrittenPitch[section.Pitches.Count];
        for (var i = 0; i < written.Length; i++)
        {
            var pitch = section.Pitches[i];
            var midi = pitch.Midi + semitones;
            if (midi is < 0 or > 127)
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"{pitch.Tone} of the second voice would be MIDI note {midi}; it must lie from 0 to 127"));
            }

            // An octave apart the names stay as the score spells them.
            var name = semitones % 12 == 0
                ? new NoteName(pitch.Name.Letter, pitch.Name.Alteration, pitch.Name.Octave + (semitones / 12))
                : Spelling.Name(pitch.Tone, tonic);
            written[i] = Of(pitch, name, microtones);
        }

        return written;
    }

    /// <summary>A pitch under a name; the tuning's deviation from equal steps is taken to a hundredth of a cent.</summary>
    public static WrittenPitch Of(ScorePitch pitch, NoteName name, bool microtones) => new(
        name,
        microtones ? name.Alteration + Math.Round((decimal)((pitch.Cents / 100) - pitch.Tone.Semitones), 4) : name.Alteration);

    /// <summary>Writes the pitch element.</summary>
    public void Write(XmlBytes xml)
    {
        xml.Raw("        <pitch>\n          <step>"u8).Raw(NoteWriter.Step(Name.LetterIndex)).Raw("</step>\n"u8);
        if (!_isPlain && Alter != 0)
        {
            xml.Raw("          <alter>"u8).Number(Alter).Raw("</alter>\n"u8);
        }
        else if (_isPlain && Name.Alteration != 0)
        {
            xml.Raw("          <alter>"u8).Number(Name.Alteration).Raw("</alter>\n"u8);
        }

        xml.Raw("          <octave>"u8).Number(Name.Octave).Raw("</octave>\n        </pitch>\n"u8);
    }

    /// <summary>Writes the accidental where it is needed.</summary>
    public void WriteAccidental(XmlBytes xml, AccidentalNeed need)
    {
        if (need != AccidentalNeed.None)
        {
            xml.Raw(need == AccidentalNeed.Courtesy ? "        <accidental cautionary=\"yes\">"u8 : "        <accidental>"u8)
                .Raw(AccidentalName).Raw("</accidental>\n"u8);
        }
    }

    /// <summary>Whether the accidental of a note that begins here is written.</summary>
    public AccidentalNeed Need(Accidentals accidentals)
    {
        var need = accidentals.See(Name);

        // A microtone always says its accidental: readers differ in what they make of a fraction alone.
        return _isPlain || Alter == decimal.Truncate(Alter) ? need : AccidentalNeed.Needed;
    }

    /// <summary>The named accidental nearest to the alteration, in quarter tones; there is none of five quarter tones.</summary>
    private ReadOnlySpan<byte> AccidentalName => (_isPlain ? 2 * Name.Alteration : (int)Math.Round(Alter * 2, MidpointRounding.ToEven)) switch
    {
        0 => "natural"u8,
        1 => "quarter-sharp"u8,
        2 => "sharp"u8,
        3 => "three-quarters-sharp"u8,
        4 or 5 => "double-sharp"u8,
        > 5 => "triple-sharp"u8,
        -1 => "quarter-flat"u8,
        -2 => "flat"u8,
        -3 => "three-quarters-flat"u8,
        -4 or -5 => "flat-flat"u8,
        _ => "triple-flat"u8,
    };
}
