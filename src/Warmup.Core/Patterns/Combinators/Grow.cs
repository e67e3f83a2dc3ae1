namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The longest window, in notes.</summary>
    public const int LongestWindow = 64;

    /// <summary>Each line becomes its beginnings: its first two notes, its first three, ... the whole. A line of one note stays.</summary>
    /// <exception cref="ArgumentException">The result would have too many notes.</exception>
    public Pattern Grow() => new GrowPattern(this);

    /// <summary>A window slides over each line, one note at a time. A line shorter than the window stays whole.</summary>
    /// <param name="notes">The window's width: 1 to 64 notes.</param>
    /// <exception cref="ArgumentException">The width lies outside its range, or the result would have too many notes.</exception>
    public Pattern Windows(int notes) => new WindowsPattern(this, notes);

    /// <summary>The pairs of notes so many places apart: 2 gives S G / R M / G P / ... It is the ends of windows.</summary>
    /// <param name="apart">1 to 63 places.</param>
    /// <exception cref="ArgumentException">The distance lies outside its range, or the result would have too many notes.</exception>
    public Pattern Pairs(int apart) => Windows(Require.InRange(apart, 1, LongestWindow - 1) + 1).Ends();
}

internal sealed record GrowPattern(Pattern Inner) : UnaryPattern(Inner, Inner.UsualNotes * (Inner.UsualLongest + 1) / 2, Inner.UsualLongest)
{
    public static PatternWord WordEntry { get; } =
        PatternWord.Combinator("grow", "each line becomes its first two notes, its first three, ... the whole", p => p.Grow())
        with { Said = "each line grows from its first two notes to the whole" };

    internal override Operation Operation => new(WordEntry, default, default);

    internal override LawClass Class => LawClass.Other;

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

/// <summary>The word <c>pairs</c>, which builds windows and their ends.</summary>
internal static class PairsSugar
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "pairs", "pairs of notes n places apart; short for windows(n + 1).ends", 1, Pattern.LongestWindow - 1, (p, n) => p.Pairs(n))
        with { Said = "pairs of notes {0} places apart are kept" };
}
