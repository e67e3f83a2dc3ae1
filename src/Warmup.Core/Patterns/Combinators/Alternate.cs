namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Two patterns line by line: the first line of this one, the first of the other, the second of this one, and so on.</summary>
    /// <param name="other">The other pattern. The lines that are left when one of them ends follow.</param>
    /// <exception cref="ArgumentException">The result is too deep, or has too many parts or notes.</exception>
    public Pattern Alternate(Pattern other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new AlternatePattern(this, other);
    }
}

internal sealed record AlternatePattern(Pattern First, Pattern Second) : BinaryPattern(First, Second, Math.Max(First.UsualLongest, Second.UsualLongest))
{
    public static PatternWord WordEntry { get; } = PatternWord.Binary(
        "alternate", "line by line with another pattern, a line of each in turn", "the lines of two patterns take turns", (p, q) => p.Alternate(q))
        with { KeepsLines = true };

    internal override PatternWord Connective => WordEntry;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var first = First.Lines(frame, expander);
        var second = Second.Lines(frame, expander);
        expander.Bound(Line.CountNotes(first) + Line.CountNotes(second));
        var lines = new Line[first.Length + second.Length];
        var at = 0;
        for (var i = 0; at < lines.Length; i++)
        {
            if (i < first.Length)
            {
                lines[at++] = first[i];
            }

            if (i < second.Length)
            {
                lines[at++] = second[i];
            }
        }

        return lines;
    }
}
