namespace Warmup.Reading;

/// <summary>The fraction that a rounded number stands for.</summary>
internal static class NearFraction
{
    private const int MostParts = 960;

    /// <summary>The fraction with the smallest denominator within a billionth of a number; otherwise the nearest 960th.</summary>
    /// <param name="value">A number from 0 to a million.</param>
    public static Rational Of(double value)
    {
        for (var parts = 1; parts <= MostParts; parts++)
        {
            var whole = Math.Round(value * parts);
            if (Math.Abs((whole / parts) - value) <= 1e-9 * Math.Max(1, value))
            {
                return new Rational((long)whole, parts);
            }
        }

        return new Rational(Math.Max(1, (long)Math.Round(value * MostParts)), MostParts);
    }

    /// <summary>The simplest tempo, in quarter notes a minute, that rounds to whole microseconds a quarter note.</summary>
    public static Rational OfMicroseconds(int microseconds)
    {
        const double Minute = 60_000_000;
        for (var parts = 1; parts <= MostParts; parts++)
        {
            var whole = (long)Math.Round(Minute * parts / microseconds);
            if (whole > 0 && Math.Abs((Minute * parts / whole) - microseconds) <= 0.5)
            {
                return new Rational(whole, parts);
            }
        }

        return new Rational((long)Minute, microseconds);
    }
}
