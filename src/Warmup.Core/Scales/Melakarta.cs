namespace Warmup;

/// <summary>The 72 parent scales (melakarta) from their rule.</summary>
/// <remarks>
/// Common practice, published in every melakarta chart: with i = (number - 1) mod 36, the R and G pair is the (i div 6)th and the D and
/// N pair the (i mod 6)th of R1G1 R1G2 R1G3 R2G2 R2G3 R3G3; M1 up to number 36, M2 above.
/// </remarks>
internal static class Melakarta
{
    /// <summary>The number of parent scales.</summary>
    public const int Count = 72;

    /// <summary>The ascent of a parent scale; its descent is the same in reverse.</summary>
    /// <param name="number">1 to 72.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="number"/> lies outside its range.</exception>
    public static ValueList<ScaleTone> Ascent(int number)
    {
        var i = (Require.InRange(number, 1, Count, "the number of a parent scale") - 1) % 36;
        var (r, g) = Pair(i / 6);
        var (d, n) = Pair(i % 6);

        // Variants 1 to 3 of R and D lie at -1, 0, +1 from the major scale's degree; those of G and N at -2, -1, 0.
        return
        [
            default,
            new ScaleTone(new Degree(2, r - 2)),
            new ScaleTone(new Degree(3, g - 3)),
            new ScaleTone(new Degree(4, number > 36 ? 1 : 0)),
            new ScaleTone(new Degree(5)),
            new ScaleTone(new Degree(6, d - 2)),
            new ScaleTone(new Degree(7, n - 3)),
            new ScaleTone(default, 1),
        ];
    }

    private static (int Lower, int Upper) Pair(int index) => index switch
    {
        0 => (1, 1),
        1 => (1, 2),
        2 => (1, 3),
        3 => (2, 2),
        4 => (2, 3),
        _ => (3, 3),
    };
}
