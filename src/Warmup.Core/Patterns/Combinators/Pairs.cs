namespace Warmup;

public abstract partial record Pattern
{
    /// <summary>The pairs of notes so many places apart: 2 gives S G / R M / G P / ... It is the ends of windows.</summary>
    /// <param name="apart">1 to 63 places.</param>
    /// <exception cref="ArgumentException">The distance lies outside its range, or the result would have too many notes.</exception>
    public Pattern Pairs(int apart) => Windows(Require.InRange(apart, 1, LongestWindow - 1) + 1).Ends();
}

/// <summary>The word <c>pairs</c>, which builds windows and their ends.</summary>
internal static class PairsSugar
{
    public static PatternWord WordEntry { get; } = PatternWord.Combinator(
        "pairs", "pairs of notes n places apart; short for windows(n + 1).ends", 1, Pattern.LongestWindow - 1, (p, n) => p.Pairs(n))
        with { Said = "pairs of notes {0} places apart are kept" };
}
