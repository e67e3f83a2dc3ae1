namespace Warmup.Sheets;

/// <summary>What a sheet writes for a tone: the kind of syllables asked for, or the one that the score sings where that tells the tones apart.</summary>
internal sealed class SungLetters
{
    private readonly Syllables _plain;
    private readonly Syllables _dotted;

    public SungLetters(Score score, Syllables? asked)
    {
        _plain = asked ?? Sung(score) ?? Syllables.SvaraLetters;
        _dotted = _plain.WithOctaveDots();
    }

    // The kinds that a sheet is written in when they are sung; svara letters stand for all others, a vowel for instance.
    private static ValueList<Syllables> Written =>
    [
        Syllables.Devanagari, Syllables.Tamil, Syllables.Telugu, Syllables.Kannada, Syllables.Malayalam,
        Syllables.Solfa, Syllables.LaBasedSolfa, Syllables.Numbers,
    ];

    /// <summary>Whether they are svara letters, in whatever script.</summary>
    public bool AreLetters => Of(ScaleTone.Parse("R1")) == Of(ScaleTone.Parse("R2"));

    /// <summary>The letter of a tone in its middle octave.</summary>
    public string Of(ScaleTone tone) => _plain.SyllableOf(new ScaleTone(tone.Degree));

    /// <summary>The variant of a svara as a small number behind its letter; empty where there is one only, or where the letter says it all.</summary>
    public string VariantOf(ScaleTone tone) =>
        AreLetters && tone.Degree.IsSvara ? new ScaleTone(tone.Degree).ToString()[1..] : string.Empty;

    /// <summary>The letter with a sign behind it for each octave: <c>S'</c> above the middle one, <c>N_</c> below.</summary>
    public string WithSigns(ScaleTone tone) => Of(tone) + Signs(tone);

    /// <summary>The letter with dots above for the octaves above the middle one and below for those below, as combining marks.</summary>
    public string WithDots(ScaleTone tone) => _dotted.SyllableOf(tone);

    /// <summary>The notes of a scale in a row: svara letters with their variants, other syllables as they are, with signs for the octaves.</summary>
    public string Row(ValueList<ScaleTone> tones) => string.Join(' ', tones.ConvertAll(t => Of(t) + VariantOf(t) + Signs(t)));

    private static string Signs(ScaleTone tone) => tone.Octave == 0 ? string.Empty : new string(tone.Octave > 0 ? '\'' : '_', Math.Abs(tone.Octave));

    /// <summary>The kind that all syllables of a score belong to, or none.</summary>
    private static Syllables? Sung(Score score)
    {
        foreach (var kind in Written)
        {
            var dotted = kind.WithOctaveDots();
            if (((IEnumerable<Section>)score.Sections).All(s => ((IEnumerable<ScoreNote>)s.Notes).All(n =>
                n.Syllable == kind.SyllableOf(s.PitchOf(n).Tone) || n.Syllable == dotted.SyllableOf(s.PitchOf(n).Tone))))
            {
                return kind;
            }
        }

        return null;
    }
}
