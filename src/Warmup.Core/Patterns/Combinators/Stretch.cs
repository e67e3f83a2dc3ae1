namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All lengths and silences multiplied.</summary>
    /// <param name="times">1 to 64.</param>
    /// <param name="parts">Divides as well: 1 to 64; 1 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Stretch(int times, int parts = 1) => new StretchPattern(this, times, parts);

    /// <summary>All lengths and silences divided.</summary>
    /// <param name="parts">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="parts"/> lies outside its range.</exception>
    public Pattern Shrink(int parts) => new StretchPattern(this, 1, parts);
}

internal sealed record StretchPattern : UnaryPattern
{
    public StretchPattern(Pattern inner, int times, int parts)
        : base(inner)
    {
        Factor = new Rational(Require.InRange(times, 1, MostUnits), Require.InRange(parts, 1, MostUnits));
    }

    public static PatternWord StretchWord { get; } = PatternWord.Combinator(
        "stretch", "all lengths times n (and divided by a second number)", 1, 2, 1, MostUnits, (p, n) => p.Stretch(n[0], n.Count == 1 ? 1 : n[1]))
        with { Said = "all lengths are multiplied by {/}" };

    public static PatternWord ShrinkWord { get; } = PatternWord.Combinator("shrink", "all lengths divided by n", 1, MostUnits, (p, n) => p.Shrink(n))
        with { Said = "all lengths are divided by {0}" };

    public Rational Factor { get; }

    internal override Operation Operation => Factor.IsInteger
        ? new(StretchWord, [(int)Factor.Numerator], default)
        : Factor.Numerator == 1
            ? new(ShrinkWord, [(int)Factor.Denominator], default)
            : new(StretchWord, [(int)Factor.Numerator, (int)Factor.Denominator], default);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsIdentity => Factor == Rational.One;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner)
    {
        var both = inner is StretchPattern first ? Factor * first.Factor : default;
        return both.Sign > 0 && both.Numerator <= MostUnits && both.Denominator <= MostUnits
            ? new StretchPattern(Anything, (int)both.Numerator, (int)both.Denominator)
            : null;
    }

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), line => new Line(line.Notes.ConvertAll(
        n => n with { Length = Units.Bounded(n.Length * Factor), Rest = Units.Bounded(n.Rest * Factor) })));
}
