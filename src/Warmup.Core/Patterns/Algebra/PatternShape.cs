using System.Globalization;

namespace Warmup;

/// <summary>
/// How laws treat a combinator: which others it changes places with. The order is that of a normal form, innermost first.
/// </summary>
internal enum LawClass
{
    /// <summary>Changes the frame only (mirrored, swapped, reach): changes places with everything that does not look at the frame.</summary>
    Frame,

    /// <summary>Swaps the lists and turns each line round (reversed).</summary>
    Turn,

    /// <summary>Changes each line by itself and keeps their number.</summary>
    EachLine,

    /// <summary>The whole pattern up, then down.</summary>
    UpDown,

    /// <summary>Picks, orders or repeats whole lines.</summary>
    LineOrder,

    /// <summary>Anything else: only the frame passes through it.</summary>
    Other,

    /// <summary>Looks at the frame itself (returning): nothing passes through it.</summary>
    Barrier,
}

/// <summary>A combinator without its pattern: a word, its numbers and its sung words. Two are equal when they print alike.</summary>
internal readonly record struct Operation(PatternWord Word, ValueList<int> Numbers, ValueList<string> Texts)
{
    public override string ToString() => Takes(Word, Numbers, Texts);

    private static string Takes(PatternWord word, ValueList<int> numbers, ValueList<string> texts) => word.Takes switch
    {
        WordTakes.Numbers => $"{word.Name}({string.Join(' ', numbers.ConvertAll(n => n.ToString(CultureInfo.InvariantCulture)))})",
        WordTakes.Texts => $"{word.Name}({string.Join(' ', texts)})",
        _ => word.Name,
    };
}

/// <summary>A pattern that a word makes without another pattern.</summary>
internal abstract record PrimitivePattern : Pattern
{
    private protected PrimitivePattern(long notes, long longest)
        : base(1, 1, notes, longest)
    {
    }

    /// <summary>The word and its numbers.</summary>
    internal abstract Operation Operation { get; }

    internal override string Text => Operation.ToString();
}

/// <summary>A combinator of one pattern.</summary>
internal abstract record UnaryPattern : Pattern
{
    /// <summary>For a combinator that keeps the number of notes.</summary>
    private protected UnaryPattern(Pattern inner)
        : this(inner, inner.UsualNotes, inner.UsualLongest)
    {
    }

    private protected UnaryPattern(Pattern inner, long notes, long longest)
        : base(inner.Depth + 1, inner.Nodes + 1, notes, longest) => Inner = inner;

    public Pattern Inner { get; }

    /// <summary>The word, its numbers and its sung words.</summary>
    internal abstract Operation Operation { get; }

    /// <summary>How the laws treat it.</summary>
    internal abstract LawClass Class { get; }

    internal override string Text => $"{Inner.OperandText}.{Operation}";

    /// <summary>The same combinator of another pattern.</summary>
    internal Pattern Around(Pattern inner) => Operation.Word.Build(new WordParts(inner, Operation.Numbers, null, Operation.Texts));

    /// <summary>Each line changed by itself.</summary>
    private protected static Line[] Map(Line[] lines, Func<Line, Line> change)
    {
        var changed = new Line[lines.Length];
        for (var i = 0; i < changed.Length; i++)
        {
            changed[i] = change(lines[i]);
        }

        return changed;
    }
}

/// <summary>A combinator of two patterns.</summary>
internal abstract record BinaryPattern : Pattern
{
    private protected BinaryPattern(Pattern first, Pattern second, long longest)
        : base(Math.Max(first.Depth, second.Depth) + 1, first.Nodes + second.Nodes + 1, first.UsualNotes + second.UsualNotes, longest)
    {
        First = first;
        Second = second;
    }

    public Pattern First { get; }

    public Pattern Second { get; }

    internal abstract PatternWord Connective { get; }

    internal override string Text => $"{First.OperandText}.{Connective.Name}({Second.Text})";
}
