using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The notes of each line lengthened in turn: 2 1 gives S , R G , M ... The numbers begin again with each line.</summary>
    /// <param name="factors">1 to 64 numbers from 1 to 64; each multiplies a note's length.</param>
    /// <exception cref="ArgumentException">There is no number or there are too many, or one lies outside its range.</exception>
    public Pattern Rhythm(params ReadOnlySpan<int> factors) => new RhythmPattern(this, ValueList.Create(factors));
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

    internal override bool IsIdentity => Factors.AsSpan().IndexOfAnyExcept(1) < 0;

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
