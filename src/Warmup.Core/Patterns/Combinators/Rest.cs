namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>A silence after each line.</summary>
    /// <param name="units">1 to 64 units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Rest(int units) => new RestPattern(this, Require.InRange(units, 1, MostUnits));
}

internal sealed record RestPattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "rest", "a silence of n units after each line", 1, MostUnits, n => $"a silence of {English.Count(n, "unit")} follows each line", (p, n) => p.Rest(n));

    internal override Operation Operation => new(WordEntry, Count);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is RestPattern first && Count + first.Count <= MostUnits ? new RestPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => line.WithLast(n => n with { Rest = Expander.BoundUnits(n.Rest + Count) }));
}
