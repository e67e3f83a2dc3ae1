namespace Warmup.MusicXml;

/// <summary>A further verse under the notes: syllables by tone, or words.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record MusicXmlVerse
{
    /// <summary>The most syllables of a text: 10,000 (the project's own bound).</summary>
    public static int MostWords => 10_000;

    private MusicXmlVerse(Syllables? syllables, ValueList<string> words) => (Syllables, Words) = (syllables, words);

    /// <summary>The syllables by tone, or <see langword="null"/> where the verse is words.</summary>
    public Syllables? Syllables { get; }

    /// <summary>The syllables of the words; empty where they follow the tone.</summary>
    public ValueList<string> Words { get; }

    /// <summary>A verse that follows the tone, such as svara letters under a drill that is sung on a vowel.</summary>
    /// <param name="syllables">The syllables.</param>
    public static MusicXmlVerse Of(Syllables syllables)
    {
        ArgumentNullException.ThrowIfNull(syllables);
        return new(syllables, []);
    }

    /// <summary>Words: a syllable for each note from the beginning of each line, and from the first again where the line is longer.</summary>
    /// <param name="syllables">
    /// 1 to 10,000 syllables. One with a hyphen at its end (<c>lan-</c>) joins the next; an empty one continues the one before.
    /// </param>
    /// <exception cref="ArgumentException">There are none or too many, one is missing, or the first is empty.</exception>
    /// <remarks>Control characters are refused when the file is written.</remarks>
    public static MusicXmlVerse OfWords(ValueList<string> syllables)
    {
        if (syllables.Count < 1 || syllables.Count > MostWords)
        {
            throw new ArgumentException($"words must have between 1 and {MostWords} syllables, not {syllables.Count}", nameof(syllables));
        }

        foreach (var syllable in syllables)
        {
            ArgumentNullException.ThrowIfNull(syllable, nameof(syllables));
        }

        return syllables[0].Length > 0
            ? new(null, syllables)
            : throw new ArgumentException("the first syllable must not be empty: there is none before it to continue", nameof(syllables));
    }

    /// <summary>The kind of syllables, or the first words.</summary>
    public override string ToString() => Syllables?.ToString() ?? OneLine.Of(string.Join(' ', Words));
}
