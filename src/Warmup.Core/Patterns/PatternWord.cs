namespace Warmup;

/// <summary>A word of the patterns' text: its name, the numbers it takes, and what it builds.</summary>
/// <param name="Name">The word.</param>
/// <param name="FewestNumbers">The fewest numbers in its parentheses; 0 for none.</param>
/// <param name="MostNumbers">The most numbers in its parentheses.</param>
/// <param name="Lowest">The lowest number.</param>
/// <param name="Highest">The highest number.</param>
/// <param name="Build">Builds the pattern from the one before the dot (<see langword="null"/> for a primitive) and the numbers.</param>
/// <param name="TakesPattern">Whether it stands behind a dot.</param>
internal sealed record PatternWord(
    string Name, int FewestNumbers, int MostNumbers, int Lowest, int Highest, Func<Pattern?, int[], Pattern> Build, bool TakesPattern)
{
    /// <summary>The words of the language. A new combinator is one new file and one line here.</summary>
    public static ValueList<PatternWord> All { get; } =
    [
        LadderPattern.PlainWord,
        LadderPattern.LiteralWord,
        FigurePattern.WordEntry,
        EmptyPattern.WordEntry,
        ReversedPattern.WordEntry,
        BackwardsPattern.WordEntry,
        ThereAndBackPattern.WordEntry,
        EndsPattern.WordEntry,
        MirroredPattern.WordEntry,
        SwappedPattern.WordEntry,
        UpDownPattern.WordEntry,
        RepeatedPattern.WordEntry,
        TakePattern.WordEntry,
        DropPattern.WordEntry,
    ];

    public static PatternWord Primitive(string name, Func<Pattern> build) => new(name, 0, 0, 0, 0, (_, _) => build(), false);

    public static PatternWord PrimitiveWithNumbers(string name, int fewest, int most, int lowest, int highest, Func<int[], Pattern> build) =>
        new(name, fewest, most, lowest, highest, (_, n) => build(n), false);

    public static PatternWord Combinator(string name, Func<Pattern, Pattern> build) => new(name, 0, 0, 0, 0, (p, _) => build(p!), true);

    public static PatternWord CombinatorWithNumber(string name, int lowest, int highest, Func<Pattern, int, Pattern> build) =>
        new(name, 1, 1, lowest, highest, (p, n) => build(p!, n[0]), true);
}
