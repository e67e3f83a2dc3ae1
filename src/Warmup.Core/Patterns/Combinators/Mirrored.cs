namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The rule sung from the upper tonic downwards, on the other list: the ladder becomes S' N / S' N D / ...</summary>
    /// <remarks>It undoes itself. In a scale without an upper tonic it starts on the highest note.</remarks>
    public Pattern Mirrored() => new MirroredPattern(this);

    /// <summary>The other list in the same direction: a rising line takes the descent's notes. It undoes itself.</summary>
    public Pattern Swapped() => new SwappedPattern(this);

    /// <summary>The whole pattern up, then down: all rising lines, then the same rule mirrored.</summary>
    public Pattern UpDown() => new UpDownPattern(this);
}

internal sealed record MirroredPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("mirrored", "the same rule from the upper tonic down, on the other list", p => p.Mirrored())
        with { Said = "all of it starts from the upper tonic and goes down" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.Frame;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Mirror(), expander);
}

internal sealed record SwappedPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("swapped", "the same direction with the notes of the other list", p => p.Swapped())
        with { Said = "the notes are those of the other list" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.Frame;

    internal override Line[] Lines(Frame frame, Expander expander) => Inner.Lines(frame.Swap(), expander);
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
