namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line in pieces; the last piece of a line may be shorter.</summary>
    /// <param name="notes">The notes of a piece: 1 to 1,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="notes"/> lies outside its range.</exception>
    public Pattern Split(int notes) => new SplitPattern(this, notes);
}

internal sealed record SplitPattern : UnaryPattern
{
    public SplitPattern(Pattern inner, int notes)
        : base(inner) => Count = Require.InRange(notes, 1, MostNotesOfLine);

    public static PatternWord WordEntry { get; } = PatternWord.Combinator("split", "each line in pieces of n notes", 1, MostNotesOfLine, (p, n) => p.Split(n))
        with { Said = "each line is split into pieces of {0} notes" };

    public int Count { get; }

    internal override Operation Operation => new(WordEntry, [Count], default);

    internal override LawClass Class => LawClass.Other;

    internal override bool DistributesOverSums => true;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var pieces = new List<Line>();
        foreach (var line in Inner.Lines(frame, expander))
        {
            for (var start = 0; start < line.Notes.Count; start += Count)
            {
                pieces.Add(line.Part(start, Math.Min(Count, line.Notes.Count - start)));
            }
        }

        return [.. pieces];
    }
}
