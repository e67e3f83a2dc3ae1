namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most lines that can be named by number.</summary>
    public const int MostLines = 10_000;

    /// <summary>The first lines only; all of them where there are fewer.</summary>
    /// <param name="count">1 to 10,000 lines.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Take(int count) => new TakePattern(this, count);
}

internal sealed record TakePattern : UnaryPattern
{
    public TakePattern(Pattern inner, int count)
        : base(inner) => Count = Require.InRange(count, 1, MostLines);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator("take", "only the first n lines", 1, MostLines, (p, n) => p.Take(n))
        with { Said = "only the first {0} lines are kept" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is TakePattern first ? (Count <= first.Count ? this : first) : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        return lines.Length <= Count ? lines : lines[..Count];
    }
}
