namespace Warmup;

public abstract partial record Pattern
{
    internal const int LongestWindow = 64;

    /// <summary>A window slides over each line, one note at a time. A line shorter than the window stays whole.</summary>
    /// <param name="notes">The window's width: 1 to 64 notes.</param>
    /// <exception cref="ArgumentException">The width lies outside its range, or the result would have too many notes.</exception>
    public Pattern Windows(int notes) => new WindowsPattern(this, Require.InRange(notes, 1, LongestWindow));
}

internal sealed record WindowsPattern(Pattern Inner, int Width) : UnaryPattern(Inner, Width * Inner.UsualNotes, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "windows",
        "a window of n notes slides over each line, one note at a time",
        1,
        LongestWindow,
        n => n == 1 ? "each note becomes a line of its own" : $"a window of {English.Count(n, "note")} slides over each line",
        (p, n) => p.Windows(n));

    internal override Operation Operation => new(WordEntry, Width);

    internal override LawClass Class => LawClass.Other;

    internal override bool DistributesOverSums => true;

    internal override Line[] Lines(Frame frame, Expander expander)
    {
        var lines = Inner.Lines(frame, expander);
        expander.Bound(lines.Sum(l => l.Notes.Count <= Width ? l.Notes.Count : (l.Notes.Count - Width + 1L) * Width));
        var windows = new List<Line>();
        foreach (var line in lines)
        {
            if (line.Notes.Count <= Width)
            {
                windows.Add(line);
                continue;
            }

            for (var start = 0; start + Width <= line.Notes.Count; start++)
            {
                windows.Add(line.Part(start, Width));
            }
        }

        return [.. windows];
    }
}
