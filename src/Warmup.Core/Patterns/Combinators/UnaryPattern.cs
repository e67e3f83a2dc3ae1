namespace Warmup;

/// <summary>A combinator of one pattern. It says itself which laws it keeps; <see cref="NormalForm"/> asks.</summary>
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

    internal override string Text => $"{Inner.OperandText}.{Operation}";

    /// <summary>What most laws follow from.</summary>
    internal abstract LawClass Class { get; }

    /// <summary>The place of the combinator in a normal form, innermost first, among those it changes places with.</summary>
    internal virtual int Rank => 10 * (int)Class;

    /// <summary>Whether it changes nothing, whatever the pattern.</summary>
    internal virtual bool IsIdentity => false;

    /// <summary>Whether applying it twice changes nothing.</summary>
    internal virtual bool UndoesItself => false;

    /// <summary>Whether turning each line round before it or after it is the same.</summary>
    internal virtual bool IsSameTurnedRound => false;

    /// <summary>Whether a combinator of a sum is the sum of the combinator's parts.</summary>
    internal virtual bool DistributesOverSums => Class is LawClass.Frame or LawClass.Turn or LawClass.EachLine or LawClass.Barrier;

    /// <summary>Whether it cannot go inside the combinator that it stands on, although that is of a later class.</summary>
    internal virtual bool IsStuck => false;

    /// <summary>A combinator of a pattern that does not matter: what a law gives where only the words count.</summary>
    private protected static Pattern Anything => Run;

    /// <summary>The same combinator of another pattern.</summary>
    internal Pattern Around(Pattern inner) => Operation.Word.Build(new WordParts(inner, Operation.Numbers, null, Operation.Texts));

    /// <summary>The one combinator that does what this one does directly after another; <see langword="null"/> where there is none.</summary>
    internal virtual UnaryPattern? After(UnaryPattern inner) => null;

    /// <summary>Whether it changes places with a combinator of its own class or of a later one.</summary>
    internal virtual bool GoesInside(UnaryPattern other) => Class switch
    {
        LawClass.Frame => other.Class is not (LawClass.Barrier or LawClass.None),
        LawClass.Turn => other.IsSameTurnedRound || other.Class is LawClass.UpDown or LawClass.LineOrder,
        LawClass.EachLine => other.Class is LawClass.UpDown or LawClass.LineOrder,
        _ => false,
    };

    /// <summary>What it becomes when it changes places with another.</summary>
    internal virtual UnaryPattern Past(UnaryPattern other) => this;

    /// <summary>Whether a combinator of both parts is the same as of their interleaving.</summary>
    internal bool DistributesOver(PatternWord connective) =>
        Class == LawClass.Frame || (connective.KeepsLines && Class is LawClass.Turn or LawClass.EachLine or LawClass.Barrier);

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
