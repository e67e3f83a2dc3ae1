using System.Globalization;

namespace Warmup.MusicXml;

/// <summary>Refuses a score without sections, and text that XML 1.0 cannot hold, before anything is written.</summary>
internal static class XmlText
{
    public static void Check(Score score, MusicXmlOptions options)
    {
        if (score.Sections.IsEmpty)
        {
            throw new ExportException("a score must have at least 1 section to be written as MusicXML, not 0");
        }

        foreach (var verse in options.FurtherVerses)
        {
            foreach (var word in verse.Words)
            {
                Check(word, "a syllable of the words");
            }
        }

        Check(score.Title, "the score's title");
        foreach (var section in score.Sections)
        {
            Check(section.Title, "a section's title");
            foreach (var syllable in section.SungSyllables)
            {
                Check(syllable, "a syllable");
            }
        }
    }

    private static void Check(ReadOnlySpan<char> text, string what)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is >= ' ' and <= '~')
            {
                // Nearly every character.
                continue;
            }

            var c = text[i];
            var paired = char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            if (char.IsControl(c) || c is '\uFFFE' or '\uFFFF' || (char.IsSurrogate(c) && !paired))
            {
                throw new ExportException(string.Create(
                    CultureInfo.InvariantCulture, $"{what} must not hold control characters or lone surrogates (U+{(int)c:X4} at position {i + 1})"));
            }

            i += paired ? 1 : 0;
        }
    }
}
