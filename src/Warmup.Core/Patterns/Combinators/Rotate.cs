namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The first lines moved to the end.</summary>
    /// <param name="count">-10,000 to 10,000; counted around where there are fewer lines, negative the other way.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Rotate(int count) => new RotatePattern(this, count);
}

internal sealed record RotatePattern : UnaryPattern
{
    public RotatePattern(Pattern inner, int count)
        : base(inner) => Count = Require.InRange(count, -MostLines, MostLines);

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("rotate", "the first n lines moved to the end", -MostLines, MostLines, (p, n) => p.Rotate(n))
        with { Said = "the first {0} lines are moved to the end" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.LineOrder;

    internal override bool IsIdentity => Count == 0;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is RotatePattern first && Math.Abs(Count + first.Count) <= MostLines ? new RotatePattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        if (lines.Length == 0)
        {
            return lines;
        }

        var by = ((Count % lines.Length) + lines.Length) % lines.Length;
        return [.. lines[by..], .. lines[..by]];
    }
}
