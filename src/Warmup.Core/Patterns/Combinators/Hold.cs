namespace Warmup;

public abstract partial record Pattern
{
    // The most units by which a length is changed at once.
    internal const int MostUnits = 64;

    /// <summary>The last note of each line is held longer.</summary>
    /// <param name="units">1 to 64 units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Hold(int units) => new HoldPattern(this, Require.InRange(units, 1, MostUnits));
}

internal sealed record HoldPattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "hold",
        "the last note of each line held n units longer",
        1,
        MostUnits,
        n => $"the last note of each line is held {English.Count(n, "unit")} longer",
        (p, n) => p.Hold(n));

    internal override Operation Operation => new(WordEntry, Count);

    internal override LawClass Class => LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is HoldPattern first && Count + first.Count <= MostUnits ? new HoldPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => line.WithLast(n => n with { Length = Expander.BoundUnits(n.Length + Count) }));
}
