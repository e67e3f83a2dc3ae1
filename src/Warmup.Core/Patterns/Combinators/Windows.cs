namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The longest window, in notes.</summary>
    public const int LongestWindow = 64;

    /// <summary>A window slides over each line, one note at a time. A line shorter than the window stays whole.</summary>
    /// <param name="notes">The window's width: 1 to 64 notes.</param>
    /// <exception cref="ArgumentException">The width lies outside its range, or the result would have too many notes.</exception>
    public Pattern Windows(int notes) => new WindowsPattern(this, notes);
}

internal sealed record WindowsPattern : UnaryPattern
{
    public WindowsPattern(Pattern inner, int width)
        : base(inner, Require.InRange(width, 1, LongestWindow, "a window's width") * inner.UsualNotes, inner.UsualLongest) => Width = width;

    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("windows", "a window of n notes slides over each line", 1, LongestWindow, (p, n) => p.Windows(n))
        with { Said = "a window of {0} notes slides over each line" };

    public int Width { get; }

    internal override Operation Operation => new(WordEntry, [Width], default);

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
