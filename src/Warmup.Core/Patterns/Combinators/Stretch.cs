using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All lengths and silences multiplied, and divided where a second number is given.</summary>
    /// <param name="times">Multiplies: 1 to 64.</param>
    /// <param name="parts">Divides: 1 to 64; 1 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Stretch(int times, int parts = 1) =>
        new StretchPattern(this, new Rational(Require.InRange(times, 1, MostUnits), Require.InRange(parts, 1, MostUnits)));

    /// <summary>All lengths and silences divided.</summary>
    /// <param name="parts">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="parts"/> lies outside its range.</exception>
    public Pattern Shrink(int parts) => new StretchPattern(this, new Rational(1, Require.InRange(parts, 1, MostUnits)));
}

internal sealed record StretchPattern(Pattern Inner, Rational Factor) : UnaryPattern(Inner)
{
    public static PatternWord StretchWord { get; } = PatternWord.Unary(
        "stretch",
        "all lengths and silences times n, and divided by a second number where there is one",
        new NumberBounds(1, MostUnits, 1, 2),
        n => $"all lengths and silences are multiplied by {string.Join('/', n.ConvertAll(f => f.ToString(CultureInfo.InvariantCulture)))}",
        (p, n) => p.Stretch(n[0], n.Count == 1 ? 1 : n[1]));

    public static PatternWord ShrinkWord { get; } = PatternWord.Unary(
        "shrink",
        "all lengths and silences divided by n",
        1,
        MostUnits,
        n => string.Create(CultureInfo.InvariantCulture, $"all lengths and silences are divided by {n}"),
        (p, n) => p.Shrink(n));

    internal override Operation Operation => Factor.IsInteger
        ? new(StretchWord, (int)Factor.Numerator)
        : Factor.Numerator == 1
            ? new(ShrinkWord, (int)Factor.Denominator)
            : new(StretchWord, (int)Factor.Numerator, (int)Factor.Denominator);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsIdentity => Factor == Rational.One;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner)
    {
        var both = inner is StretchPattern first ? Factor * first.Factor : default;
        return both.Sign > 0 && both.Numerator <= MostUnits && both.Denominator <= MostUnits ? new StretchPattern(Anything, both) : null;
    }

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), line => new Line(line.Notes.ConvertAll(
        n => n with { Length = Expander.BoundUnits(n.Length * Factor), Rest = Expander.BoundUnits(n.Rest * Factor) })));
}
