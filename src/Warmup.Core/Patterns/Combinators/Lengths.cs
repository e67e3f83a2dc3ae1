using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The most units by which a length is changed at once.</summary>
    public const int MostUnits = 64;

    /// <summary>The last note of each line is held so many units longer.</summary>
    /// <param name="units">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Hold(int units) => new HoldPattern(this, units);

    /// <summary>
    /// The last note of each line is held until the line's length is a whole multiple of so many units: a run of six notes fills eight as
    /// S R G P D S' , , .
    /// </summary>
    /// <param name="units">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Fill(int units) => new FillPattern(this, units);

    /// <summary>The notes of each line lengthened in turn: 2 1 gives S , R G , M ... The numbers begin again with each line.</summary>
    /// <param name="factors">1 to 64 numbers from 1 to 64; each multiplies a note's length.</param>
    /// <exception cref="ArgumentException">There is no number or there are too many, or one lies outside its range.</exception>
    public Pattern Rhythm(params ReadOnlySpan<int> factors) => new RhythmPattern(this, ValueList.Create(factors));

    /// <summary>All lengths and silences multiplied.</summary>
    /// <param name="times">1 to 64.</param>
    /// <param name="parts">Divides as well: 1 to 64; 1 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Stretch(int times, int parts = 1) => new StretchPattern(this, times, parts);

    /// <summary>All lengths and silences divided.</summary>
    /// <param name="parts">1 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="parts"/> lies outside its range.</exception>
    public Pattern Shrink(int parts) => new StretchPattern(this, 1, parts);

    /// <summary>A silence behind each line.</summary>
    /// <param name="units">1 to 64 units.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="units"/> lies outside its range.</exception>
    public Pattern Rest(int units) => new RestPattern(this, units);
}

/// <summary>Lengths within their bounds.</summary>
internal static class Units
{
    /// <summary>Refuses a length outside 1/4096 to 4096 units or with finer parts.</summary>
    public static Rational Bounded(Rational units) =>
        units <= LineNote.LongestUnits && units.Denominator <= LineNote.LongestUnits ? units : throw new PatternException(new Finding(
            FindingCode.PatternRefused,
            Severity.Error,
            string.Create(CultureInfo.InvariantCulture, $"a note would last {units} units; lengths lie from 1/{LineNote.LongestUnits} to {LineNote.LongestUnits}"),
            "stretch or shrink less"));

    public static Line WithLast(Line line, Func<LineNote, LineNote> change)
    {
        var notes = line.Notes.AsSpan().ToArray();
        notes[^1] = change(notes[^1]);
        return new Line(ValueList.Adopt(notes));
    }
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

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => Units.WithLast(line, n => n with { Length = Units.Bounded(n.Length + Count) }));
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

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), Fill);

    private Line Fill(Line line)
    {
        var units = line.Units;
        var missing = (((units / Count).Ceiling() * Count) - units);
        return missing == Rational.Zero ? line : Units.WithLast(line, n => n with { Length = Units.Bounded(n.Length + missing) });
    }
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

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), line => new Line(line.Notes.ConvertAll(
        n => n with { Length = Units.Bounded(n.Length * Factor), Rest = Units.Bounded(n.Rest * Factor) })));
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

    internal override Line[] Lines(Frame frame, Expander expander) =>
        Map(Inner.Lines(frame, expander), line => Units.WithLast(line, n => n with { Rest = Units.Bounded(n.Rest + Count) }));
}

internal sealed record RhythmPattern : UnaryPattern
{
    public RhythmPattern(Pattern inner, ValueList<int> factors)
        : base(inner)
    {
        if (factors.Count is 0 or > MostUnits)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a rhythm must have 1 to {MostUnits} numbers, not {factors.Count}"), nameof(factors));
        }

        foreach (var factor in factors)
        {
            Require.InRange(factor, 1, MostUnits, "a number of a rhythm");
        }

        Factors = factors;
    }

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "rhythm", "the notes of each line lengthened in turn, such as rhythm(2 1)", 1, MostUnits, 1, MostUnits, (p, n) => new RhythmPattern(p, n))
        with { Said = "the notes of each line are lengthened in turn by {*}" };

    public ValueList<int> Factors { get; }

    internal override Operation Operation => new(WordEntry, Factors, default);

    internal override LawClass Class => LawClass.EachLine;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), Lengthen);

    private Line Lengthen(Line line)
    {
        var notes = line.Notes.AsSpan().ToArray();
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = notes[i] with { Length = Units.Bounded(notes[i].Length * Factors[i % Factors.Count]) };
        }

        return new Line(ValueList.Adopt(notes));
    }
}
