namespace Warmup.Audio;

/// <summary>
/// The gain that each part may use. Every part stays within its share at every moment; the shares add up to 0.88 of full scale, and a peak of
/// -1 dBFS is 0.891, so no mixture passes it. The remaining 1.2 % covers the interpolation of <see cref="WaveTable"/> and rounding.
/// </summary>
/// <remarks>The shares are the project's own settings.</remarks>
internal static class GainBudget
{
    /// <summary>The loudness of the guide tone, in LKFS of its channel: soft enough to sing over.</summary>
    public const double VoiceLoudness = -20;

    public const double Voice = 0.34;
    public const double Drone = 0.40;
    public const double Beat = 0.14;

    /// <summary>The gain at which a drone lies below the voice as <see cref="SoundBalance"/> says, or the most that it may have.</summary>
    /// <param name="power">Its weighted power at a gain of 1 (<see cref="KWeighting"/>).</param>
    /// <param name="most">The greatest gain.</param>
    public static double DroneGain(double power, double most) =>
        power > 0 ? Math.Min(most, Math.Sqrt(KWeighting.Power(VoiceLoudness - SoundBalance.DroneBelowVoice) / power)) : most;

    /// <summary>The factor of a level in decibels.</summary>
    public static double Factor(double decibels) => Math.Pow(10, decibels / 20);
}
