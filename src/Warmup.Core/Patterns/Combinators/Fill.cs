namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The last note of each line is held until the line's length is a whole multiple of so many units: a run of six notes fills eight as
    /// S R G P D S' , , .
    /// </summary>
    /// <param name="units">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Fill(int units) => new FillPattern(this, units);
}

internal sealed record FillPattern : UnaryPattern
{
    public FillPattern(Pattern inner, int units)
        : base(inner) => Count = Require.InRange(units, 1, MostUnits);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "fill", "the last note of each line held until the line is a multiple of n units long", 1, MostUnits, (p, n) => p.Fill(n))
        with { Said = "the last note of each line is held until the line is a multiple of {0} units long" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is FillPattern first && Count == first.Count ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), Fill);

    private Line Fill(Line line)
    {
        var units = line.Units;
        var missing = (((units / Count).Ceiling() * Count) - units);
        return missing == Rational.Zero ? line : Units.WithLast(line, n => n with { Length = Units.Bounded(n.Length + missing) });
    }
}
