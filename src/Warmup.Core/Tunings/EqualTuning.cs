namespace Warmup;

/// <summary>Equal temperament.</summary>
internal static class EqualTuning
{
    public static Tuning Value { get; } = new("equal", Intervals());

    private static ValueList<Interval> Intervals()
    {
        var places = new Interval[12];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = Interval.FromCents(100 * i);
        }

        return ValueList.Adopt(places);
    }
}
