using System.Globalization;

namespace Warmup;

/// <summary>One syllable for each of the seven letters: svara letters in a script, or the caller's own.</summary>
internal sealed record LetterSyllables : Syllables
{
    public LetterSyllables(string name, ValueList<string> letters)
    {
        Name = Singable(name, "the name of the syllables");
        if (letters.Count != 7)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"syllables need 7 texts for S R G M P D N, not {letters.Count}"), nameof(letters));
        }

        foreach (var letter in letters)
        {
            Singable(letter, "a syllable");
        }

        Letters = letters;
    }

    public override string Name { get; }

    public ValueList<string> Letters { get; }

    public override string SyllableOf(ScaleTone tone) => tone.Degree.IsSvara ? Letters[tone.Degree.Letter - 1] : tone.Degree.ToNumber();
}
