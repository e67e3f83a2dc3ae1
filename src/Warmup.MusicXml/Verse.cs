namespace Warmup.MusicXml;

/// <summary>
/// The syllables of a section's notes. A note without a syllable continues the one before it as long as it follows in its line without a gap;
/// after a gap it has none.
/// </summary>
internal sealed class Verse
{
    private readonly Func<int, string> _text;

    // Only where a note has no syllable of its own or syllables join to words.
    private readonly Role[]? _roles;

    private Verse(Section section, Func<int, string> text, bool isPlain)
    {
        _text = text;
        _roles = isPlain ? null : Roles(section, text);
    }

    [Flags]
    private enum Role : byte
    {
        None = 0,
        Has = 1,
        Continues = 2,
        JoinsBefore = 4,
        JoinsAfter = 8,
    }

    /// <summary>The score's own syllables.</summary>
    public static Verse Sung(Section section)
    {
        var isPlain = true;
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            isPlain &= note.Syllable is [.., not '-'];
        }

        return new Verse(section, n => section.Notes.AsSpan()[n].Syllable, isPlain);
    }

    /// <summary>The score's own syllables: one for each line, and one after each gap.</summary>
    public static Verse OneALine(Section section) => new(
        section, n => n > 0 && Follows(section, n) ? string.Empty : section.Notes.AsSpan()[n].Syllable, false);

    public static Verse Further(Section section, MusicXmlVerse verse)
    {
        if (verse.Syllables is { } syllables)
        {
            var byPitch = section.Pitches.ConvertAll(p => syllables.SyllableOf(p.Tone));
            return new Verse(section, n => byPitch[section.Notes.AsSpan()[n].PitchIndex], true);
        }

        return new Verse(
            section,
            n => verse.Words[(n - section.Lines.AsSpan()[section.Notes.AsSpan()[n].LineIndex].FirstNote) % verse.Words.Count],
            false);
    }

    /// <summary>Whether a note has a syllable of its own.</summary>
    public bool Has(int note) => _roles is null || _roles[note].HasFlag(Role.Has);

    /// <summary>Whether there is such a note and it continues the syllable before.</summary>
    public bool Continues(int note) => _roles is not null && note < _roles.Length && _roles[note].HasFlag(Role.Continues);

    /// <summary>Whether the syllable continues a word.</summary>
    public bool JoinsBefore(int note) => _roles is not null && _roles[note].HasFlag(Role.JoinsBefore);

    /// <summary>Whether the next syllable continues the word.</summary>
    public bool JoinsAfter(int note) => _roles is not null && _roles[note].HasFlag(Role.JoinsAfter);

    /// <summary>The syllable, without the hyphen that joins it to the next.</summary>
    public ReadOnlySpan<char> Text(int note)
    {
        var text = _text(note);
        return _roles is not null && IsJoined(text) ? text.AsSpan(0, text.Length - 1) : text;
    }

    private static Role[] Roles(Section section, Func<int, string> text)
    {
        var roles = new Role[section.Notes.Count];
        foreach (var line in section.Lines)
        {
            var last = -1;
            for (var n = line.FirstNote; n < line.FirstNote + line.NoteCount; n++)
            {
                var syllable = text(n);
                if (syllable.Length == 0)
                {
                    roles[n] = n > line.FirstNote && roles[n - 1] != Role.None && Follows(section, n) ? Role.Continues : Role.None;
                    continue;
                }

                roles[n] = Role.Has;
                if (last >= 0 && IsJoined(text(last)))
                {
                    roles[last] |= Role.JoinsAfter;
                    roles[n] |= Role.JoinsBefore;
                }

                last = n;
            }
        }

        return roles;
    }

    private static bool Follows(Section section, int note)
    {
        var notes = section.Notes.AsSpan();
        return notes[note].LineIndex == notes[note - 1].LineIndex && notes[note].OnsetSteps == notes[note - 1].EndSteps;
    }

    private static bool IsJoined(string syllable) => syllable.Length > 1 && syllable[^1] == '-';
}
