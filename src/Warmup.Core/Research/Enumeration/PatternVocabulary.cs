using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup.Research;

/// <summary>A choice of words over which patterns are enumerated: primitives with their numbers, combinators with theirs, and sums.</summary>
/// <remarks>
/// It says which words are counted; a <see cref="PatternLanguage"/> says which words can be read. Immutable, compared by value, safe to
/// share between threads.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<PatternVocabulary>))]
public sealed record PatternVocabulary : ISpanParsable<PatternVocabulary>
{
    private const int MostWords = 64;

    private PatternVocabulary(ValueList<Pattern> primitives, ValueList<UnaryPattern> combinators, ValueList<PatternWord> connectives, bool hasSum)
    {
        Primitives = primitives;
        Combinators = combinators;
        Connectives = connectives;
        HasSum = hasSum;
    }

    /// <summary>A small choice of usual words (the project's own): the counts of the documentation are made with it.</summary>
    public static PatternVocabulary Usual { get; } =
        Parse("ladder run figure(1 2 3) figure(1 3) .mirrored .reversed .backwards .there-and-back .ends .each-note(2) .up-down .take(3) .last-first .join +");

    /// <summary>The words that begin a pattern.</summary>
    internal ValueList<Pattern> Primitives { get; }

    /// <summary>Whether patterns are also joined to sums.</summary>
    internal bool HasSum { get; }

    private int Count => Primitives.Count + Combinators.Count + Connectives.Count + (HasSum ? 1 : 0);

    /// <summary>The combinators, each around a run that stands for anything.</summary>
    internal ValueList<UnaryPattern> Combinators { get; }

    /// <summary>The words of two patterns.</summary>
    internal ValueList<PatternWord> Connectives { get; }

    /// <summary>
    /// Reads a choice: primitives, combinators with their dot and numbers, <c>+</c> for sums, all separated by spaces, such as
    /// <c>ladder figure(1 2 3) .reversed .take(3) .alternate +</c>.
    /// </summary>
    /// <param name="words">At most 64 words of the library; a word that stands there twice counts once. Words that change nothing, such as <c>.repeat(1)</c>, are refused.</param>
    /// <exception cref="WarmupFormatException">A word cannot be read; the error has the place and the fix.</exception>
    public static PatternVocabulary Parse(string words) => Parse(words, PatternLanguage.Standard);

    /// <summary>Reads a choice as <see cref="Parse(string)"/> does, over the words of a language.</summary>
    /// <param name="words">At most 64 words.</param>
    /// <param name="language">The words that can be read.</param>
    /// <exception cref="WarmupFormatException">A word cannot be read; the error has the place and the fix.</exception>
    public static PatternVocabulary Parse(string words, PatternLanguage language)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(language);
        return Read(words, language, out var error) ?? throw error!.ToException();
    }

    /// <summary>Reads a choice as <see cref="Parse(string)"/> does, or says what is wrong with it.</summary>
    /// <param name="words">At most 64 words of the library.</param>
    /// <param name="vocabulary">The choice, or <see langword="null"/>.</param>
    /// <param name="error">The place and what was expected, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a choice of words.</returns>
    public static bool TryParse(string words, [NotNullWhen(true)] out PatternVocabulary? vocabulary, [NotNullWhen(false)] out TextError? error)
    {
        ArgumentNullException.ThrowIfNull(words);
        vocabulary = Read(words, PatternLanguage.Standard, out error);
        return vocabulary is not null;
    }

    /// <summary>The words as <see cref="Parse(string)"/> reads them.</summary>
    public override string ToString() => string.Join(' ', (string[])
    [
        .. Primitives.ConvertAll(p => p.Text), .. Combinators.ConvertAll(c => $".{c.Operation}"), .. Connectives.ConvertAll(c => $".{c.Name}"), .. HasSum ? ["+"] : (string[])[],
    ]);

    static PatternVocabulary IParsable<PatternVocabulary>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static PatternVocabulary ISpanParsable<PatternVocabulary>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s.ToString());

    static bool IParsable<PatternVocabulary>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out PatternVocabulary result)
    {
        result = null;
        return s is not null && TryParse(s, out result, out _);
    }

    static bool ISpanParsable<PatternVocabulary>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out PatternVocabulary result) =>
        TryParse(s.ToString(), out result, out _);

    private static PatternVocabulary? Read(string words, PatternLanguage language, out TextError? error)
    {
        var primitives = new List<Pattern>();
        var combinators = new List<UnaryPattern>();
        var connectives = new List<PatternWord>();
        var hasSum = false;
        error = null;
        foreach (var (column, word) in Split(words))
        {
            if (word == "+")
            {
                hasSum = true;
            }
            else if (word[0] == '.' && language.Find(word.AsSpan(1)) is { Takes: WordTakes.Pattern } connective)
            {
                connectives.Add(connective);
            }
            else if (!language.TryParse(word[0] == '.' ? "run" + word : word, out var pattern, out var wrong))
            {
                error = TextError.At(column, wrong.Message);
                return null;
            }
            else if (word[0] == '.' && pattern is UnaryPattern { Inner: RunPattern, IsIdentity: false } unary)
            {
                combinators.Add(unary);
            }
            else if (word[0] != '.' && pattern is PrimitivePattern or WrittenPattern && pattern is not EmptyPattern)
            {
                primitives.Add(pattern);
            }
            else
            {
                error = TextError.At(column, $"{TextError.Quote(word)} must be one word that changes something; write ladder.ends as ladder .ends");
                return null;
            }
        }

        var vocabulary = new PatternVocabulary(
            primitives.Distinct().ToValueList(), combinators.Distinct().ToValueList(), connectives.Distinct().ToValueList(), hasSum);
        if (vocabulary.Primitives.IsEmpty || vocabulary.Count > MostWords)
        {
            error = TextError.At(1, string.Create(
                CultureInfo.InvariantCulture, $"a choice needs a primitive such as ladder and at most {MostWords} words, not {vocabulary.Count}"));
            return null;
        }

        return vocabulary;
    }

    private static IEnumerable<(int Column, string Word)> Split(string words)
    {
        var start = -1;
        var open = 0;
        for (var i = 0; i <= words.Length; i++)
        {
            var c = i < words.Length ? words[i] : ' ';
            open += c is '(' or '[' ? 1 : c is ')' or ']' ? -1 : 0;
            if (char.IsWhiteSpace(c) && (open <= 0 || i == words.Length))
            {
                if (start >= 0)
                {
                    yield return (start + 1, words[start..i]);
                }

                start = -1;
            }
            else if (start < 0)
            {
                start = i;
            }
        }
    }
}
