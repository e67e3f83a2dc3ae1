namespace Warmup.MusicXml;

/// <summary>A key signature as MusicXML counts it: fifths up (sharps) or down (flats), and the mode's name where there is one.</summary>
/// <param name="Fifths">-7 to 7.</param>
/// <param name="Mode">The mode, or empty where the signature says nothing about one.</param>
internal readonly record struct KeySignature(int Fifths, string Mode)
{
    private const int MostFifths = 7;

    // Places on the line of fifths with C at 0: the order in which sharps are added is F C G D A E B.
    private static ReadOnlySpan<sbyte> FifthsOfLetters => [0, 2, 4, -1, 1, 3, 5];

    private static readonly string[] Modes = ["lydian", "major", "mixolydian", "dorian", "minor", "phrygian", "locrian"];

    public static KeySignature None => new(0, string.Empty);

    /// <summary>The signature of a scale, where it has seven degrees that one signature gives all of.</summary>
    public static KeySignature Of(Section section, MusicXmlKey key)
    {
        var degrees = section.Scale.Degrees;
        if (key == MusicXmlKey.Accidentals || degrees.Count != 7)
        {
            return None;
        }

        Span<sbyte> alterations = stackalloc sbyte[7];
        alterations.Fill(sbyte.MaxValue);
        foreach (var degree in degrees)
        {
            var name = Spelling.Name(new ScaleTone(degree), section.TonicName);
            alterations[name.LetterIndex] = (sbyte)name.Alteration;
        }

        for (var fifths = -MostFifths; fifths <= MostFifths; fifths++)
        {
            var fits = true;
            for (var letter = 0; letter < 7 && fits; letter++)
            {
                fits = alterations[letter] == Alteration(fifths, letter);
            }

            if (fits)
            {
                var tonic = FifthsOfLetters[section.TonicName.LetterIndex] + (7 * section.TonicName.Alteration);
                return new KeySignature(fifths, Modes[tonic - fifths + 1]);
            }
        }

        return None;
    }

    /// <summary>What a signature does to a letter: 1 for a sharp, -1 for a flat.</summary>
    public static int Alteration(int fifths, int letter)
    {
        var place = FifthsOfLetters[letter];
        return place < fifths - 1 ? 1 : place > fifths + 5 ? -1 : 0;
    }
}
