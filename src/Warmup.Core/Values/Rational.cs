using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// An exact fraction in lowest terms with a positive denominator. All times (in aksharas) and all frequency ratios are rationals.
/// </summary>
/// <remarks>
/// Numerator and denominator are 64-bit; intermediate results are 128-bit. A result that does not fit throws an
/// <see cref="OverflowException"/> that names the operation. <c>default</c> is 0. Immutable, safe to share between threads.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Rational>))]
public readonly partial struct Rational
    : IEquatable<Rational>, IComparable<Rational>, IComparisonOperators<Rational, Rational, bool>, IMinMaxValue<Rational>,
        IAdditionOperators<Rational, Rational, Rational>, ISubtractionOperators<Rational, Rational, Rational>,
        IMultiplyOperators<Rational, Rational, Rational>, IDivisionOperators<Rational, Rational, Rational>,
        IUnaryNegationOperators<Rational, Rational>, IAdditiveIdentity<Rational, Rational>, IMultiplicativeIdentity<Rational, Rational>
{
    private const long SmallBound = 1L << 30;

    // Stored as denominator - 1, so that the default value is the number 0 and not the invalid fraction 0/0.
    private readonly long _denominatorLessOne;

    /// <summary>Makes the fraction <paramref name="numerator"/>/<paramref name="denominator"/>, reduced.</summary>
    /// <param name="numerator">Any 64-bit integer.</param>
    /// <param name="denominator">Any 64-bit integer but 0; a negative one moves its sign to the numerator.</param>
    /// <exception cref="DivideByZeroException"><paramref name="denominator"/> is 0.</exception>
    /// <exception cref="OverflowException">The reduced fraction does not fit 64 bits.</exception>
    public Rational(long numerator, long denominator = 1)
    {
        if (denominator == 1)
        {
            Numerator = numerator;
            return;
        }

        this = denominator > 0 && numerator != long.MinValue ? Reduce(numerator, denominator) : Wide.Fraction(numerator, denominator);
    }

    private Rational(long numerator, long denominator, bool _)
    {
        Numerator = numerator;
        _denominatorLessOne = denominator - 1;
    }

    /// <summary>The number 0.</summary>
    public static Rational Zero => default;

    /// <summary>The number 1.</summary>
    public static Rational One => new(1);

    static Rational IAdditiveIdentity<Rational, Rational>.AdditiveIdentity => Zero;

    static Rational IMultiplicativeIdentity<Rational, Rational>.MultiplicativeIdentity => One;

    static Rational IMinMaxValue<Rational>.MinValue => new(long.MinValue);

    static Rational IMinMaxValue<Rational>.MaxValue => new(long.MaxValue);

    /// <summary>The numerator; it carries the sign.</summary>
    public long Numerator { get; }

    /// <summary>The denominator, at least 1.</summary>
    public long Denominator => _denominatorLessOne + 1;

    /// <summary>Whether the number is whole.</summary>
    public bool IsInteger => _denominatorLessOne == 0;

    /// <summary>-1 below 0, 0 at 0, 1 above 0.</summary>
    public int Sign => Numerator > 0 ? 1 : Numerator < 0 ? -1 : 0;

    /// <summary>Whole numbers are rationals.</summary>
    /// <param name="value">The whole number.</param>
    public static implicit operator Rational(long value) => new(value);

    /// <summary>The nearest double.</summary>
    /// <param name="value">The fraction.</param>
    public static explicit operator double(Rational value) => value.ToDouble();

    /// <summary>The sum.</summary>
    /// <param name="left">A summand.</param>
    /// <param name="right">A summand.</param>
    /// <exception cref="OverflowException">The sum does not fit.</exception>
    public static Rational operator +(Rational left, Rational right) =>
        left.IsInteger && right.IsInteger && !AddOverflows(left.Numerator, right.Numerator)
            ? new(left.Numerator + right.Numerator)
            : left.IsSmall && right.IsSmall
            ? Reduce((left.Numerator * right.Denominator) + (right.Numerator * left.Denominator), left.Denominator * right.Denominator)
            : Wide.Sum(left, right);

    /// <summary>The difference.</summary>
    /// <param name="left">The minuend.</param>
    /// <param name="right">The subtrahend.</param>
    /// <exception cref="OverflowException">The difference does not fit.</exception>
    public static Rational operator -(Rational left, Rational right) => left.IsSmall && right.IsSmall
        ? Reduce((left.Numerator * right.Denominator) - (right.Numerator * left.Denominator), left.Denominator * right.Denominator)
        : Wide.Difference(left, right);

    /// <summary>The number with its sign turned.</summary>
    /// <param name="value">The number.</param>
    /// <exception cref="OverflowException">The numerator is the least 64-bit integer.</exception>
    public static Rational operator -(Rational value) =>
        value.Numerator != long.MinValue ? new(-value.Numerator, value.Denominator, true) : Wide.Opposite(value);

    /// <summary>The product.</summary>
    /// <param name="left">A factor.</param>
    /// <param name="right">A factor.</param>
    /// <exception cref="OverflowException">The product does not fit.</exception>
    public static Rational operator *(Rational left, Rational right) => left.IsSmall && right.IsSmall
        ? Reduce(left.Numerator * right.Numerator, left.Denominator * right.Denominator)
        : Wide.Product(left, right);

    /// <summary>The quotient.</summary>
    /// <param name="left">The dividend.</param>
    /// <param name="right">The divisor.</param>
    /// <exception cref="DivideByZeroException"><paramref name="right"/> is 0.</exception>
    /// <exception cref="OverflowException">The quotient does not fit.</exception>
    public static Rational operator /(Rational left, Rational right) => left.IsSmall && right.IsSmall && right.Numerator > 0
        ? Reduce(left.Numerator * right.Denominator, left.Denominator * right.Numerator)
        : Wide.Quotient(left, right);

    /// <summary>Equality of value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(Rational left, Rational right) => left.Equals(right);

    /// <summary>Inequality of value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(Rational left, Rational right) => !left.Equals(right);

    /// <summary>Order by value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator <(Rational left, Rational right) => left.CompareTo(right) < 0;

    /// <summary>Order by value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator >(Rational left, Rational right) => left.CompareTo(right) > 0;

    /// <summary>Order by value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator <=(Rational left, Rational right) => left.CompareTo(right) <= 0;

    /// <summary>Order by value.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static bool operator >=(Rational left, Rational right) => left.CompareTo(right) >= 0;

    /// <summary>The smaller of two numbers.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static Rational Min(Rational left, Rational right) => left <= right ? left : right;

    /// <summary>The larger of two numbers.</summary>
    /// <param name="left">One number.</param>
    /// <param name="right">The other.</param>
    public static Rational Max(Rational left, Rational right) => left >= right ? left : right;

    /// <summary>The greatest common divisor of two whole numbers.</summary>
    /// <param name="a">0 or above.</param>
    /// <param name="b">0 or above.</param>
    /// <returns>The divisor; the other number where one is 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is negative.</exception>
    public static long Gcd(long a, long b)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(a);
        ArgumentOutOfRangeException.ThrowIfNegative(b);
        return (long)Gcd((ulong)a, (ulong)b);
    }

    /// <summary>The least common multiple of two whole numbers: the coarsest grid on which the parts of both fall.</summary>
    /// <param name="a">1 or above.</param>
    /// <param name="b">1 or above.</param>
    /// <returns>The multiple, or <see cref="long.MaxValue"/> where it does not fit 64 bits, so that a bound on it still refuses it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is 0 or negative.</exception>
    public static long Lcm(long a, long b)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(a);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(b);
        var high = Math.BigMul((ulong)(a / Gcd(a, b)), (ulong)b, out var low);
        return high == 0 && low <= long.MaxValue ? (long)low : long.MaxValue;
    }

    /// <summary>
    /// The exact value of a decimal number, so that a tempo of 72.5 is exactly 145/2.
    /// </summary>
    /// <param name="value">A decimal with at most 18 digits after the point.</param>
    /// <exception cref="OverflowException">The value does not fit 64 bits.</exception>
    public static Rational FromDecimal(decimal value)
    {
        var scale = value.Scale;
        Int128 denominator = 1;
        for (var i = 0; i < scale; i++)
        {
            denominator *= 10;
        }

        var digits = (Int128)decimal.Truncate(value);
        var rest = value - decimal.Truncate(value);
        for (var i = 0; i < scale; i++)
        {
            digits = checked(digits * 10);
            rest *= 10;
        }

        return Wide.Reduce(digits + (Int128)rest, denominator, "reading a decimal");
    }

    /// <summary>The largest whole number that is not above this one.</summary>
    public long Floor()
    {
        var quotient = Numerator / Denominator;
        return Numerator < 0 && !IsInteger ? quotient - 1 : quotient;
    }

    /// <summary>The smallest whole number that is not below this one.</summary>
    public long Ceiling() => IsInteger ? Numerator : Floor() + 1;

    /// <summary>The nearest double.</summary>
    public double ToDouble() => (double)Numerator / Denominator;

    /// <inheritdoc/>
    public int CompareTo(Rational other) => _denominatorLessOne == other._denominatorLessOne
        ? Numerator.CompareTo(other.Numerator)
        : IsSmall && other.IsSmall
        ? (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator)
        : Wide.Compare(this, other);

    /// <inheritdoc/>
    public bool Equals(Rational other) => Numerator == other.Numerator && _denominatorLessOne == other._denominatorLessOne;

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is Rational other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Numerator, _denominatorLessOne);

    /// <summary>A fraction that is in lowest terms already.</summary>
    internal static Rational Reduced(long numerator, long denominator) => new(numerator, denominator, true);

    // Nearly all fractions here are small: products of two such numbers, and sums of two such products, fit 64 bits.
    private bool IsSmall => Numerator is > -SmallBound and < SmallBound && _denominatorLessOne < SmallBound;

    private static bool AddOverflows(long a, long b) => b > 0 ? a > long.MaxValue - b : a < long.MinValue - b;

    /// <summary>Reduces a fraction whose denominator is above 0 and whose numerator has an opposite.</summary>
    private static Rational Reduce(long numerator, long denominator)
    {
        if (denominator == 1)
        {
            return new(numerator);
        }

        // Most results here are whole, and one division finds that out; it is the first step towards the divisor too.
        var (quotient, rest) = Math.DivRem(numerator, denominator);
        if (rest == 0)
        {
            return new(quotient);
        }

        var divisor = (long)Gcd((ulong)denominator, (ulong)Math.Abs(rest));
        return divisor == 1 ? new(numerator, denominator, true) : new(numerator / divisor, denominator / divisor, true);
    }

    private static ulong Gcd(ulong a, ulong b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    /// <summary>
    /// What few numbers need: 128-bit intermediate results. Apart, since code with such numbers is not compiled beforehand, and so every process
    /// would compile all of the arithmetic itself.
    /// </summary>
    private static class Wide
    {
        public static Rational Fraction(long numerator, long denominator) => Reduce(numerator, denominator, "making a fraction");

        public static Rational Sum(Rational left, Rational right) => Reduce(
            ((Int128)left.Numerator * right.Denominator) + ((Int128)right.Numerator * left.Denominator),
            (Int128)left.Denominator * right.Denominator,
            "addition");

        public static Rational Difference(Rational left, Rational right) => Reduce(
            ((Int128)left.Numerator * right.Denominator) - ((Int128)right.Numerator * left.Denominator),
            (Int128)left.Denominator * right.Denominator,
            "subtraction");

        public static Rational Opposite(Rational value) => Reduce(-(Int128)value.Numerator, value.Denominator, "negation");

        public static Rational Product(Rational left, Rational right) =>
            Reduce((Int128)left.Numerator * right.Numerator, (Int128)left.Denominator * right.Denominator, "multiplication");

        public static Rational Quotient(Rational left, Rational right) =>
            Reduce((Int128)left.Numerator * right.Denominator, (Int128)left.Denominator * right.Numerator, "division");

        public static int Compare(Rational left, Rational right) =>
            ((Int128)left.Numerator * right.Denominator).CompareTo((Int128)right.Numerator * left.Denominator);

        public static Rational Reduce(Int128 numerator, Int128 denominator, string operation)
        {
            if (denominator == 0)
            {
                throw new DivideByZeroException($"{operation}: the denominator of a fraction must not be 0");
            }

            if (denominator < 0)
            {
                numerator = -numerator;
                denominator = -denominator;
            }

            var divisor = Gcd(numerator < 0 ? (UInt128)(-numerator) : (UInt128)numerator, (UInt128)denominator);
            numerator /= (Int128)divisor;
            denominator /= (Int128)divisor;
            if (numerator > long.MaxValue || numerator < long.MinValue || denominator > long.MaxValue)
            {
                throw new OverflowException($"{operation}: {numerator}/{denominator} does not fit a fraction of two 64-bit integers");
            }

            return new Rational((long)numerator, (long)denominator, true);
        }

        private static UInt128 Gcd(UInt128 a, UInt128 b)
        {
            // Leave 128-bit division as soon as both numbers fit 64 bits.
            while (b != 0)
            {
                if (a <= ulong.MaxValue && b <= ulong.MaxValue)
                {
                    return Rational.Gcd((ulong)a, (ulong)b);
                }

                (a, b) = (b, a % b);
            }

            return a;
        }
    }
}
