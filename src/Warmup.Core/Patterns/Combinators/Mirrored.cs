namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The rule sung from the upper tonic down, on the other list: the ladder becomes S' N / S' N D and so on.</summary>
    /// <remarks>It undoes itself. In a scale without an upper tonic it starts on the highest note.</remarks>
    public Pattern Mirrored() => new MirroredPattern(this);
}

internal sealed record MirroredPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "mirrored",
        "the same rule from the upper tonic down, on the other list",
        "the whole rule starts on the upper tonic and goes down",
        p => p.Mirrored());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.Frame;

    internal override int Rank => 1;

    internal override bool UndoesItself => true;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Mirror(), expander);
}
