namespace Warmup;

/// <summary>The svara letters in Latin and in five Indic scripts, where they are those of the sung syllables (common practice).</summary>
internal static class SvaraScripts
{
    public static Syllables Latin { get; } = MappedSyllables.OfLetters("svara", ["S", "R", "G", "M", "P", "D", "N"]);

    public static Syllables Sung { get; } = MappedSyllables.OfLetters("sung", ["sa", "ri", "ga", "ma", "pa", "da", "ni"]);

    public static Syllables Devanagari { get; } = MappedSyllables.OfLetters("devanagari", ["स", "रि", "ग", "म", "प", "ध", "नि"]);

    public static Syllables Tamil { get; } = MappedSyllables.OfLetters("tamil", ["ஸ", "ரி", "க", "ம", "ப", "த", "நி"]);

    public static Syllables Telugu { get; } = MappedSyllables.OfLetters("telugu", ["స", "రి", "గ", "మ", "ప", "ద", "ని"]);

    public static Syllables Kannada { get; } = MappedSyllables.OfLetters("kannada", ["ಸ", "ರಿ", "ಗ", "ಮ", "ಪ", "ದ", "ನಿ"]);

    public static Syllables Malayalam { get; } = MappedSyllables.OfLetters("malayalam", ["സ", "രി", "ഗ", "മ", "പ", "ധ", "നി"]);
}
