namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>A range of notes of each line. A line without any of them vanishes.</summary>
    /// <param name="first">The first note, counted from 1: 1 to 1,000.</param>
    /// <param name="last">The last note: <paramref name="first"/> to 1,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public Pattern Notes(int first, int last) => new NotesPattern(this, first, last);
}

internal sealed record NotesPattern : UnaryPattern
{
    public NotesPattern(Pattern inner, int first, int last)
        : base(inner)
    {
        First = Require.InRange(first, 1, MostNotesOfLine, "the first note");
        Last = Require.InRange(last, first, MostNotesOfLine, "the last note");
    }

    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "notes", "the notes from one number to another of each line", 2, 2, 1, MostNotesOfLine, (p, n) => p.Notes(n[0], n[1]))
        with { Said = "of each line notes {0} to {1} are kept" };

    public int First { get; }

    public int Last { get; }

    internal override Operation Operation => new(WordEntry, [First, Last], default);

    internal override LawClass Class => LawClass.Other;

    internal override bool DistributesOverSums => true;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var kept = new List<Line>();
        foreach (var line in Inner.Lines(frame, expander))
        {
            if (line.Notes.Count >= First)
            {
                kept.Add(line.Part(First - 1, Math.Min(Last, line.Notes.Count) - First + 1));
            }
        }

        return [.. kept];
    }
}
