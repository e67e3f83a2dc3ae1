namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The lines in the opposite order, the last one first; each stays as it is.</summary>
    /// <remarks>It undoes itself.</remarks>
    public Pattern LastFirst() => new LastFirstPattern(this);
}

internal sealed record LastFirstPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "last-first", "the lines in the opposite order", "the lines are sung in the opposite order", p => p.LastFirst());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.LineOrder;

    internal override bool UndoesItself => true;

    internal override Line[] Lines(Frame frame, Expander expander) => [.. Enumerable.Reverse(Inner.Lines(frame, expander))];
}
