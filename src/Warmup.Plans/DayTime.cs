using System.Globalization;

namespace Warmup.Plans;

/// <summary>The length of a warm-up in words.</summary>
internal static class DayTime
{
    /// <summary>Seconds as minutes and seconds, rounded up to a whole second: <c>7:51</c>.</summary>
    public static string Of(Rational seconds)
    {
        var whole = seconds.Ceiling();
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }
}
