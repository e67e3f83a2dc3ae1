using System.Globalization;

namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>A range of notes of each line. A line that has none of them is left out.</summary>
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
        First = Require.InRange(first, 1, MostNotesOfLine);
        Last = Require.InRange(last, first, MostNotesOfLine);
    }

    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "notes",
        "the notes from one number to another of each line, counted from 1",
        new NumberBounds(1, MostNotesOfLine, 2, 2),
        n => $"of each line only {Said(n[0], n[1])} kept",
        (p, n) => p.Notes(n[0], n[1]),
        n => n[0] <= n[1] ? null : string.Create(CultureInfo.InvariantCulture, $"the last note of 'notes' must be between {n[0]} and {MostNotesOfLine}, not {n[1]}"));

    public int First { get; }

    public int Last { get; }

    internal override Operation Operation => new(WordEntry, First, Last);

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

    private static string Said(int first, int last) =>
        first == last ? $"the {English.Ordinal(first)} note is" : string.Create(CultureInfo.InvariantCulture, $"notes {first} to {last} are");
}
