namespace Warmup.Audio;

/// <summary>
/// Loudness as Recommendation ITU-R BS.1770-5 (2023), Annex 1, weighs it: how loud a steady sum of harmonics is, worked out from its spectrum.
/// </summary>
internal static class KWeighting
{
    // The tables of the filters in the recommendation are for this rate.
    private const double Rate = 48_000;
    private const double Offset = -0.691;

    /// <summary>The weighted power of a loudness in LKFS of one channel.</summary>
    public static double Power(double lkfs) => Math.Pow(10, (lkfs - Offset) / 10);

    /// <summary>The weighted power of harmonics.</summary>
    /// <param name="hz">The fundamental in Hz.</param>
    /// <param name="amplitudes">The amplitudes from the fundamental on.</param>
    public static double PowerOf(double hz, ReadOnlySpan<double> amplitudes)
    {
        var power = 0.0;
        for (var h = 1; h <= amplitudes.Length; h++)
        {
            power += amplitudes[h - 1] * amplitudes[h - 1] / 2 * Weight(h * hz);
        }

        return power;
    }

    /// <summary>What the K-weighting multiplies the power at a frequency by: the shelf of its table 1, then the high-pass filter of its table 2.</summary>
    private static double Weight(double hz)
    {
        var w = 2 * Math.PI * Math.Min(hz, Rate / 2) / Rate;
        return Section(w, 1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585)
            * Section(w, 1, -2, 1, -1.99004745483398, 0.99007225036621);
    }

    /// <summary>The squared gain of a filter of second order at an angle.</summary>
    private static double Section(double w, double b0, double b1, double b2, double a1, double a2) => Squared(w, b0, b1, b2) / Squared(w, 1, a1, a2);

    private static double Squared(double w, double c0, double c1, double c2)
    {
        var real = c0 + (c1 * Math.Cos(w)) + (c2 * Math.Cos(2 * w));
        var imaginary = (c1 * Math.Sin(w)) + (c2 * Math.Sin(2 * w));
        return (real * real) + (imaginary * imaginary);
    }
}
