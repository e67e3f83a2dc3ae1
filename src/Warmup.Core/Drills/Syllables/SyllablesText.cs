using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>Reads and writes the kinds of syllables.</summary>
internal static class SyllablesText
{
    private const int LongestSyllable = 20;
    private const string Vowel = "vowel";
    private const string Dotted = "dotted";

    public static string VowelText(string vowel) => $"{Vowel}: {vowel}";

    public static string DottedText(Syllables inner) => $"{Dotted}: {inner.ToText()}";

    /// <summary>The pairs of a mapping: a letter where all its svaras are sung alike, otherwise each degree.</summary>
    public static string Write(string name, Func<Degree, string> textOf)
    {
        var pairs = new List<string>();
        foreach (var letter in Degree.All.GroupBy(d => d.Letter))
        {
            var svaras = letter.Where(d => d.IsSvara).ToList();
            var isOne = textOf(svaras[0]).Length > 0 && svaras.TrueForAll(d => textOf(d) == textOf(svaras[0]));
            if (isOne)
            {
                pairs.Add($"{svaras[0].SvaraLetter}={textOf(svaras[0])}");
            }

            pairs.AddRange(letter.Where(d => textOf(d).Length > 0 && !(isOne && d.IsSvara)).Select(d => $"{d}={textOf(d)}"));
        }

        return $"{name}: {string.Join(", ", pairs)}";
    }

    public static string RequireSyllable(string text, string what = "a syllable") => Require.Name(text, LongestSyllable, what).Contains(',', StringComparison.Ordinal)
        ? throw new ArgumentException($"{what} must not hold a comma, which separates syllables in text")
        : text;

    public static string RequireKindName(string name) =>
        Require.Name(name, LongestSyllable).Contains(':', StringComparison.Ordinal) || IsReserved(name)
            ? throw new ArgumentException($"name must not be {Vowel} or {Dotted} nor hold a colon, not '{name}'", nameof(name))
            : name;

    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out Syllables? syllables, [NotNullWhen(false)] out TextError? error)
    {
        syllables = null;
        error = null;
        var text = cursor.Trimmed();
        foreach (var named in Syllables.All)
        {
            if (text.Rest.Equals(named.Name, StringComparison.OrdinalIgnoreCase))
            {
                syllables = named;
                return true;
            }
        }

        var start = text;
        var name = text.TakeWhile(static c => c != ':').TrimEnd();
        if (!text.TryTake(':'))
        {
            error = start.Error($"unknown syllables {TextError.Quote(start.Rest)}; write {string.Join(", ", Syllables.All.ConvertAll(s => s.Name))}, or vowel: with the text");
            return false;
        }

        text = text.Trimmed();
        if (name.Equals(Dotted, StringComparison.OrdinalIgnoreCase))
        {
            syllables = TryRead(text, out var inner, out error) ? inner.WithOctaveDots() : null;
            return error is null && syllables is not null;
        }

        return name.Equals(Vowel, StringComparison.OrdinalIgnoreCase)
            ? TryReadVowel(text, out syllables, out error)
            : TryReadPairs(start, name.ToString(), text, out syllables, out error);
    }

    private static bool IsReserved(ReadOnlySpan<char> name) =>
        name.Equals(Vowel, StringComparison.OrdinalIgnoreCase) || name.Equals(Dotted, StringComparison.OrdinalIgnoreCase);

    private static bool TryReadVowel(TextCursor text, [NotNullWhen(true)] out Syllables? syllables, [NotNullWhen(false)] out TextError? error)
    {
        var vowel = text.Rest.ToString();
        error = Require.NameFault(vowel, LongestSyllable) is null
            ? null
            : text.Error($"{TextError.Quote(vowel)} is not a vowel to sing; write 1 to 20 characters without control characters, such as vowel: ee");
        syllables = error is null ? Syllables.Vowel(vowel) : null;
        return syllables is not null;
    }

    private static bool TryReadPairs(
        TextCursor start, string name, TextCursor text, [NotNullWhen(true)] out Syllables? syllables, [NotNullWhen(false)] out TextError? error)
    {
        syllables = null;
        if (Require.NameFault(name, LongestSyllable) is { } fault)
        {
            error = start.Error($"the name {TextError.Quote(name)} of syllables {fault}");
            return false;
        }

        var sung = new Dictionary<Degree, string>();
        do
        {
            var from = text.Position;
            text.TakeWhile(static c => c != ',');
            var pair = text.Word(from).Trimmed();
            var at = pair;
            var key = pair.TakeWhile(static c => c != '=').TrimEnd();
            var degrees = DegreesOf(key);
            if (degrees.IsEmpty || !pair.TryTake('='))
            {
                error = at.Error($"{TextError.Quote(at.Rest)} must be a svara and its syllable, such as R2=ri, or a letter for all its svaras, such as R=ri");
                return false;
            }

            var syllable = pair.Trimmed();
            var sound = syllable.Rest.ToString();
            if (Require.NameFault(sound, LongestSyllable) is { } wrong)
            {
                error = syllable.Error($"the syllable {TextError.Quote(sound)} {wrong}");
                return false;
            }

            foreach (var degree in degrees)
            {
                sung[degree] = sound;
            }
        }
        while (text.TryTake(','));

        error = null;
        syllables = Syllables.Custom(name, sung.GetValueOrDefault);
        return true;
    }

    /// <summary>The svaras of a letter, or the one degree; none where the text is neither.</summary>
    private static ValueList<Degree> DegreesOf(ReadOnlySpan<char> key)
    {
        if (Degree.TryRead(new TextCursor(key), out var one))
        {
            return [one];
        }

        var letter = key.Length == 1 ? key[0] : ' ';
        return Degree.All.Where(d => d.IsSvara && d.SvaraLetter == letter).ToValueList();
    }
}
