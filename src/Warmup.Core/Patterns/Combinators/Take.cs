namespace Warmup;

public abstract partial record Pattern
{
    // The most lines that can be named by number.
    internal const int MostLines = 10_000;

    /// <summary>The first lines only; all of them where there are fewer.</summary>
    /// <param name="count">1 to 10,000 lines.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Take(int count) => new TakePattern(this, Require.InRange(count, 1, MostLines));
}

internal sealed record TakePattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "take", "only the first n lines", 1, MostLines, n => $"only {English.First(n, "line")} kept", (p, n) => p.Take(n));

    internal override Operation Operation => new(WordEntry, Count);

    internal override LawClass Class => LawClass.LineOrder;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is TakePattern first ? (Count <= first.Count ? this : first) : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        return lines.Length <= Count ? lines : lines[..Count];
    }
}
