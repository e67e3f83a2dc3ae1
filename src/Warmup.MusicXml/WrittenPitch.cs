namespace Warmup.MusicXml;

/// <summary>A pitch as a part writes it.</summary>
/// <param name="Name">The written name.</param>
/// <param name="Alter">The alteration in semitones; with a fraction where the options ask for the tuning's deviation.</param>
internal readonly record struct WrittenPitch(NoteName Name, decimal Alter)
{
    // Computed once for each pitch and not for each note: decimals are slow.
    private readonly bool _isPlain = Alter == Name.Alteration;

    /// <summary>The pitches of a section.</summary>
    public static WrittenPitch[] Of(Section section, bool hasMicrotones)
    {
        var pitches = section.Pitches.AsSpan();
        var written = new WrittenPitch[pitches.Length];
        for (var i = 0; i < written.Length; i++)
        {
            written[i] = Of(pitches[i], hasMicrotones);
        }

        return written;
    }

    /// <summary>A pitch; the tuning's deviation from equal steps is rounded to a hundredth of a cent.</summary>
    public static WrittenPitch Of(ScorePitch pitch, bool hasMicrotones) => new(
        pitch.Name,
        hasMicrotones ? pitch.Name.Alteration + Math.Round((decimal)((pitch.Cents / 100) - pitch.Tone.Semitones), 4) : pitch.Name.Alteration);

    /// <summary>Writes the pitch element.</summary>
    public void Write(XmlByteWriter xml)
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
    public void WriteAccidental(XmlByteWriter xml, AccidentalNeed need)
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

        // A microtone always shows its accidental: readers differ in what they make of a fraction alone.
        return _isPlain || Alter == decimal.Truncate(Alter) ? need : AccidentalNeed.Needed;
    }

    /// <summary>The named accidental nearest to the alteration, in quarter tones; five quarter tones have none.</summary>
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
