namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Two patterns line by line: the first line of this one, the first of the other, the second of this one, ...</summary>
    /// <param name="other">The other pattern. The lines that are left over when one ends follow.</param>
    /// <exception cref="ArgumentException">The result is too deep, has too many parts or too many notes.</exception>
    public Pattern Alternate(Pattern other) => new AlternatePattern(this, other);
}

internal sealed record AlternatePattern(Pattern First, Pattern Second) : BinaryPattern(First, Second, Math.Max(First.UsualLongest, Second.UsualLongest))
{
    public static PatternWord WordEntry { get; } = PatternWord.Binary("alternate", "line by line with another pattern", (p, q) => p.Alternate(q))
        with { Said = "the lines take turns", KeepsLines = true };

    internal override PatternWord Connective => WordEntry;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var first = First.Lines(frame, expander);
        var second = Second.Lines(frame, expander);
        expander.Bound(first.Concat(second));
        var lines = new List<Line>(first.Length + second.Length);
        for (var i = 0; i < Math.Max(first.Length, second.Length); i++)
        {
            lines.AddRange(first.Skip(i).Take(1));
            lines.AddRange(second.Skip(i).Take(1));
        }

        return [.. lines];
    }
}
