namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All lines but the first ones; none where there are no more.</summary>
    /// <param name="count">1 to 10,000 lines.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Drop(int count) => new DropPattern(this, Require.InRange(count, 1, MostLines));
}

internal sealed record DropPattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "drop", "all lines but the first n", 1, MostLines, n => $"{English.First(n, "line")} left out", (p, n) => p.Drop(n));

    internal override Operation Operation => new(WordEntry, Count);

    internal override LawClass Class => LawClass.LineOrder;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is DropPattern first && Count + first.Count <= MostLines ? new DropPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        return lines.Length <= Count ? [] : lines[Count..];
    }
}
