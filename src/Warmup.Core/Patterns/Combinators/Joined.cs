namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each note slides to the next one of its line, in the second half of its length.</summary>
    /// <remarks>It takes the place of <see cref="Staccato"/>, and the other way round.</remarks>
    public Pattern Glide() => new JoinedPattern(this, Joining.Glide);

    /// <summary>Each note sounds for the first half of its length.</summary>
    /// <remarks>It takes the place of <see cref="Glide"/>, and the other way round.</remarks>
    public Pattern Staccato() => new JoinedPattern(this, Joining.Staccato);
}

internal sealed record JoinedPattern(Pattern Inner, Joining Joining) : UnaryPattern(Inner)
{
    public static PatternWord GlideWord { get; } = PatternWord.Unary(
        "glide", "each note slides to the next one of its line", "each note slides to the next one of its line", p => p.Glide());

    public static PatternWord StaccatoWord { get; } = PatternWord.Unary(
        "staccato", "each note short, with silence after it", "each note is sung short, with silence after it", p => p.Staccato());

    internal override Operation Operation => new(Joining == Joining.Glide ? GlideWord : StaccatoWord);

    internal override LawClass Class => LawClass.EachLine;

    internal override bool IsSameTurnedRound => true;

    internal override UnaryPattern? After(UnaryPattern inner) => inner is JoinedPattern ? this : null;

    internal override Line[] Lines(Frame frame, Expander expander) => Map(
        Inner.Lines(frame, expander), line => new Line(line.Notes.ConvertAll(n => n with { Joining = Joining })));
}
