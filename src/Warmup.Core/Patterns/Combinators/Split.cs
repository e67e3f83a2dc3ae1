namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>Each line cut into pieces; the last piece of a line may be shorter.</summary>
    /// <param name="notes">The notes of a piece: 1 to 1,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="notes"/> lies outside its range.</exception>
    public Pattern Split(int notes) => new SplitPattern(this, Require.InRange(notes, 1, MostNotesOfLine));
}

internal sealed record SplitPattern(Pattern Inner, int Count) : UnaryPattern(Inner)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "split", "each line cut into pieces of n notes", 1, MostNotesOfLine, n => $"each line is cut into pieces of {English.Count(n, "note")}", (p, n) => p.Split(n));

    internal override Operation Operation => new(WordEntry, Count);

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
