using System.Globalization;

namespace Warmup;

/// <summary>A word of the patterns' language: its name, how it is written, and what it does.</summary>
/// <remarks>Immutable, compared by value, safe to share between threads.</remarks>
public sealed record PatternWord
{
    private PatternWord(string name, string meaning, Func<Operation, string> said, Func<WordParts, Pattern> build)
    {
        Name = name;
        Meaning = meaning;
        Said = said;
        Build = build;
    }

    /// <summary>The word: <c>take</c>.</summary>
    public string Name { get; }

    /// <summary>How it is written: <c>.take(n)</c>.</summary>
    public string Form => (IsPrimitive ? string.Empty : ".") + Name + Takes switch
    {
        WordTakes.Numbers when Numbers.Most > 2 => "(n n ...)",
        WordTakes.Numbers when Numbers.Fewest == 2 => "(n n)",
        WordTakes.Numbers => "(n)",
        WordTakes.Pattern => "(pattern)",
        WordTakes.Texts => "(word word ...)",
        _ => string.Empty,
    };

    /// <summary>What it does, in a few words; <c>n</c> stands for its number.</summary>
    public string Meaning { get; }

    /// <summary>Whether it begins a pattern; the other words follow a dot.</summary>
    public bool IsPrimitive { get; private init; }

    /// <summary>What is sung, as a clause of a sentence.</summary>
    internal Func<Operation, string> Said { get; }

    /// <summary>Builds the pattern from its parts, which are of the kinds and numbers that the word takes.</summary>
    internal Func<WordParts, Pattern> Build { get; }

    /// <summary>What stands in the parentheses.</summary>
    internal WordTakes Takes { get; private init; }

    /// <summary>The numbers in the parentheses.</summary>
    internal NumberBounds Numbers { get; private init; }

    /// <summary>Whether its numbers are steps, which texts count as places: from 1.</summary>
    internal bool CountsPlaces { get; init; }

    /// <summary>What is wrong with numbers that are each within their range; <see langword="null"/> where nothing is.</summary>
    internal Func<ValueList<int>, string?> Rule { get; private init; } = static _ => null;

    /// <summary>Whether a word of two patterns leaves their lines whole and in their order.</summary>
    internal bool KeepsLines { get; init; }

    /// <summary>What the word was called in earlier versions; <see langword="null"/> where it always had its name.</summary>
    internal string? FormerName { get; init; }

    /// <summary>The combinator that a program has added; <see langword="null"/> for a word of the library.</summary>
    internal Combinator? Added { get; private init; }

    /// <summary>A word that begins a pattern.</summary>
    internal static PatternWord Primitive(string name, string meaning, string said, Func<Pattern> build) =>
        new(name, meaning, _ => said, _ => build()) { IsPrimitive = true };

    /// <summary>A word with numbers that begins a pattern.</summary>
    internal static PatternWord Primitive(string name, string meaning, NumberBounds numbers, Func<ValueList<int>, string> said, Func<ValueList<int>, Pattern> build) =>
        new(name, meaning, o => said(o.Numbers), parts => build(parts.Numbers)) { IsPrimitive = true, Takes = WordTakes.Numbers, Numbers = numbers };

    /// <summary>A word of one pattern.</summary>
    internal static PatternWord Unary(string name, string meaning, string said, Func<Pattern, Pattern> build) =>
        new(name, meaning, _ => said, parts => build(parts.Inner!));

    /// <summary>A word of one pattern with one number.</summary>
    internal static PatternWord Unary(string name, string meaning, int lowest, int highest, Func<int, string> said, Func<Pattern, int, Pattern> build) =>
        Unary(name, meaning, new NumberBounds(lowest, highest), n => said(n[0]), (p, n) => build(p, n[0]));

    /// <summary>A word of one pattern with numbers, which may have to keep a rule among themselves.</summary>
    internal static PatternWord Unary(
        string name, string meaning, NumberBounds numbers, Func<ValueList<int>, string> said, Func<Pattern, ValueList<int>, Pattern> build, Func<ValueList<int>, string?>? rule = null) =>
        new(name, meaning, o => said(o.Numbers), parts => build(parts.Inner!, parts.Numbers)) { Takes = WordTakes.Numbers, Numbers = numbers, Rule = rule ?? (static _ => null) };

    /// <summary>A word of one pattern with words to sing.</summary>
    internal static PatternWord Sung(string name, string meaning, Func<ValueList<string>, string> said, Func<Pattern, ValueList<string>, Pattern> build) =>
        new(name, meaning, o => said(o.Texts), parts => build(parts.Inner!, parts.Texts)) { Takes = WordTakes.Texts };

    /// <summary>A word of two patterns.</summary>
    internal static PatternWord Binary(string name, string meaning, string said, Func<Pattern, Pattern, Pattern> build) =>
        new(name, meaning, _ => said, parts => build(parts.Inner!, parts.Operand!)) { Takes = WordTakes.Pattern };

    /// <summary>The word of a combinator that a program adds.</summary>
    internal static PatternWord Of(Combinator combinator) =>
        new(combinator.Name, combinator.Meaning, o => combinator.Sentence?.Invoke(o.Numbers) ?? combinator.Meaning, parts => new AddedPattern(parts.Inner!, combinator, parts.Numbers))
        {
            Takes = combinator.Numbers.Most == 0 ? WordTakes.Nothing : WordTakes.Numbers,
            Numbers = combinator.Numbers,
            Added = combinator,
        };

    /// <summary>What is wrong with the numbers of the word; <see langword="null"/> where nothing is.</summary>
    internal string? Fault(ValueList<int> numbers) => Numbers.Fault(Name, numbers.AsSpan()) ?? Rule(numbers);

    /// <summary>The numbers as texts show them.</summary>
    internal ValueList<int> Shown(ValueList<int> numbers) => CountsPlaces ? numbers.ConvertAll(Place.FromStep) : numbers;

    /// <summary>The numbers that texts show so; none of them is a place 0.</summary>
    internal ValueList<int> Meant(ValueList<int> shown) => CountsPlaces ? shown.ConvertAll(Place.ToStep) : shown;

    /// <summary>What stands in the parentheses, in words.</summary>
    internal string Wanted => CountsPlaces
        ? string.Create(
            CultureInfo.InvariantCulture,
            $"{(Numbers.Most == 1 ? "a place" : $"{Numbers.Fewest} to {Numbers.Most} places")} from {Numbers.Lowest} to {Place.FromStep(Numbers.Highest)}, where 1 is the note that the line stands on and -1 the note below it")
        : Numbers.ToString();

    /// <summary>Whether it is the same word: the same name, and for an added word an equal combinator.</summary>
    /// <param name="other">The other word.</param>
    public bool Equals(PatternWord? other) => other is not null && Name == other.Name && Added == other.Added;

    /// <inheritdoc/>
    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);

    /// <summary>How it is written and what it does: <c>.take(n): only the first n lines</c>.</summary>
    public override string ToString() => OneLine.Of($"{Form}: {Meaning}");
}
