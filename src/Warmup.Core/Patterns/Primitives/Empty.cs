namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>No lines at all: added to a pattern it changes nothing. A drill refuses it.</summary>
    public static Pattern Empty { get; } = new EmptyPattern();
}

internal sealed record EmptyPattern : PrimitivePattern
{
    public EmptyPattern()
        : base(0, 0)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive("empty", "no lines: added to a pattern it changes nothing", "nothing is sung", () => Empty);

    internal override Operation Operation => new(WordEntry);

    internal override Line[] Make(Frame frame, Expander expander) => [];
}
