namespace Warmup.Sheets;

/// <summary>What is sung where it does not tell the tones apart: a vowel, a hum, one word a line. The sheet's letters do not say it.</summary>
internal static class SungWords
{
    // The project's own settings: enough for the orders in use, short enough for a row of the head.
    private const int MostLines = 8;
    private const int MostWords = 16;

    /// <summary>The words of the first time through, a stroke between lines (<c>mi / me / ma</c>), or none where tones have their names.</summary>
    public static string? Of(Section section)
    {
        if (section.Notes.Count == 0 || NamesTones(section))
        {
            return null;
        }

        var lines = ((IEnumerable<ScoreLine>)section.Lines).Where(l => l.Round == section.Lines[0].Round).Select(l => Line(section, l)).ToList();
        var different = lines.Distinct().Count();
        return different == 1 ? lines[0] : string.Join(" / ", lines.Take(MostLines)) + (lines.Count > MostLines ? " / ..." : string.Empty);
    }

    private static bool NamesTones(Section section) =>
        ((IEnumerable<Syllables>)Syllables.All).Where(kind => kind != Syllables.Vowel()).Any(kind =>
        {
            var dotted = kind.WithOctaveDots();
            return ((IEnumerable<ScoreNote>)section.Notes).All(n =>
                n.Syllable == kind.SyllableOf(section.PitchOf(n).Tone) || n.Syllable == dotted.SyllableOf(section.PitchOf(n).Tone));
        });

    private static string Line(Section section, ScoreLine line)
    {
        var words = ((IEnumerable<ScoreNote>)section.Notes).Skip(line.FirstNote).Take(line.NoteCount).Select(n => n.Syllable).ToList();
        return words.Distinct().Count() == 1
            ? words[0]
            : string.Join(' ', words.Take(MostWords)) + (words.Count > MostWords ? " ..." : string.Empty);
    }
}
