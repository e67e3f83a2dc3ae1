namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The pairs of notes that stand a number of places apart: 2 gives S G / R M / G P and so on. It is the ends of windows.</summary>
    /// <param name="apart">1 to 63 places.</param>
    /// <exception cref="ArgumentException">The distance lies outside its range, or the result would have too many notes.</exception>
    public Pattern Pairs(int apart) => Windows(Require.InRange(apart, 1, LongestWindow - 1) + 1).Ends();
}

/// <summary>The word <c>pairs</c>, which builds windows and their ends.</summary>
internal static class PairsSugar
{
    public static PatternWord WordEntry { get; } = PatternWord.Unary(
        "pairs",
        "pairs of notes n places apart: short for windows(n + 1).ends",
        1,
        Pattern.LongestWindow - 1,
        n => $"each note is paired with the note {English.Count(n, "place")} after it",
        (p, n) => p.Pairs(n));
}
