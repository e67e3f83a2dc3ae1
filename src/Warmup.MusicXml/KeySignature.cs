namespace Warmup.MusicXml;

/// <summary>A key signature: fifths up (sharps) or down (flats) with the mode's name, or letters altered one by one.</summary>
/// <param name="Fifths">-7 to 7; 0 where letters are altered one by one.</param>
/// <param name="Mode">The mode, or empty where the signature says nothing about one.</param>
/// <param name="Letters">The alterations of a non-traditional signature, four bits a letter from C, each raised by 8; 0 for none.</param>
internal readonly record struct KeySignature(int Fifths, string Mode, uint Letters)
{
    private const int MostFifths = 7;
    private const int BitsALetter = 4;
    private const int Raised = 8;

    // Places on the line of fifths with C at 0: the order in which sharps are added is F C G D A E B.
    private static ReadOnlySpan<sbyte> FifthsOfLetters => [0, 2, 4, -1, 1, 3, 5];

    private static readonly string[] Modes = ["lydian", "major", "mixolydian", "dorian", "minor", "phrygian", "locrian"];

    private static KeySignature None => new(0, string.Empty, 0);

    /// <summary>The signature of a section's scale on its tonic.</summary>
    public static KeySignature Of(Section section, MusicXmlKey wanted)
    {
        if (wanted == MusicXmlKey.Accidentals)
        {
            return None;
        }

        Span<sbyte> alterations = stackalloc sbyte[7];
        alterations.Fill(sbyte.MaxValue);
        var letters = 0;
        foreach (var name in section.DegreeNames())
        {
            if (alterations[name.LetterIndex] != sbyte.MaxValue)
            {
                // A letter in two forms has no place in a signature.
                return None;
            }

            alterations[name.LetterIndex] = (sbyte)name.Alteration;
            letters++;
        }

        if (letters == 7 && Traditional(alterations, section.TonicName) is { } traditional)
        {
            return traditional;
        }

        return wanted == MusicXmlKey.NonTraditional ? LetterByLetter(alterations) : None;
    }

    /// <summary>What the signature does to a letter: 1 for a sharp, -1 for a flat.</summary>
    /// <param name="letter">0 for C to 6 for B.</param>
    public int Alteration(int letter)
    {
        if (Letters != 0)
        {
            return (int)((Letters >> (BitsALetter * letter)) & 0xF) - Raised;
        }

        var place = FifthsOfLetters[letter];
        return place < Fifths - 1 ? 1 : place > Fifths + 5 ? -1 : 0;
    }

    public void Write(XmlByteWriter xml)
    {
        xml.Raw("        <key>\n"u8);
        if (Letters == 0)
        {
            xml.Raw("          <fifths>"u8).Number(Fifths).Raw("</fifths>\n"u8);
            if (Mode.Length > 0)
            {
                xml.Raw("          <mode>"u8).Text(Mode).Raw("</mode>\n"u8);
            }
        }
        else
        {
            for (var letter = 0; letter < 7; letter++)
            {
                if (Alteration(letter) is not 0 and var alteration)
                {
                    xml.Raw("          <key-step>"u8).Raw(NoteWriter.Step(letter)).Raw("</key-step>\n          <key-alter>"u8)
                        .Number(alteration).Raw("</key-alter>\n"u8);
                }
            }
        }

        xml.Raw("        </key>\n"u8);
    }

    private static KeySignature? Traditional(ReadOnlySpan<sbyte> alterations, NoteName tonic)
    {
        for (var fifths = -MostFifths; fifths <= MostFifths; fifths++)
        {
            var key = new KeySignature(fifths, string.Empty, 0);
            var fits = true;
            for (var letter = 0; letter < 7 && fits; letter++)
            {
                fits = alterations[letter] == key.Alteration(letter);
            }

            if (fits)
            {
                return key with { Mode = Modes[FifthsOfLetters[tonic.LetterIndex] + (7 * tonic.Alteration) - fifths + 1] };
            }
        }

        return null;
    }

    private static KeySignature LetterByLetter(ReadOnlySpan<sbyte> alterations)
    {
        var letters = 0u;
        var isPlain = true;
        for (var letter = 0; letter < 7; letter++)
        {
            var alteration = alterations[letter] == sbyte.MaxValue ? 0 : alterations[letter];
            letters |= (uint)(alteration + Raised) << (BitsALetter * letter);
            isPlain &= alteration == 0;
        }

        return isPlain ? None : new KeySignature(0, string.Empty, letters);
    }
}
