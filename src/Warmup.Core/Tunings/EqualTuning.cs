namespace Warmup;

/// <summary>Equal temperament.</summary>
internal static class EqualTuning
{
    public static Tuning Value { get; } = new("equal", Enumerable.Range(0, 12).Select(i => Interval.FromCents(100 * i)).ToValueList());
}
