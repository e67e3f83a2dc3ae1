namespace Warmup;

/// <summary>What is sung on each note.</summary>
/// <remarks>Immutable, value equality.</remarks>
public abstract record Syllables
{
    private protected Syllables()
    {
    }

    /// <summary>The svara's letter: S R G M P D N (common practice).</summary>
    public static Syllables SvaraLetters { get; } = new SvaraLetterSyllables();

    /// <summary>The same open vowel on every note.</summary>
    /// <param name="vowel">The sung text: 1 to 20 characters without control characters.</param>
    /// <exception cref="ArgumentException">The text is empty, too long or holds control characters.</exception>
    public static Syllables Vowel(string vowel = "a") => new VowelSyllables(vowel);

    /// <summary>The syllable of a tone.</summary>
    /// <param name="tone">The tone.</param>
    public abstract string SyllableOf(ScaleTone tone);
}

internal sealed record SvaraLetterSyllables : Syllables
{
    private static readonly string[] Letters = ["S", "R", "G", "M", "P", "D", "N"];

    public override string SyllableOf(ScaleTone tone) => tone.Degree.IsSvara ? Letters[tone.Degree.Letter - 1] : tone.Degree.ToNumber();
}

internal sealed record VowelSyllables : Syllables
{
    public VowelSyllables(string vowel)
    {
        if (string.IsNullOrWhiteSpace(vowel))
        {
            throw new ArgumentException("a vowel must have 1 to 20 characters", nameof(vowel));
        }

        Text = Require.PlainText(vowel, 20);
    }

    public string Text { get; }

    public override string SyllableOf(ScaleTone tone) => Text;
}
