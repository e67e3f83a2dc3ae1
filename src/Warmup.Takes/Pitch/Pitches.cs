namespace Warmup.Takes;

/// <summary>Frequencies as cents above MIDI note 0, so that A4 at 440 Hz is 6,900.</summary>
internal static class Pitches
{
    private const double Zero = 8.1757989156437;

    public static double Cents(double hz) => 1200 * Math.Log2(hz / Zero);

    public static double Hz(double cents) => Zero * Math.Pow(2, cents / 1200);
}
