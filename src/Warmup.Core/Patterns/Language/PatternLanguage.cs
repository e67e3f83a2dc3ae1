using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>
/// The words that patterns are read in: those of the library and those that a program adds. <c>PatternLanguage.Standard.With(word)</c>
/// reads the combinator <c>word</c> too.
/// </summary>
/// <remarks>
/// Only reading needs it: a pattern with an added word is built, printed, compared, normalised and expanded without. Immutable, compared
/// by value, safe to share between threads.
/// </remarks>
public sealed class PatternLanguage : IEquatable<PatternLanguage>
{
    // No word is nearly as long; what is longer is no slip of the finger.
    private const int LongestNear = 32;

    private PatternLanguage(ValueList<PatternWord> words) => Words = words;

    /// <summary>The library's own words.</summary>
    public static PatternLanguage Standard { get; } = new(StandardWords.All);

    /// <summary>The words: the library's primitives, its combinators, then those that were added.</summary>
    public ValueList<PatternWord> Words { get; }

    /// <summary>The language with one more word.</summary>
    /// <param name="combinator">The combinator; its name must not be in use.</param>
    /// <exception cref="ArgumentException">The language has a word of this name already.</exception>
    public PatternLanguage With(Combinator combinator)
    {
        ArgumentNullException.ThrowIfNull(combinator);
        return Find(combinator.Name) is null
            ? new PatternLanguage([.. Words, PatternWord.Of(combinator)])
            : throw new ArgumentException($"the language has a word '{combinator.Name}' already; give the combinator another name", nameof(combinator));
    }

    /// <summary>Reads a pattern's text: <c>ladder.reversed + ladder.ends</c>.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <exception cref="WarmupFormatException">The text is not a pattern; the error has the place and the fix.</exception>
    public Pattern Parse(string text) => TryParse(text, out var pattern, out var error) ? pattern : throw error.ToException();

    /// <summary>Reads a pattern's text, or says what is wrong with it.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <param name="pattern">The pattern, or <see langword="null"/>.</param>
    /// <param name="error">The place and what was expected, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a pattern.</returns>
    public bool TryParse(string text, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        return PatternText.TryRead(this, text, out pattern, out error);
    }

    /// <summary>Whether the other is a language of the same words.</summary>
    /// <param name="obj">The other.</param>
    public override bool Equals(object? obj) => obj is PatternLanguage other && Words == other.Words;

    bool IEquatable<PatternLanguage>.Equals(PatternLanguage? other) => Equals((object?)other);

    /// <summary>A hash of the words.</summary>
    public override int GetHashCode() => Words.GetHashCode();

    /// <summary>The number of words, and the names of those that were added.</summary>
    public override string ToString()
    {
        var added = Words.Where(w => w.Added is not null).Select(w => w.Name).ToValueList();
        return OneLine.Of($"{English.Count(Words.Count - added.Count, "word")} of the library{(added.IsEmpty ? string.Empty : $", and {English.List(added)}")}");
    }

    /// <summary>A word by its name, in capitals or small letters.</summary>
    internal PatternWord? Find(ReadOnlySpan<char> name)
    {
        foreach (var word in Words)
        {
            if (name.Equals(word.Name, StringComparison.OrdinalIgnoreCase))
            {
                return word;
            }
        }

        return null;
    }

    /// <summary>What is wrong with a name that is no word, and the word that may be meant.</summary>
    /// <param name="name">The name as it was typed.</param>
    /// <param name="wanted">The words that can stand in its place.</param>
    internal string Unknown(ReadOnlySpan<char> name, Func<PatternWord, bool> wanted)
    {
        var quoted = TextError.Quote(name);
        foreach (var word in Words)
        {
            if (word.FormerName is { } former && name.Equals(former, StringComparison.OrdinalIgnoreCase))
            {
                return $"the word {quoted} is now called '{word.Name}'";
            }
        }

        return Near(name, wanted) is { } near
            ? $"unknown word {quoted}, perhaps {near}"
            : $"unknown word {quoted}; the words that can stand here are {Names(wanted)}";
    }

    /// <summary>The names of some of the words, for a message.</summary>
    internal string Names(Func<PatternWord, bool> wanted) => string.Join(", ", Words.Where(wanted).Select(w => w.Name));

    /// <summary>The word that a mistyped one is nearest to, at most a third of its letters away; none where none is near.</summary>
    private string? Near(ReadOnlySpan<char> name, Func<PatternWord, bool> wanted)
    {
        if (name.Length > LongestNear)
        {
            return null;
        }

        var typed = name.ToString().ToLowerInvariant();
        return Words.Where(wanted)
            .Select(w => (w.Name, Distance: ScaleName.Distance(typed, w.Name)))
            .Where(w => w.Distance <= Math.Max(1, w.Name.Length / 3))
            .OrderBy(w => w.Distance).ThenBy(w => w.Name, StringComparer.Ordinal)
            .FirstOrDefault().Name;
    }
}
