namespace Warmup;

/// <summary>The svara letters in Latin and in five Indic scripts, where they are those of the sung syllables (common practice).</summary>
internal static class SvaraScripts
{
    public static Syllables Latin { get; } = MappedSyllables.OfScript("svara", ["S", "R", "G", "M", "P", "D", "N"]);

    public static Syllables Sung { get; } = MappedSyllables.OfScript("sung", ["sa", "ri", "ga", "ma", "pa", "da", "ni"]);

    public static Syllables Devanagari { get; } = MappedSyllables.OfScript("devanagari", ["स", "रि", "ग", "म", "प", "ध", "नि"]);

    public static Syllables Tamil { get; } = MappedSyllables.OfScript("tamil", ["ஸ", "ரி", "க", "ம", "ப", "த", "நி"]);

    public static Syllables Telugu { get; } = MappedSyllables.OfScript("telugu", ["స", "రి", "గ", "మ", "ప", "ద", "ని"]);

    public static Syllables Kannada { get; } = MappedSyllables.OfScript("kannada", ["ಸ", "ರಿ", "ಗ", "ಮ", "ಪ", "ದ", "ನಿ"]);

    public static Syllables Malayalam { get; } = MappedSyllables.OfScript("malayalam", ["സ", "രി", "ഗ", "മ", "പ", "ധ", "നി"]);
}
