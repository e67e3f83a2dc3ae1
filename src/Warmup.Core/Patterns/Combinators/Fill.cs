namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>
    /// The last note of each line is held until the line's length is a multiple of a number of units: a line of six notes fills eight
    /// units as S R G P D S' , , .
    /// </summary>
    /// <param name="units">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Fill(int units) => new FillPattern(this, Require.InRange(units, 1, MostUnits));
}

internal sealed record FillPattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "fill",
        "the last note of each line held until the line's length is a multiple of n units",
        1,
        MostUnits,
        n => $"the last note of each line is held until the line's length is {(n == 1 ? "a whole number of units" : $"a multiple of {English.Count(n, "unit")}")}",
        (p, n) => p.Fill(n));

    internal override Operation Operation => new(WordEntry, Count);

    internal override LawClass Class => LawClass.EachLine;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is FillPattern first && Count == first.Count ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), Fill);

    private Line Fill(Line line)
    {
        var units = line.Units;
        var missing = (((units / Count).Ceiling() * Count) - units);
        return missing == Rational.Zero ? line : line.WithLast(n => n with { Length = Expander.BoundUnits(n.Length + missing) });
    }
}
