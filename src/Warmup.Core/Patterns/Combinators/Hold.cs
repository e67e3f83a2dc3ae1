namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most units by which a length is changed at once.</summary>
    public const int MostUnits = 64;

    /// <summary>The last note of each line is held so many units longer.</summary>
    /// <param name="units">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Hold(int units) => new HoldPattern(this, units);
}

internal sealed record HoldPattern : UnaryPattern
{
    public HoldPattern(Pattern inner, int units)
        : base(inner) => Count = Require.InRange(units, 1, MostUnits);

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("hold", "the last note of each line n units longer", 1, MostUnits, (p, n) => p.Hold(n))
        with { Said = "the last note of each line is held {0} units longer" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is HoldPattern first && Count + first.Count <= MostUnits ? new HoldPattern(Anything, Count + first.Count) : null;

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => Units.WithLast(line, n => n with { Length = Units.Bounded(n.Length + Count) }));
}
