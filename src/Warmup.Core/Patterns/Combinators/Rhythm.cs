using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The notes of each line lengthened in turn: 2 1 gives S , R G , M and so on. The numbers start again with each line.</summary>
    /// <param name="factors">1 to 64 numbers from 1 to 64; each multiplies a note's length.</param>
    /// <exception cref="ArgumentException">There are no numbers or too many, or one lies outside its range.</exception>
    public Pattern Rhythm(params ReadOnlySpan<int> factors)
    {
        if (factors.Length is 0 or > MostUnits)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"a rhythm must have 1 to {MostUnits} numbers, not {factors.Length}"), nameof(factors));
        }

        foreach (var factor in factors)
        {
            Require.InRange(factor, 1, MostUnits, "a number of a rhythm");
        }

        return new RhythmPattern(this, ValueList.Create(factors));
    }
}

internal sealed record RhythmPattern(Pattern Inner, ValueList<int> Factors) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "rhythm",
        "the notes of each line lengthened in turn, such as rhythm(2 1)",
        new NumberBounds(1, MostUnits, 1, MostUnits),
        n => $"the lengths of each line's notes are multiplied {(n.Count == 1 ? string.Empty : "in turn ")}by {English.List(n)}",
        (p, n) => p.Rhythm(n.AsSpan()));

    internal override Operation Operation => new(WordEntry, Factors, default);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsIdentity => Factors.AsSpan().IndexOfAnyExcept(1) < 0;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(Inner.Lines(frame, expander), Lengthen);

    private Line Lengthen(Line line)
    {
        var notes = line.Notes.AsSpan().ToArray();
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = notes[i] with { Length = Expander.BoundUnits(notes[i].Length * Factors[i % Factors.Count]) };
        }

        return new Line(ValueList.Adopt(notes));
    }
}
