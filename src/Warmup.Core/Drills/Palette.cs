namespace Warmup;

/// <summary>The different tones of a section and their syllables, in the order in which they first sound.</summary>
internal sealed class Palette
{
    private readonly ReadOnlyMemory<LineTone> _tones;
    private readonly string[] _syllables;

    public Palette(Syllables syllables, in LineSurvey survey)
    {
        _tones = survey.Tones;
        var tones = _tones.Span;
        var letters = VariantLetters.Of(tones);
        _syllables = new string[tones.Length];
        for (var i = 0; i < tones.Length; i++)
        {
            var tone = tones[i].Tone;
            _syllables[i] = letters.Contains(tone.Degree) ? syllables.SyllableWithVariant(tone) : syllables.SyllableOf(tone);
        }
    }

    /// <summary>The syllable of each tone.</summary>
    public ValueList<string> Syllables => ValueList.Adopt(_syllables);

    /// <summary>The tones.</summary>
    public ReadOnlySpan<LineTone> Tones => _tones.Span;
}
