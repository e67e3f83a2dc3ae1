using System.Globalization;

namespace Warmup;

/// <summary>
/// A combinator that a program adds: a word with a function from lines to lines. Patterns with it are built by <see cref="Apply"/>,
/// printed, compared, normalised, expanded and described as those of the library are; a <see cref="PatternLanguage"/> that has the word
/// reads them back from text and JSON.
/// </summary>
/// <remarks>
/// <para>The functions must be pure: the same lines for the same input, in every thread. They are called at each expansion.</para>
/// <para>Two combinators are equal when all their members are. Functions are equal when they are the same static method or the same
/// lambda without captured variables; so define a combinator once and share it. Immutable, safe to share between threads.</para>
/// </remarks>
public sealed record Combinator
{
    private const int LongestName = 32;
    private const int LongestMeaning = 200;
    private const int MostNumbers = 64;

    /// <summary>Makes a combinator without numbers that promises nothing.</summary>
    /// <param name="name">The word: small letters a to z, with hyphens between them; at most 32 characters, and no word of the library.</param>
    /// <param name="meaning">What it does, in a few words; <c>n</c> stands for its number. At most 200 characters.</param>
    /// <param name="rule">The function from lines to lines.</param>
    /// <exception cref="ArgumentException">The name is not such a word, or the library has it already; or the meaning is empty or too long.</exception>
    public Combinator(string name, string meaning, Func<CombinatorInput, ValueList<Line>> rule)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentException.ThrowIfNullOrWhiteSpace(meaning);
        ArgumentNullException.ThrowIfNull(rule);
        if (!IsName(name))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a word must be 1 to {LongestName} small letters a to z with single hyphens between them, not {TextError.Quote(name)}"),
                nameof(name));
        }

        if (StandardWords.All.IndexOf(w => w.Name == name || w.FormerName == name) >= 0)
        {
            throw new ArgumentException($"'{name}' is a word of the library; give the combinator another name", nameof(name));
        }

        Name = name;
        Meaning = Require.PlainText(meaning, LongestMeaning);
        Rule = rule;
    }

    /// <summary>The word, as it is written after a dot.</summary>
    public string Name { get; }

    /// <summary>What it does, in a few words; <c>n</c> stands for its number.</summary>
    public string Meaning { get; }

    /// <summary>
    /// What is sung, as a clause of a sentence, from the numbers. It follows a clause about the pattern that the word is applied to:
    /// <c>each line is sung twice</c>. <see langword="null"/>, the default, for <see cref="Meaning"/>.
    /// </summary>
    public Func<ValueList<int>, string>? Sentence { get; init; }

    /// <summary>
    /// The most notes that come out for one that goes in, from the numbers; 1 by default. It bounds a pattern before it is expanded, and
    /// an expansion that breaks it is an error of the combinator.
    /// </summary>
    public Func<ValueList<int>, int> Growth
    {
        get;
        init => field = value ?? throw new ArgumentNullException(nameof(value));
    }
    = static _ => 1;

    /// <summary>The laws that the combinator keeps in every scale; none by default, so that the normal form leaves it where it stands.</summary>
    /// <exception cref="ArgumentException">
    /// A value is not defined, or <see cref="CombinatorLaws.EachLine"/> and <see cref="CombinatorLaws.LineOrder"/> are promised together.
    /// </exception>
    public CombinatorLaws Laws
    {
        get;
        init
        {
            const CombinatorLaws All = CombinatorLaws.EachLine | CombinatorLaws.LineOrder | CombinatorLaws.UndoesItself | CombinatorLaws.IsIdempotent;
            if ((value & ~All) != 0)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(value), string.Create(CultureInfo.InvariantCulture, $"the laws must be values of {nameof(CombinatorLaws)}, not {(int)value}"));
            }

            if (value.HasFlag(CombinatorLaws.EachLine | CombinatorLaws.LineOrder))
            {
                throw new ArgumentException("a combinator changes each line by itself, or it picks whole lines, not both", nameof(value));
            }

            field = value;
        }
    }

    /// <summary>The numbers in its parentheses.</summary>
    internal NumberBounds Numbers { get; private init; }

    private Func<CombinatorInput, ValueList<Line>> Rule { get; }

    /// <summary>The combinator with numbers in its parentheses.</summary>
    /// <param name="lowest">The lowest value of a number.</param>
    /// <param name="highest">The highest value of a number, at least <paramref name="lowest"/>.</param>
    /// <param name="fewest">The fewest numbers: 1 to 64, 1 by default.</param>
    /// <param name="most">The most numbers: <paramref name="fewest"/> to 64; as many as <paramref name="fewest"/> by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bound lies outside its range.</exception>
    public Combinator WithNumbers(int lowest, int highest, int fewest = 1, int? most = null)
    {
        Require.InRange(highest, lowest, int.MaxValue);
        Require.InRange(fewest, 1, MostNumbers);
        return this with { Numbers = new NumberBounds(lowest, highest, fewest, Require.InRange(most ?? fewest, fewest, MostNumbers, nameof(most))) };
    }

    /// <summary>The combinator of a pattern.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="numbers">The numbers that the combinator takes.</param>
    /// <exception cref="ArgumentException">The numbers do not fit, or the result would be too deep or have too many parts or notes.</exception>
    public Pattern Apply(Pattern pattern, params ReadOnlySpan<int> numbers)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return Numbers.Fault(Name, numbers) is { } fault
            ? throw new ArgumentException(fault, nameof(numbers))
            : new AddedPattern(pattern, this, ValueList.Create(numbers));
    }

    /// <summary>The combinator's lines from a pattern's; refuses what breaks a bound and reports what breaks a promise.</summary>
    internal Line[] Lines(Line[] lines, ValueList<int> numbers, Scale scale, Expander expander)
    {
        var most = Line.CountNotes(lines) * GrowthOf(numbers);
        expander.Bound(most);
        var made = Rule(new CombinatorInput(ValueList.Adopt(lines), numbers, scale, expander.Cancellation));
        if (Line.CountNotes(made.AsSpan()) is var notes && notes > most)
        {
            throw Broken($"gave {English.Count(notes, "note")}; its Growth promises at most {most}");
        }

        return Laws.HasFlag(CombinatorLaws.EachLine) && made.Count != lines.Length
            ? throw Broken($"made {English.Count(made.Count, "line")} of {lines.Length}; with {nameof(CombinatorLaws.EachLine)} it promises as many as it is given")
            : made.AsSpan().ToArray();
    }

    /// <summary>The most notes that come out for one that goes in.</summary>
    internal int GrowthOf(ValueList<int> numbers)
    {
        var growth = Growth(numbers);
        return growth is >= 1 and <= PatternLimits.Notes
            ? growth
            : throw Broken(string.Create(CultureInfo.InvariantCulture, $"has a Growth of {growth}; it must be 1 to {PatternLimits.Notes}"));
    }

    /// <summary>How it is written and what it does: <c>.last-note-first: each line with its last note first</c>.</summary>
    public override string ToString() => PatternWord.Of(this).ToString();

    private InvalidOperationException Broken(string what) => new($"the combinator '{Name}' {what}");

    private static bool IsName(string name)
    {
        for (var i = 0; i < name.Length; i++)
        {
            var isHyphenBetween = name[i] == '-' && i > 0 && i < name.Length - 1 && name[i - 1] != '-';
            if (!char.IsAsciiLetterLower(name[i]) && !isHyphenBetween)
            {
                return false;
            }
        }

        return name.Length is >= 1 and <= LongestName;
    }
}
