namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>No lines at all: what joins to any pattern without changing it. Refused as a drill.</summary>
    public static Pattern Empty { get; } = new EmptyPattern();
}

internal sealed record EmptyPattern : PrimitivePattern
{
    public EmptyPattern()
        : base(0, 0)
    {
    }

    public static PatternWord WordEntry { get; } = PatternWord.Primitive("empty", "no lines; it joins to any pattern without changing it", () => Empty)
        with { Said = "nothing is sung" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override Line[] Lines(Frame frame, Expander expander) => [];
}
