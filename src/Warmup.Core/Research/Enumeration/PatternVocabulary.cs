using System.Globalization;

namespace Warmup.Research;

/// <summary>A choice of primitives and combinators over which patterns are enumerated.</summary>
/// <remarks>Immutable, value equality, safe to share between threads.</remarks>
public sealed record PatternVocabulary
{
    /// <summary>The most words of a choice.</summary>
    public const int MostWords = 64;

    private PatternVocabulary(ValueList<Pattern> primitives, ValueList<UnaryPattern> combinators, ValueList<PatternWord> connectives, bool hasSum)
    {
        Primitives = primitives;
        Combinators = combinators;
        Connectives = connectives;
        HasSum = hasSum;
    }

    /// <summary>A small choice of usual words (the project's own): the counts of the documentation are made with it.</summary>
    public static PatternVocabulary Usual { get; } =
        Parse("ladder run figure(0 1 2) figure(0 2) .mirrored .reversed .backwards .there-and-back .ends .each-note(2) .up-down .take(3) .last-first .join +");

    /// <summary>The words that begin a pattern.</summary>
    public ValueList<Pattern> Primitives { get; }

    /// <summary>Whether patterns are also joined to sums.</summary>
    public bool HasSum { get; }

    /// <summary>The number of words.</summary>
    public int Count => Primitives.Count + Combinators.Count + Connectives.Count + (HasSum ? 1 : 0);

    /// <summary>The combinators, each around a run that stands for anything.</summary>
    internal ValueList<UnaryPattern> Combinators { get; }

    internal ValueList<PatternWord> Connectives { get; }

    /// <summary>
    /// Reads a choice: primitives, combinators with their dot and numbers, <c>+</c> for sums, all separated by spaces, such as
    /// <c>ladder figure(0 1 2) .reversed .take(3) .alternate +</c>.
    /// </summary>
    /// <param name="words">The words; at most 64, each once. Words that change nothing, such as <c>repeat(1)</c>, are refused.</param>
    /// <exception cref="WarmupFormatException">A word cannot be read.</exception>
    public static PatternVocabulary Parse(string words)
    {
        var primitives = new List<Pattern>();
        var combinators = new List<UnaryPattern>();
        var connectives = new List<PatternWord>();
        var hasSum = false;
        foreach (var (column, word) in Split(words))
        {
            if (word == "+")
            {
                hasSum = true;
            }
            else if (word[0] == '.' && PatternWord.Find(word.AsSpan(1)) is { Takes: WordTakes.Pattern } connective)
            {
                connectives.Add(connective);
            }
            else
            {
                Add(word, column, primitives, combinators);
            }
        }

        var vocabulary = new PatternVocabulary(
            primitives.Distinct().ToValueList(), combinators.Distinct().ToValueList(), connectives.Distinct().ToValueList(), hasSum);
        return vocabulary.Primitives.IsEmpty || vocabulary.Count > MostWords
            ? throw TextError.At(1, string.Create(
                CultureInfo.InvariantCulture, $"a choice needs a primitive such as ladder and at most {MostWords} words, not {vocabulary.Count}")).ToException()
            : vocabulary;
    }

    /// <summary>The words as <see cref="Parse"/> reads them.</summary>
    public override string ToString() => string.Join(' ', (IEnumerable<string>)[
        .. Primitives.ConvertAll(p => p.Text), .. Combinators.ConvertAll(c => "." + c.Operation), .. Connectives.ConvertAll(c => "." + c.Name), .. HasSum ? ["+"] : (string[])[]]);

    private static void Add(string word, int column, List<Pattern> primitives, List<UnaryPattern> combinators)
    {
        var behindDot = word[0] == '.';
        if (!Pattern.TryParse(behindDot ? "run" + word : word, out var pattern, out var error))
        {
            throw TextError.At(column, error!.Message).ToException();
        }

        switch (pattern)
        {
            case UnaryPattern { Inner: RunPattern } unary when behindDot && !unary.IsIdentity:
                combinators.Add(unary);
                break;
            case PrimitivePattern or WrittenPattern when !behindDot && pattern is not EmptyPattern:
                primitives.Add(pattern);
                break;
            default:
                throw TextError.At(column, $"{TextError.Quote(word)} must be one word that does something; write ladder.ends as ladder .ends").ToException();
        }
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
