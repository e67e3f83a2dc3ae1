namespace Warmup;

/// <summary>
/// Adds times in seconds. Sums over many tempi do not fit exact fractions of 64 bits, so a sum stays exact as long as its parts are no finer
/// than 1e-12 of a second, and is else taken to the nearest millionth (the project's own settings).
/// </summary>
internal static class SecondsSum
{
    private const long FinestParts = 1_000_000_000_000;
    private const long Grid = 1_000_000;

    /// <summary>Whether a sum whose parts have this common denominator stays exact.</summary>
    public static bool IsExact(long parts) => parts <= FinestParts;

    /// <summary>The sum of two times.</summary>
    public static Rational Of(Rational sum, Rational seconds) =>
        IsExact(Rational.Lcm(sum.Denominator, seconds.Denominator)) ? sum + seconds : Rounded(sum) + Rounded(seconds);

    /// <summary>A time on the nearest millionth of a second.</summary>
    public static Rational Rounded(Rational seconds) => new(((seconds * Grid) + new Rational(1, 2)).Floor(), Grid);
}
