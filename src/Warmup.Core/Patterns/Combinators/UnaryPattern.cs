namespace Warmup;

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
