namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// Each line sung backwards between its own first and last notes, its runs filled with the other list's notes. Leaps keep their notes.
    /// </summary>
    /// <remarks>
    /// A note whose letter has another variant in the other list takes that form; a note whose letter is missing there stays as it is,
    /// and a finding says so. In scales that are the same both ways this is <see cref="Reversed"/>.
    /// </remarks>
    public Pattern Backwards() => new BackwardsPattern(this);
}

internal sealed record BackwardsPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "backwards",
        "each line sung backwards between its own first and last notes, its runs filled with the other list's notes",
        "every line is then sung backwards",
        p => p.Backwards());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Map(Inner.Lines(frame, expander), l => TurnBack.Refill(l, frame.Scale, expander));
        expander.Bound(lines);
        return lines;
    }
}
