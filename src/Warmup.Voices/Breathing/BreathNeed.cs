using System.Globalization;

namespace Warmup.Voices;

/// <summary>What singers need to breathe: no span longer than the capacity, and no breath shorter than the shortest.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record BreathNeed
{
    /// <summary>Makes a need.</summary>
    /// <param name="capacitySeconds">The longest span, in seconds, 1/10 to 120.</param>
    /// <param name="shortestBreathSeconds">The shortest breath, in seconds, 1/10 to 10.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public BreathNeed(Rational capacitySeconds, Rational shortestBreathSeconds)
    {
        CapacitySeconds = Require.InRange(capacitySeconds, new Rational(1, 10), 120, nameof(capacitySeconds));
        ShortestBreathSeconds = Require.InRange(shortestBreathSeconds, new Rational(1, 10), 10, nameof(shortestBreathSeconds));
    }

    /// <summary>The longest span, in seconds.</summary>
    public Rational CapacitySeconds { get; }

    /// <summary>The shortest breath, in seconds: a shorter one leaves no time to recover.</summary>
    public Rational ShortestBreathSeconds { get; }

    /// <summary>What a singer needs.</summary>
    /// <param name="singer">The singer.</param>
    public static BreathNeed Of(Singer singer)
    {
        ArgumentNullException.ThrowIfNull(singer);
        return new BreathNeed(singer.BreathSeconds, singer.ShortestBreathSeconds);
    }

    /// <summary>What is enough for all singers who breathe together: the smallest capacity and the longest of the shortest breaths.</summary>
    /// <param name="singers">The singers, at least one.</param>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    public static BreathNeed Of(ValueList<Singer> singers)
    {
        if (singers.IsEmpty)
        {
            throw new ArgumentException("a class must have at least 1 singer, not 0", nameof(singers));
        }

        var (capacity, shortest) = (singers[0].BreathSeconds, singers[0].ShortestBreathSeconds);
        foreach (var singer in singers)
        {
            capacity = Rational.Min(capacity, singer.BreathSeconds);
            shortest = Rational.Max(shortest, singer.ShortestBreathSeconds);
        }

        return new BreathNeed(capacity, shortest);
    }

    /// <summary>
    /// What is enough for most singers of a class, who breathe together. At most a third, those with the shortest breath, take further breaths at
    /// places of their own while the others sing on (staggered breathing: common practice of choirs; the third is the project's own setting). The
    /// breaths themselves are long enough for everyone.
    /// </summary>
    /// <param name="singers">The singers, at least one. One or two breathe together.</param>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    public static BreathNeed OfMost(ValueList<Singer> singers)
    {
        var all = Of(singers);
        return new BreathNeed(singers.Select(s => s.BreathSeconds).Order().ElementAt(singers.Count / 3), all.ShortestBreathSeconds);
    }

    /// <summary>The capacity and the shortest breath.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{CapacitySeconds.ToDouble():0.0##} s on a breath, breaths of {ShortestBreathSeconds.ToDouble():0.0##} s");
}
