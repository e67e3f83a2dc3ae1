namespace Warmup;

public sealed partial record Section
{
    /// <summary>Whether every note is sung on the syllable that a kind gives its tone, with or without octave dots.</summary>
    /// <param name="syllables">The kind.</param>
    public bool IsSungIn(Syllables syllables)
    {
        ArgumentNullException.ThrowIfNull(syllables);
        var dotted = syllables.WithOctaveDots();
        var names = Pitches.ConvertAll(p => (Plain: syllables.SyllableOf(p.Tone), Dotted: dotted.SyllableOf(p.Tone)));
        foreach (ref readonly var note in Notes.AsSpan())
        {
            if (note.Syllable != names[note.PitchIndex].Plain && note.Syllable != names[note.PitchIndex].Dotted)
            {
                return false;
            }
        }

        return true;
    }
}

public sealed partial record Syllables
{
    /// <summary>Whether a kind has syllables of their own for the variants of a svara, as solfa has for R1 and R2; svara letters have none.</summary>
    public bool HasVariants => SyllableOf(new ScaleTone(new Degree(2, -1))) != SyllableOf(new ScaleTone(new Degree(2)));
}
