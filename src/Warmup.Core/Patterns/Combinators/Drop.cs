namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All but the first lines; none where there are no more.</summary>
    /// <param name="count">1 to 10,000 lines.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Drop(int count) => new DropPattern(this, count);
}

internal sealed record DropPattern : UnaryPattern
{
    public DropPattern(Pattern inner, int count)
        : base(inner) => Count = Require.InRange(count, 1, MostLines);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator("drop", "all but the first n lines", 1, MostLines, (p, n) => p.Drop(n))
        with { Said = "the first {0} lines are left out" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is DropPattern first && Count + first.Count <= MostLines ? new DropPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        return lines.Length <= Count ? [] : lines[Count..];
    }
}
