namespace Warmup;

/// <summary>
/// Pure fifths: five down from the tonic give M1 N2 G2 D1 R1, six up give P R2 D2 G3 N3 M2.
/// </summary>
internal static class PythagoreanTuning
{
    public static Tuning Value { get; } = new("pythagorean", Enumerable.Range(0, 12).Select(Place).ToValueList());

    private static Interval Place(int semitones)
    {
        // The number of fifths that ends on a place: 7 semitones each, so 7 undoes itself modulo 12; six up reach M2, five down R1.
        var fifths = semitones * 7 % 12;
        fifths = fifths > 6 ? fifths - 12 : fifths;
        var ratio = Rational.One;
        for (var i = 0; i < Math.Abs(fifths); i++)
        {
            ratio *= fifths > 0 ? new Rational(3, 2) : new Rational(2, 3);
            ratio = ratio >= 2 ? ratio / 2 : ratio < 1 ? ratio * 2 : ratio;
        }

        return Interval.FromRatio(ratio);
    }
}
