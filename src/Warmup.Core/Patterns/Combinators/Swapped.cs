namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The other list in the same direction: a rising line takes the descent's notes. It undoes itself.</summary>
    public Pattern Swapped() => new SwappedPattern(this);
}

internal sealed record SwappedPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("swapped", "the same direction with the notes of the other list", p => p.Swapped())
        with { Said = "the notes are those of the other list" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.Frame;

    internal override int Rank => 2;

    internal override bool UndoesItself => true;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Swap(), expander);
}
