namespace Warmup.Drawing;

/// <summary>What a drawing writes for a tone, its octave dots aside.</summary>
internal sealed class Letters
{
    private readonly Syllables _syllables;

    public Letters(Score score, Syllables? asked) => _syllables = asked ?? Sung(score) ?? Syllables.SvaraLetters;

    /// <summary>The letter of a tone in its middle octave.</summary>
    public string Of(ScaleTone tone) => _syllables.SyllableOf(new ScaleTone(tone.Degree));

    /// <summary>The variant of a svara as a small number behind its letter; empty where there is one only, or where the letter says it all.</summary>
    public string VariantOf(ScaleTone tone)
    {
        var full = new ScaleTone(tone.Degree).ToString();
        return Of(tone) == full || !tone.Degree.IsSvara ? string.Empty : full[1..];
    }

    /// <summary>The Indic script whose svara letters are all that is sung, or none.</summary>
    private static Syllables? Sung(Score score)
    {
        foreach (var script in (IEnumerable<Syllables>)[Syllables.Devanagari, Syllables.Tamil, Syllables.Telugu, Syllables.Kannada, Syllables.Malayalam])
        {
            var dotted = script.WithOctaveDots();
            if (((IEnumerable<Section>)score.Sections).All(s => ((IEnumerable<ScoreNote>)s.Notes).All(n =>
                n.Syllable == script.SyllableOf(s.PitchOf(n).Tone) || n.Syllable == dotted.SyllableOf(s.PitchOf(n).Tone))))
            {
                return script;
            }
        }

        return null;
    }
}
