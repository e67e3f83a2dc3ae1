namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>A silence behind each line.</summary>
    /// <param name="units">1 to 64 units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Rest(int units) => new RestPattern(this, units);
}

internal sealed record RestPattern : UnaryPattern
{
    public RestPattern(Pattern inner, int units)
        : base(inner) => Count = Require.InRange(units, 1, MostUnits);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator("rest", "a silence of n units behind each line", 1, MostUnits, (p, n) => p.Rest(n))
        with { Said = "a silence of {0} units follows each line" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is RestPattern first && Count + first.Count <= MostUnits ? new RestPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => Units.WithLast(line, n => n with { Rest = Units.Bounded(n.Rest + Count) }));
}
