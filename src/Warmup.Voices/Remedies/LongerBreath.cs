using System.Globalization;

namespace Warmup.Voices;

/// <summary>
/// Line by line, a longer breath after each line: where the last note is held to the breath, it is let go earlier. Immutable, value equality.
/// </summary>
public sealed record LongerBreath : Remedy
{
    /// <summary>Says how long.</summary>
    /// <param name="seconds">The breath after each line, in seconds: 0.2 to 10.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public LongerBreath(Rational seconds) => Seconds = Require.InRange(seconds, new Rational(1, 5), 10, nameof(seconds));

    /// <summary>The breath after each line, in seconds.</summary>
    public Rational Seconds { get; }

    internal override RemedyKind Kind => RemedyKind.LongerBreath;

    /// <inheritdoc/>
    public override Drill Apply(Drill drill) => Require.NotNull(drill) with { Delivery = drill.Delivery with { BreathSeconds = Seconds } };

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return ToString();
    }

    /// <summary>The change in words.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"the held last note let go earlier, for a breath of {Seconds.ToDouble():0.###} s after each line");

    // One for each second begun.
    internal override int Size(Drill drill) => (int)Math.Abs((Seconds - drill.Delivery.BreathSeconds).Ceiling());
}
