namespace Warmup;

public sealed partial record Section
{
    /// <summary>
    /// Whether the section has the letter of a degree at more than one pitch, as Bhairavi has D1 and D2: its variant is then sung, written and
    /// read out with it.
    /// </summary>
    /// <param name="degree">The degree; one that is not a svara is known by its number.</param>
    public bool HasSeveralOf(Degree degree) => VariantLetters.Of(Pitches).Contains(degree);

    /// <summary>Whether every note is sung on the syllable that a kind gives its tone, with or without octave dots.</summary>
    /// <param name="syllables">The kind.</param>
    public bool IsSungIn(Syllables syllables)
    {
        ArgumentNullException.ThrowIfNull(syllables);
        var letters = VariantLetters.Of(Pitches);
        Syllables? dotted = null;

        // Most kinds fail at the first note, without memory for the names of all pitches.
        var first = default((string? Plain, string? Dotted));
        if (!Notes.IsEmpty && !IsSung(Notes.AsSpan()[0], ref first))
        {
            return false;
        }

        // The two names of each pitch, asked for when it first sounds.
        var names = new (string? Plain, string? Dotted)[Pitches.Count];
        foreach (ref readonly var note in Notes.AsSpan())
        {
            if (!IsSung(note, ref names[note.PitchIndex]))
            {
                return false;
            }
        }

        return true;

        bool IsSung(in ScoreNote note, ref (string? Plain, string? Dotted) name)
        {
            var tone = Pitches.AsSpan()[note.PitchIndex].Tone;
            var syllable = SyllableOf(note);
            name.Plain ??= Name(tone, syllables);
            return syllable == name.Plain || syllable == (name.Dotted ??= Name(tone, dotted ??= syllables.WithOctaveDots()));
        }

        string Name(ScaleTone tone, Syllables kind) => letters.Contains(tone.Degree) ? kind.SyllableWithVariant(tone) : kind.SyllableOf(tone);
    }
}

public sealed partial record Syllables
{
    /// <summary>Whether the syllables tell the tones apart; a vowel, a lip trill and a straw do not.</summary>
    public bool HasToneNames => Degree.All.Any(d => SyllableOf(new ScaleTone(d)) != SyllableOf(default));

    /// <summary>Whether a kind has syllables of their own for the variants of a svara, as solfa has for R1 and R2; svara letters have none.</summary>
    public bool HasVariants => SyllableOf(new ScaleTone(new Degree(2, -1))) != SyllableOf(new ScaleTone(new Degree(2)));
}
