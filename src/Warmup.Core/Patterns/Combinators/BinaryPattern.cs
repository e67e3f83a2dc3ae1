namespace Warmup;

/// <summary>A combinator of two patterns.</summary>
internal abstract record BinaryPattern : Pattern
{
    private protected BinaryPattern(Pattern first, Pattern second, long longest)
        : base(Math.Max(first.Depth, second.Depth) + 1, first.Nodes + second.Nodes + 1, first.UsualNotes + second.UsualNotes, longest)
    {
        First = first;
        Second = second;
    }

    public Pattern First { get; }

    public Pattern Second { get; }

    internal abstract PatternWord Connective { get; }

    internal override string Text => $"{First.OperandText}.{Connective.Name}({Second.Text})";
}
