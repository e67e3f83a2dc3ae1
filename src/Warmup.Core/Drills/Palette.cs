namespace Warmup;

/// <summary>The different tones of a section and their syllables, in the order in which they first sound.</summary>
internal sealed class Palette
{
    private readonly (ScaleTone Tone, int FirstLine, string Syllable)[] _tones;

    public Palette(Syllables syllables, LineSurvey survey)
    {
        var letters = VariantLetters.Of(survey.Tones);
        _tones = new (ScaleTone, int, string)[survey.Tones.Length];
        for (var i = 0; i < _tones.Length; i++)
        {
            var (tone, line) = survey.Tones[i];
            _tones[i] = (tone, line, letters.Contains(tone.Degree) ? syllables.SyllableWithVariant(tone) : syllables.SyllableOf(tone));
        }
    }

    public int Count => _tones.Length;

    public ScaleTone Tone(int index) => _tones[index].Tone;

    /// <summary>The index of the pattern's line in which the tone first sounds.</summary>
    public int FirstLine(int index) => _tones[index].FirstLine;

    public string Syllable(int index) => _tones[index].Syllable;
}
