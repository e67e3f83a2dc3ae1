namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>No lines at all: what joins to any pattern without changing it. Refused as a drill.</summary>
    public static Pattern Empty { get; } = new EmptyPattern();

    /// <summary>The lines of one pattern, then those of the other.</summary>
    /// <param name="first">The pattern sung first.</param>
    /// <param name="second">The pattern sung second.</param>
    /// <exception cref="ArgumentException">The sum is too deep, has too many parts or too many notes.</exception>
    public static Pattern operator +(Pattern first, Pattern second) => first.Then(second);

    /// <summary>The lines of this pattern, then those of another.</summary>
    /// <param name="next">The pattern sung second.</param>
    /// <exception cref="ArgumentException">The sum is too deep, has too many parts or too many notes.</exception>
    public Pattern Then(Pattern next) => new SumPattern(this, next);
}

internal sealed record EmptyPattern : Pattern
{
    public EmptyPattern()
        : base(1, 1, 0)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive("empty", () => Empty);

    internal override string Text => WordEntry.Name;

    internal override Line[] Lines(Frame frame, Expander expander) => [];
}

internal sealed record SumPattern : Pattern
{
    public SumPattern(Pattern first, Pattern second)
        : base(Math.Max(first.Depth, second.Depth) + 1, first.Nodes + second.Nodes + 1, first.UsualNotes + second.UsualNotes)
    {
        First = first;
        Second = second;
    }

    public Pattern First { get; }

    public Pattern Second { get; }

    // Reading goes from left to right, so only a sum on the right needs parentheses.
    internal override string Text => $"{First.Text} + {Second.OperandText}";

    internal override string OperandText => $"({Text})";

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var first = First.Lines(frame, expander);
        var second = Second.Lines(frame, expander);
        expander.Bound(first.Concat(second));
        return [.. first, .. second];
    }
}
