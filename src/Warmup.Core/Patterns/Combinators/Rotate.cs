namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The first lines moved to the end, or the last ones to the beginning.</summary>
    /// <param name="count">
    /// -10,000 to 10,000. A positive number moves that many first lines to the end, a negative one that many last lines to the beginning;
    /// where there are fewer lines, counting starts again.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> lies outside its range.</exception>
    public Pattern Rotate(int count) => new RotatePattern(this, Require.InRange(count, -MostLines, MostLines));
}

internal sealed record RotatePattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "rotate",
        "the first n lines moved to the end; a negative n moves the last lines to the beginning",
        -MostLines,
        MostLines,
        n => n switch
        {
            0 => "the lines stay in their order",
            > 0 => $"{English.First(n, "line")} moved to the end",
            _ => $"{English.Last(-n, "line")} moved to the beginning",
        },
        (p, n) => p.Rotate(n));

    internal override Operation Operation => new(WordEntry, Count);

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
