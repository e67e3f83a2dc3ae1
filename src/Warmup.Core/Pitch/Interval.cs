using System.Globalization;

namespace Warmup;

/// <summary>The distance between two pitches: an exact frequency ratio where there is one, otherwise a number of cents.</summary>
/// <remarks>An octave has 1200 cents. <c>default</c> is the unison, 1/1. Immutable.</remarks>
public readonly struct Interval : IEquatable<Interval>
{
    // 0 means "no ratio" unless the whole value is default, which is the unison.
    private readonly Rational _ratio;
    private readonly double _cents;

    private Interval(Rational ratio, double cents)
    {
        _ratio = ratio;
        _cents = cents;
    }

    /// <summary>The unison, 1/1, 0 cents.</summary>
    public static Interval Unison => default;

    /// <summary>The exact frequency ratio, or <see langword="null"/> where the interval is given in cents.</summary>
    public Rational? Ratio => _ratio.Sign > 0 ? _ratio : _cents == 0 ? Rational.One : null;

    /// <summary>The size in cents.</summary>
    public double Cents => _cents;

    /// <summary>Equality of ratio, or of cents where there is none.</summary>
    /// <param name="left">One interval.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(Interval left, Interval right) => left.Equals(right);

    /// <summary>Inequality of ratio, or of cents where there is none.</summary>
    /// <param name="left">One interval.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(Interval left, Interval right) => !left.Equals(right);

    /// <summary>One interval on top of the other; exact where both are and the ratio fits 64 bits, otherwise in cents.</summary>
    /// <param name="left">The lower interval.</param>
    /// <param name="right">The interval on top.</param>
    public static Interval operator +(Interval left, Interval right) => Combine(left, right, (a, b) => a * b, left.Cents + right.Cents);

    /// <summary>What is left of an interval above another one; exact where both are and the ratio fits 64 bits, otherwise in cents.</summary>
    /// <param name="left">The larger interval.</param>
    /// <param name="right">The interval to take off.</param>
    public static Interval operator -(Interval left, Interval right) => Combine(left, right, (a, b) => a / b, left.Cents - right.Cents);

    /// <summary>One interval on top of the other; exact where both are and the ratio fits 64 bits, otherwise in cents.</summary>
    /// <param name="left">The lower interval.</param>
    /// <param name="right">The interval on top.</param>
    public static Interval Add(Interval left, Interval right) => left + right;

    /// <summary>What is left of an interval above another one; exact where both are and the ratio fits 64 bits, otherwise in cents.</summary>
    /// <param name="left">The larger interval.</param>
    /// <param name="right">The interval to take off.</param>
    public static Interval Subtract(Interval left, Interval right) => left - right;

    /// <summary>Whole octaves.</summary>
    /// <param name="octaves">-10 to 10.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="octaves"/> lies outside its range.</exception>
    public static Interval FromOctaves(int octaves) => Require.InRange(octaves, -10, 10) >= 0
        ? FromRatio(1L << octaves)
        : FromRatio(new Rational(1, 1L << -octaves));

    /// <summary>An interval by frequency ratio.</summary>
    /// <param name="ratio">The ratio, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="ratio"/> is 0 or negative.</exception>
    public static Interval FromRatio(Rational ratio)
    {
        if (ratio.Sign <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(ratio), ratio, $"ratio must be above 0, not {ratio}");
        }

        return new Interval(ratio, ratio == Rational.One ? 0 : 1200 * Math.Log2(ratio.ToDouble()));
    }

    /// <summary>An interval by size.</summary>
    /// <param name="cents">The size in cents, -120,000 to 120,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="cents"/> lies outside its range or is no number.</exception>
    public static Interval FromCents(double cents) => new(default, Require.InRange(cents, -120_000, 120_000));

    /// <summary>The frequency so far above another.</summary>
    /// <param name="hz">The lower frequency in Hz.</param>
    /// <param name="octaves">Octaves to add.</param>
    /// <returns>The frequency in Hz, from the exact ratio where there is one.</returns>
    public double Above(double hz, int octaves = 0) =>
        (_ratio.Sign > 0 ? hz * _ratio.Numerator / _ratio.Denominator : hz * Math.Pow(2, _cents / 1200)) * Math.ScaleB(1.0, octaves);

    private static Interval Combine(Interval left, Interval right, Func<Rational, Rational, Rational> exact, double cents)
    {
        if (left.Ratio is { } a && right.Ratio is { } b)
        {
            try
            {
                return FromRatio(exact(a, b));
            }
            catch (OverflowException)
            {
                // Two ratios of twenty digits have none together that a fraction can hold; their sizes still add up.
            }
        }

        return FromCents(cents);
    }

    /// <inheritdoc/>
    public bool Equals(Interval other) => Ratio is { } ratio ? other.Ratio == ratio : other.Ratio is null && _cents.Equals(other._cents);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Interval other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Ratio is { } ratio ? ratio.GetHashCode() : _cents.GetHashCode();

    /// <summary>The ratio (<c>9/8</c>) or the cents (<c>200c</c>).</summary>
    public override string ToString() => Ratio is { } ratio
        ? string.Create(CultureInfo.InvariantCulture, $"{ratio.Numerator}/{ratio.Denominator}")
        : string.Create(CultureInfo.InvariantCulture, $"{_cents:0.###}c");
}
