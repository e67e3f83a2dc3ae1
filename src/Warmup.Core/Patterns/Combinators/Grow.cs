namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line becomes its beginnings: its first two notes, its first three, and so on to the whole. A line of one note stays.</summary>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern Grow() => new GrowPattern(this);
}

internal sealed record GrowPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes * (Inner.UsualLongest + 1) / 2, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "grow",
        "each line becomes its first two notes, its first three, and so on to the whole",
        "each line grows from its first two notes to the whole",
        p => p.Grow());

    internal override Operation Operation => new(WordEntry);

    internal override LawClass Class => LawClass.Other;

    internal override bool DistributesOverSums => true;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        expander.Bound(lines.Sum(l => (long)l.Notes.Count * (l.Notes.Count + 1) / 2));
        var grown = new List<Line>();
        foreach (var line in lines)
        {
            for (var end = Math.Min(2, line.Notes.Count); end <= line.Notes.Count; end++)
            {
                grown.Add(line.Part(0, end));
            }
        }

        return [.. grown];
    }
}
