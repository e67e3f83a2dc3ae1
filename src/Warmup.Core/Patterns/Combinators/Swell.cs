namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each note begins softly, swells to its middle and fades to its end: messa di voce.</summary>
    public Pattern Swell() => new SwellPattern(this);
}

internal sealed record SwellPattern(Pattern Inner) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "swell", "each note softly, louder to its middle and soft again", "each note swells to its middle and fades to its end", p => p.Swell());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is SwellPattern ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(
        Inner.Lines(frame, expander), line => new Line(line.Notes.ConvertAll(n => n with { Loudness = Loudness.SwellAndFade })));
}
