namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>All lines as one phrase.</summary>
    public Pattern Join() => new JoinPattern(this);
}

internal sealed record JoinPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes, Inner.UsualNotes)
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator("join", "all lines as one phrase", p => p.Join())
        with { Said = "all lines are joined into one phrase" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.Other;

    internal override UnaryPattern? After(UnaryPattern inner) =>
        inner is JoinPattern ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        return lines.Length <= 1 ? lines : [new Line(lines.SelectMany(l => l.Part(0, l.Notes.Count).Notes).ToValueList())];
    }
}
