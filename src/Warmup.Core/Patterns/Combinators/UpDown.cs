namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The whole pattern up, then down: all its lines, then the same rule mirrored.</summary>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern UpDown() => new UpDownPattern(this);
}

internal sealed record UpDownPattern(Pattern Inner) : UnaryPattern(Inner, 2 * Inner.UsualNotes, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "up-down", "the whole pattern up, then mirrored down", "all lines go up, then their mirror images go down", p => p.UpDown());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.UpDown;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        Line[] lines = [.. Inner.Lines(frame, expander), .. Inner.Lines(frame.Mirror(), expander)];
        expander.Bound(lines);
        return lines;
    }
}
