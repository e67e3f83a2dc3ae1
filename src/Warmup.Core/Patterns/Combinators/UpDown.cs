namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The whole pattern up, then down: all rising lines, then the same rule mirrored.</summary>
    public Pattern UpDown() => new UpDownPattern(this);
}

internal sealed record UpDownPattern(Pattern Inner) : UnaryPattern(Inner, 2 * Inner.UsualNotes, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("up-down", "the whole pattern up, then mirrored down", p => p.UpDown())
        with { Said = "all lines go up, then the mirrored lines go down" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.UpDown;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        Line[] lines = [.. Inner.Lines(frame, expander), .. Inner.Lines(frame.Mirror(), expander)];
        expander.Bound(lines);
        return lines;
    }
}
