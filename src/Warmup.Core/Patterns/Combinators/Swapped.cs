namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The same direction with the other list's notes: a rising line takes the descent's notes. It undoes itself.</summary>
    public Pattern Swapped() => new SwappedPattern(this);
}

internal sealed record SwappedPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "swapped", "the same direction with the other list's notes", "the notes are those of the other list", p => p.Swapped());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.Frame;

    internal override int Rank => 2;

    internal override bool UndoesItself => true;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Swap(), expander);
}
