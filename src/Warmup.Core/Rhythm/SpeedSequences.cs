namespace Warmup;

/// <summary>Usual orders of speeds in which a drill is sung, one after the other without a break (common practice).</summary>
public static class SpeedSequences
{
    /// <summary>The first, second and third speed, once each.</summary>
    /// <param name="gati">3, 4, 5, 7 or 9; 4 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gati is none of these.</exception>
    public static ValueList<Speed> ThreeSpeeds(int gati = 4) => [new(1, gati), new(2, gati), new(3, gati)];

    /// <summary>
    /// Trikalam: the first speed once, the second twice, the third four times, so that each takes as many aksharas as the first. Lines that
    /// fill whole avartanas in the first speed end on the first beat.
    /// </summary>
    /// <param name="gati">3, 4, 5, 7 or 9; 4 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The gati is none of these.</exception>
    public static ValueList<Speed> Trikalam(int gati = 4)
    {
        var (second, third) = (new Speed(2, gati), new Speed(3, gati));
        return [new(1, gati), second, second, third, third, third, third];
    }
}
