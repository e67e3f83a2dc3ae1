namespace Warmup;

/// <summary>The different tones of a section and their syllables.</summary>
internal sealed class Palette(Syllables syllables, VariantLetters letters)
{
    private const int UsualTones = 8;

    private readonly List<(ScaleTone Tone, int FirstLine, string Syllable)> _tones = new(UsualTones);

    // One more than each tone's index, octave by octave as they are met: notes are many and ask for theirs one by one.
    private readonly short[]?[] _indexes = new short[]?[(2 * ScaleTone.HighestOctave) + 1];

    public int Count => _tones.Count;

    public ScaleTone Tone(int index) => _tones[index].Tone;

    /// <summary>The index of the pattern's line in which the tone first sounds.</summary>
    public int FirstLine(int index) => _tones[index].FirstLine;

    public string Syllable(int index) => _tones[index].Syllable;

    public int IndexOf(ScaleTone tone, int line)
    {
        var octave = _indexes[tone.Octave + ScaleTone.HighestOctave] ??= new short[Degree.Count];
        ref var index = ref octave[tone.Degree.Ordinal];
        if (index == 0)
        {
            _tones.Add((tone, line, letters.Contains(tone.Degree) ? syllables.SyllableWithVariant(tone) : syllables.SyllableOf(tone)));
            index = (short)_tones.Count;
        }

        return index - 1;
    }
}
