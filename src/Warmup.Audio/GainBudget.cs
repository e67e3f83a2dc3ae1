namespace Warmup.Audio;

/// <summary>
/// The gain that each part may use. Every part stays within its share at every moment; the shares add up to 0.88 of full scale, and a peak of
/// -1 dBFS is 0.891, so no mixture passes it. The remaining 1.2 % covers the interpolation of <see cref="WaveTable"/> and rounding.
/// </summary>
/// <remarks>The shares are the project's own settings.</remarks>
internal static class GainBudget
{
    public const double Voice = 0.34;
    public const double Drone = 0.40;
    public const double Beat = 0.14;

    /// <summary>The factor of a level in decibels.</summary>
    public static double Factor(double decibels) => Math.Pow(10, decibels / 20);
}
