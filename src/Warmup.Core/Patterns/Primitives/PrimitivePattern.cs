namespace Warmup;

/// <summary>A pattern that a word makes without another pattern.</summary>
internal abstract record PrimitivePattern : Pattern
{
    private protected PrimitivePattern(long notes, long longest)
        : base(1, 1, notes, longest)
    {
    }

    /// <summary>The word and its numbers.</summary>
    internal abstract Operation Operation { get; }

    internal override string Text => Operation.ToString();

    internal sealed override Line[] Lines(Frame frame, Expander expander) => expander.Once(this, frame);

    /// <summary>Makes the lines in a frame.</summary>
    internal abstract Line[] Make(Frame frame, Expander expander);
}
