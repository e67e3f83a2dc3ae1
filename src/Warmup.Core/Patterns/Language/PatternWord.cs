namespace Warmup;

/// <summary>A word of the patterns' text: its name, what its parentheses take, and what it builds.</summary>
internal sealed record PatternWord
{
    private PatternWord(string name, string meaning, bool behindDot, Func<WordParts, Pattern> build)
    {
        Name = name;
        Meaning = meaning;
        TakesPattern = behindDot;
        Build = build;
    }

    /// <summary>The words of the language. A new combinator is one new file and one line here.</summary>
    public static ValueList<PatternWord> All { get; } =
    [
        LadderPattern.WordEntry,
        RunPattern.WordEntry,
        FigurePattern.WordEntry,
        EmptyPattern.WordEntry,
        ReversedPattern.WordEntry,
        BackwardsPattern.WordEntry,
        ThereAndBackPattern.WordEntry,
        MirroredPattern.WordEntry,
        SwappedPattern.WordEntry,
        UpDownPattern.WordEntry,
        SpanPattern.TransposedWord,
        SpanPattern.BelowWord,
        SpanPattern.AboveWord,
        SpanPattern.SpanWord,
        GrowPattern.WordEntry,
        WindowsPattern.WordEntry,
        EndsPattern.WordEntry,
        EveryNthPattern.WordEntry,
        NotesPattern.WordEntry,
        PairsSugar.WordEntry,
        ReturningPattern.WordEntry,
        EachNotePattern.WordEntry,
        EachLinePattern.WordEntry,
        RepeatedPattern.WordEntry,
        JoinPattern.WordEntry,
        SplitPattern.WordEntry,
        TakePattern.WordEntry,
        DropPattern.WordEntry,
        LastFirstPattern.WordEntry,
        RotatePattern.WordEntry,
        OrderPattern.WordEntry,
        AlternatePattern.WordEntry,
        WeavePattern.WordEntry,
        HoldPattern.WordEntry,
        FillPattern.WordEntry,
        RhythmPattern.WordEntry,
        StretchPattern.StretchWord,
        StretchPattern.ShrinkWord,
        RestPattern.WordEntry,
        SungPattern.NotesWord,
        SungPattern.LinesWord,
    ];

    /// <summary>The word.</summary>
    public string Name { get; }

    /// <summary>What it does, in a few words; <c>n</c> stands for its number.</summary>
    public string Meaning { get; }

    /// <summary>
    /// What is sung, as a clause of a sentence: <c>{0}</c> and <c>{1}</c> stand for the numbers, <c>{*}</c> for all numbers or words,
    /// <c>{/}</c> for one number or a fraction.
    /// </summary>
    public string Said { get; init; } = string.Empty;

    /// <summary>Whether a word of two patterns leaves their lines whole and in their order.</summary>
    public bool KeepsLines { get; init; }

    /// <summary>Whether it stands behind a dot.</summary>
    public bool TakesPattern { get; }

    /// <summary>Builds the pattern from its parts, which are of the kinds and numbers that the word takes.</summary>
    public Func<WordParts, Pattern> Build { get; }

    /// <summary>What stands in the parentheses.</summary>
    public WordTakes Takes { get; private init; }

    /// <summary>The fewest numbers or sung words.</summary>
    public int Fewest { get; private init; }

    /// <summary>The most numbers or sung words.</summary>
    public int Most { get; private init; }

    /// <summary>The lowest number.</summary>
    public int Lowest { get; private init; }

    /// <summary>The highest number.</summary>
    public int Highest { get; private init; }

    /// <summary>How it is written: <c>.take(n)</c>.</summary>
    public string Form => (TakesPattern ? "." : string.Empty) + Name + Takes switch
    {
        WordTakes.Numbers when Most > 2 => "(n n ...)",
        WordTakes.Numbers when Most == 2 && Fewest == 2 => "(n n)",
        WordTakes.Numbers => "(n)",
        WordTakes.Pattern => "(pattern)",
        WordTakes.Texts => "(word word ...)",
        _ => string.Empty,
    };

    public static PatternWord Primitive(string name, string meaning, Func<Pattern> build) => new(name, meaning, false, _ => build());

    public static PatternWord Primitive(string name, string meaning, int fewest, int most, int lowest, int highest, Func<ValueList<int>, Pattern> build) =>
        new(name, meaning, false, parts => build(parts.Numbers)) { Takes = WordTakes.Numbers, Fewest = fewest, Most = most, Lowest = lowest, Highest = highest };

    public static PatternWord Combinator(string name, string meaning, Func<Pattern, Pattern> build) =>
        new(name, meaning, true, parts => build(parts.Inner!));

    public static PatternWord Combinator(string name, string meaning, int lowest, int highest, Func<Pattern, int, Pattern> build) =>
        new(name, meaning, true, parts => build(parts.Inner!, parts.Numbers[0])) { Takes = WordTakes.Numbers, Fewest = 1, Most = 1, Lowest = lowest, Highest = highest };

    public static PatternWord Combinator(
        string name, string meaning, int fewest, int most, int lowest, int highest, Func<Pattern, ValueList<int>, Pattern> build) =>
        new(name, meaning, true, parts => build(parts.Inner!, parts.Numbers)) { Takes = WordTakes.Numbers, Fewest = fewest, Most = most, Lowest = lowest, Highest = highest };

    public static PatternWord Binary(string name, string meaning, Func<Pattern, Pattern, Pattern> build) =>
        new(name, meaning, true, parts => build(parts.Inner!, parts.Operand!)) { Takes = WordTakes.Pattern };

    public static PatternWord Sung(string name, string meaning, int most, Func<Pattern, ValueList<string>, Pattern> build) =>
        new(name, meaning, true, parts => build(parts.Inner!, parts.Texts)) { Takes = WordTakes.Texts, Fewest = 1, Most = most };

    public static PatternWord? Find(ReadOnlySpan<char> name)
    {
        foreach (var word in All)
        {
            if (name.Equals(word.Name, StringComparison.OrdinalIgnoreCase))
            {
                return word;
            }
        }

        return null;
    }

    public override string ToString() => Name;
}
