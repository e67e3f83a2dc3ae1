namespace Warmup.Sheets;

/// <summary>What is sung where it does not name the tones: a vowel, a hum, a word for each line. The sheet's letters do not show it.</summary>
internal static class SungWords
{
    // The project's own settings: enough for the vowel orders in use, and short enough for a row of the header.
    private const int MostLines = 8;
    private const int MostWords = 16;

    /// <summary>The words of the first time through, a stroke between lines (<c>mi / me / ma</c>), or none where tones have their names.</summary>
    public static string? Of(Section section)
    {
        if (section.Notes.Count == 0 || NamesTones(section))
        {
            return null;
        }

        var lines = section.Lines.Where(l => l.Round == section.Lines[0].Round).Select(l => Line(section, l)).ToList();
        var different = lines.Distinct().Count();
        return different == 1 ? lines[0] : string.Join(" / ", lines.Take(MostLines)) + (lines.Count > MostLines ? " / ..." : string.Empty);
    }

    private static bool NamesTones(Section section) => Syllables.All.Any(kind => kind.HasToneNames && section.IsSungIn(kind));

    private static string Line(Section section, ScoreLine line)
    {
        var words = section.Notes.Skip(line.FirstNote).Take(line.NoteCount).Select(section.SyllableOf).ToList();
        return words.Distinct().Count() == 1
            ? words[0]
            : string.Join(' ', words.Take(MostWords)) + (words.Count > MostWords ? " ..." : string.Empty);
    }
}
