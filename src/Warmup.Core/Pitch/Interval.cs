using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>The distance between two pitches: an exact frequency ratio where there is one, otherwise a number of cents.</summary>
/// <remarks>An octave has 1200 cents. <c>default</c> is the unison, 1/1. Immutable.</remarks>
[JsonConverter(typeof(TextJsonConverter<Interval>))]
public readonly struct Interval : IEquatable<Interval>, ITextForm<Interval>
{
    // Further than any two pitches that can be heard: a hundred octaves.
    private const double WidestCents = 120_000;

    // 0 means "no ratio" unless the whole value is default, which is the unison.
    private readonly Rational _ratio;
    private readonly double _cents;

    // What cents multiply a frequency by; for a ratio not used.
    private readonly double _factor;

    private Interval(Rational ratio, double cents, double factor)
    {
        _ratio = ratio;
        _cents = cents;
        _factor = factor;
    }

    /// <summary>The unison, 1/1, 0 cents.</summary>
    internal static Interval Unison => default;

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

    /// <summary>Whole octaves.</summary>
    /// <param name="octaves">-10 to 10.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="octaves"/> lies outside its range.</exception>
    internal static Interval FromOctaves(int octaves) => Require.InRange(octaves, -10, 10) >= 0
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

        return new Interval(ratio, ratio == Rational.One ? 0 : 1200 * Math.Log2(ratio.ToDouble()), 0);
    }

    /// <summary>An interval by size.</summary>
    /// <param name="cents">The size in cents, -120,000 to 120,000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="cents"/> lies outside its range or is not a number.</exception>
    public static Interval FromCents(double cents) =>
        new(default, Require.InRange(cents, -WidestCents, WidestCents), Math.Pow(2, cents / 1200));

    /// <summary>The frequency that lies this interval above another one.</summary>
    /// <param name="hz">The lower frequency in Hz.</param>
    /// <param name="octaves">Octaves to add; negative ones lower.</param>
    /// <returns>The frequency in Hz, computed from the exact ratio where there is one.</returns>
    public double Above(double hz, int octaves = 0)
    {
        var above = _ratio.Sign > 0 ? hz * _ratio.Numerator / _ratio.Denominator : _cents == 0 ? hz : hz * _factor;
        return octaves == 0 ? above : above * Math.ScaleB(1.0, octaves);
    }

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

    static int ITextForm<Interval>.LongestText => 400;

    static string ITextForm<Interval>.What => "an interval";

    /// <summary>Reads a ratio (<c>9/8</c>, <c>2</c>) or a size in cents (<c>386.314c</c>).</summary>
    /// <param name="text">The text; a ratio is above 0, cents lie between -120,000 and 120,000. White space around it has no meaning.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such an interval.</exception>
    public static Interval Parse(string text) => TextForm.Parse<Interval>(text);

    /// <summary>Reads an interval as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="interval">The interval, or the unison.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was an interval.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Interval interval, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out interval, out error);

    static Interval IParsable<Interval>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Interval>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Interval result) => TryParse(s, out result, out _);

    static Interval ISpanParsable<Interval>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Interval>(s);

    static bool ISpanParsable<Interval>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Interval result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Interval>.TryRead(TextCursor cursor, out Interval value, [NotNullWhen(false)] out TextError? error) => TryRead(cursor, out value, out error);

    /// <summary>Reads a text that is an interval.</summary>
    internal static bool TryRead(TextCursor cursor, out Interval value, [NotNullWhen(false)] out TextError? error)
    {
        value = default;
        error = null;
        var word = cursor.Trimmed();
        var text = word.Rest;
        if (text.EndsWith("c", StringComparison.OrdinalIgnoreCase))
        {
            if (TryReadCents(text[..^1], out var cents))
            {
                value = FromCents(cents);
                return true;
            }

            error = word.Error($"{TextError.Quote(text)} must be a number of cents between -120000 and 120000 with a c after it, such as 386.314c");
            return false;
        }

        if (!text.Contains('.') && Rational.TryRead(text, out var ratio) && ratio.Sign > 0)
        {
            value = FromRatio(ratio);
            return true;
        }

        error = word.Error(
            $"{(text.IsEmpty ? "the interval is missing" : $"{TextError.Quote(text)} is not an interval")}; write a ratio above 0 such as 5/4, or cents with a c after them such as 386.314c");
        return false;
    }

    /// <summary>Reads a number of cents in the range of <see cref="FromCents"/>.</summary>
    internal static bool TryReadCents(ReadOnlySpan<char> text, out double cents) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out cents)
        && Math.Abs(cents) <= WidestCents;

    /// <summary>The fewest digits that give the same number back, never with an exponent.</summary>
    internal static string CentsText(double cents)
    {
        var digits = cents.ToString("R", CultureInfo.InvariantCulture);
        var exponent = digits.IndexOf('E', StringComparison.Ordinal);
        if (exponent < 0)
        {
            return digits;
        }

        // Only numbers far below 1 have an exponent here: their point moves to the left.
        var places = -int.Parse(digits.AsSpan(exponent + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) - 1;
        var mantissa = digits[..exponent].Replace(".", string.Empty, StringComparison.Ordinal).TrimStart('-');
        return $"{(cents < 0 ? "-" : string.Empty)}0.{new string('0', places)}{mantissa}";
    }

    /// <summary>The ratio (<c>9/8</c>) or the cents (<c>200c</c>); <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => Ratio is { } ratio
        ? string.Create(CultureInfo.InvariantCulture, $"{ratio.Numerator}/{ratio.Denominator}")
        : $"{CentsText(_cents)}c";
}
