namespace Warmup.Sheets;

/// <summary>How a sheet writes tones: in the kind of syllables asked for, or in the one that the score sings where that tells the tones apart.</summary>
/// <param name="Syllables">The kind.</param>
internal sealed record SheetLetters(Syllables Syllables)
{
    private readonly Syllables _dotted = Syllables.WithOctaveDots();
    private readonly bool _hasVariants = Syllables.HasVariants;

    /// <summary>Whether notes are written as blanks; the scale keeps its letters.</summary>
    public bool HasHiddenNotes { get; init; }

    // The kinds in which a sheet is written when they are sung; svara letters stand for all others, such as a vowel, and solfa where choirs sing them.
    private static ValueList<Syllables> Written =>
    [
        Syllables.Devanagari, Syllables.Tamil, Syllables.Telugu, Syllables.Kannada, Syllables.Malayalam,
        Syllables.Solfa, Syllables.LaBasedSolfa, Syllables.Numbers,
    ];

    /// <summary>Whether solfa syllables are written.</summary>
    public bool IsSolfa => Syllables == Syllables.Solfa || Syllables == Syllables.LaBasedSolfa;

    /// <summary>Whether carets stand for the octaves: a dot would be read as the pulli.</summary>
    public bool HasCarets => Syllables == Syllables.Tamil || Syllables == Syllables.Tamil.WithOctaveDots();

    /// <summary>The letters of a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="asked">The kind asked for, or <see langword="null"/>.</param>
    public static SheetLetters Of(Score score, Syllables? asked) => new(asked ?? Sung(score) ?? Usual(score));

    /// <summary>A tone as the sheet writes it.</summary>
    public SheetTone Of(ScaleTone tone)
    {
        var hasVariant = !_hasVariants && tone.Degree.Variant > 0;
        return new SheetTone(
            Syllables.SyllableOf(new ScaleTone(tone.Degree)),
            hasVariant ? tone.Degree.Variant.ToString(System.Globalization.CultureInfo.InvariantCulture) : string.Empty,
            tone.Octave,
            HasCarets ? Pointed(Syllables.SyllableOf(new ScaleTone(tone.Degree)), tone.Octave) : _dotted.SyllableOf(tone));
    }

    /// <summary>
    /// A note's tone as the sheet writes it in the lines of a section: with its variant where the section has the letter at more than one pitch, and a
    /// blank where notes are hidden.
    /// </summary>
    public SheetTone OfNote(ScaleTone tone, Section section)
    {
        var written = Of(tone);
        return HasHiddenNotes ? SheetTone.Blank : section.HasSeveralOf(tone.Degree) ? written : written.WithoutVariant();
    }

    // A circumflex above for each octave up, a caron below for each down, as combining marks.
    private static string Pointed(string letter, int octave) => letter + new string(octave > 0 ? '\u0302' : '\u032C', Math.Abs(octave));

    /// <summary>
    /// Svara letters, or solfa where time signatures count throughout and some words do not say which tone they are sung on, as the vowels of choirs.
    /// </summary>
    private static Syllables Usual(Score score) =>
        score.Sections.All(s => !MeterWords.Of(s.Meter).IsTala) && score.Sections.Any(s => !s.IsSungIn(Syllables.SvaraLetters)) ? Syllables.Solfa : Syllables.SvaraLetters;

    /// <summary>The kind that all syllables of a score belong to, or none.</summary>
    private static Syllables? Sung(Score score)
    {
        foreach (var kind in Written)
        {
            if (score.Sections.All(s => s.IsSungIn(kind)))
            {
                return kind;
            }
        }

        return null;
    }
}
