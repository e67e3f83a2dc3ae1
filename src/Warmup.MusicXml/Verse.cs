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

    // The kinds of letters to which octaves are added as dots, as sheets do.
    private static readonly ValueList<Syllables> Letters =
        [Syllables.SvaraLetters, Syllables.Devanagari, Syllables.Tamil, Syllables.Telugu, Syllables.Kannada, Syllables.Malayalam, Syllables.Numbers];

    /// <summary>The score's own syllables; svara letters have a dot for each octave.</summary>
    public static Verse Sung(Section section)
    {
        if (Dotted(section) is { } dotted)
        {
            return new Verse(section, n => dotted[section.Notes.AsSpan()[n].PitchIndex], true);
        }

        var isPlain = true;
        foreach (ref readonly var note in section.Notes.AsSpan())
        {
            isPlain &= section.SungSyllables.AsSpan()[note.SyllableIndex] is [.., not '-'];
        }

        return new Verse(section, n => section.SyllableOf(section.Notes.AsSpan()[n]), isPlain);
    }

    /// <summary>The score's own syllables: one for each line, and one after each gap.</summary>
    public static Verse OneALine(Section section)
    {
        var dotted = Dotted(section);
        return new(
            section,
            n => n > 0 && Follows(section, n) ? string.Empty : dotted?[section.Notes.AsSpan()[n].PitchIndex] ?? section.SyllableOf(section.Notes.AsSpan()[n]),
            false);
    }

    public static Verse Further(Section section, MusicXmlVerse verse)
    {
        if (verse.Syllables is { } syllables)
        {
            var byPitch = Letters.Contains(syllables) ? Dotted(section, syllables) : [.. section.Pitches.ConvertAll(p => syllables.SyllableOf(p.Tone))];
            return new Verse(section, n => byPitch[section.Notes.AsSpan()[n].PitchIndex], true);
        }

        return new Verse(
            section,
            n => verse.Words[(n - section.Lines.AsSpan()[section.Notes.AsSpan()[n].LineIndex].FirstNote) % verse.Words.Count],
            false);
    }

    /// <summary>The letter of each pitch with its octave's dots, where the section is sung in letters and leaves the middle octave.</summary>
    private static string[]? Dotted(Section section)
    {
        var leaves = false;
        foreach (ref readonly var pitch in section.Pitches.AsSpan())
        {
            leaves |= pitch.Tone.Octave != 0;
        }

        foreach (var kind in Letters)
        {
            if (leaves && section.IsSungIn(kind))
            {
                return Dotted(section, kind);
            }
        }

        return null;
    }

    /// <summary>The letter of each pitch with its octave's dots, and with its variant where the section has the letter at several pitches.</summary>
    private static string[] Dotted(Section section, Syllables kind)
    {
        var dots = kind.WithOctaveDots();
        return [.. section.Pitches.ConvertAll(p => section.HasSeveralOf(p.Tone.Degree) ? dots.SyllableWithVariant(p.Tone) : dots.SyllableOf(p.Tone)).Select(Precomposed)];
    }

    /// <summary>
    /// A letter and its dot as the one character that Unicode has for both: an engraver drops a dot of its own. G and P have none with a dot below. Not
    /// by the runtime's normalisation, which does nothing on systems without its tables.
    /// </summary>
    private static string Precomposed(string syllable)
    {
        const string Above = "S\u1E60R\u1E58G\u0120M\u1E40P\u1E56D\u1E0AN\u1E44";
        const string Below = "S\u1E62R\u1E5AM\u1E42D\u1E0CN\u1E46";
        if (syllable.Length < 2 || syllable[1] is not ('\u0307' or '\u0323'))
        {
            return syllable;
        }

        var letters = syllable[1] == '\u0307' ? Above : Below;
        var at = letters.IndexOf(syllable[0], StringComparison.Ordinal);
        return at < 0 ? syllable : $"{letters[at + 1]}{syllable.AsSpan(2)}";
    }

    /// <summary>Whether a note has a syllable of its own.</summary>
    public bool Has(int note) => _roles is null || _roles[note].HasFlag(Role.Has);

    /// <summary>Whether there is such a note and it continues the syllable before.</summary>
    public bool Continues(int note) => _roles is not null && note < _roles.Length && _roles[note].HasFlag(Role.Continues);

    /// <summary>Whether the syllable continues a word.</summary>
    public bool JoinsBefore(int note) => _roles is not null && _roles[note].HasFlag(Role.JoinsBefore);

    /// <summary>Whether the next syllable continues the word.</summary>
    public bool JoinsAfter(int note) => _roles is not null && _roles[note].HasFlag(Role.JoinsAfter);

    /// <summary>Whether every note has a syllable of its own and none joins another.</summary>
    public bool IsPlain => _roles is null;

    /// <summary>The syllable where every note has one of its own and none joins another; else <see langword="null"/>.</summary>
    public string? Plain(int note) => _roles is null ? _text(note) : null;

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
