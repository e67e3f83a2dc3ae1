namespace Warmup.Reading;

/// <summary>Finds the kind of syllables that gives what is written under the notes; otherwise keeps each note's own.</summary>
internal static class SyllableReading
{
    // As the core bounds what is sung on a note.
    private const int Longest = 20;

    /// <summary>The kind, or the syllables of the notes, or neither where nothing is written.</summary>
    public static (Syllables? Kind, string?[]? Sung) Of(RawNote[] notes, ScaleTone[] tones, Action<string, Rational> remark)
    {
        if (!Array.Exists(notes, n => n.Syllable is { Length: > 0 }))
        {
            return (null, null);
        }

        foreach (var kind in Syllables.All)
        {
            if (Gives(kind, notes, tones))
            {
                return (kind, null);
            }
        }

        var sung = new string?[notes.Length];
        for (var n = 0; n < notes.Length; n++)
        {
            var text = notes[n].Syllable ?? string.Empty;
            var kept = PlainText.Of(text, Longest);
            if (kept.Length < text.Trim().Length)
            {
                remark($"the syllable {TextError.Quote(text)} was cut to 20 characters that can be printed", notes[n].Onset);
            }

            sung[n] = kept;
        }

        return (null, sung);
    }

    /// <summary>The kind of syllables that names the tones of half of the notes or more; <see langword="null"/> where what is sung are words.</summary>
    public static Syllables? ToneNames(ValueList<Line> lines)
    {
        var sung = lines.SelectMany(l => l.Notes).Where(n => n.Sung is { Length: > 0 }).ToList();
        var best = Syllables.All.Where(k => k.HasToneNames).Select(k => (Kind: k, Count: sung.Count(n => Form(k, n.Sung!, n.Tone) is not null))).MaxBy(k => k.Count);
        return best.Count > 0 && 2 * best.Count >= sung.Count ? best.Kind : null;
    }

    /// <summary>What is sung where a note becomes another: the other's name for a name, otherwise the same word.</summary>
    public static string Renamed(Syllables kind, string sung, ScaleTone from, ScaleTone to) => Form(kind, sung, from) is { } form ? form(to) : sung;

    private static bool Gives(Syllables kind, RawNote[] notes, ScaleTone[] tones)
    {
        for (var n = 0; n < notes.Length; n++)
        {
            if (Form(kind, notes[n].Syllable ?? string.Empty, tones[n]) is null)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The form of a kind, with or without octave dots and variants, in which a text names a tone; <see langword="null"/> where it does not.</summary>
    private static Func<ScaleTone, string>? Form(Syllables kind, string sung, ScaleTone tone)
    {
        var (text, dots) = (Decomposed(sung), kind.WithOctaveDots());
        return text == kind.SyllableOf(tone) ? kind.SyllableOf
            : text == dots.SyllableOf(tone) ? dots.SyllableOf
            : text == kind.SyllableWithVariant(tone) ? kind.SyllableWithVariant
            : text == dots.SyllableWithVariant(tone) ? dots.SyllableWithVariant
            : null;
    }

    /// <summary>A letter with its dot as two characters, as the core has them; not by the runtime's normalisation, which some systems lack.</summary>
    public static string Decomposed(string text)
    {
        const string Above = "\u1E60S\u1E58R\u0120G\u1E40M\u1E56P\u1E0AD\u1E44N";
        const string Below = "\u1E62S\u1E5AR\u1E42M\u1E0CD\u1E46N";
        if (text.Length == 0 || text[0] < '\u0100')
        {
            return text;
        }

        var at = Above.IndexOf(text[0], StringComparison.Ordinal);
        if (at >= 0 && at % 2 == 0)
        {
            return $"{Above[at + 1]}\u0307{text.AsSpan(1)}";
        }

        at = Below.IndexOf(text[0], StringComparison.Ordinal);
        return at >= 0 && at % 2 == 0 ? $"{Below[at + 1]}\u0323{text.AsSpan(1)}" : text;
    }
}
