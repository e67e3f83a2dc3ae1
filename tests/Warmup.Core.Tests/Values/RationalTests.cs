using System.Globalization;
using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>Fractions small and at the edge of 64 bits, so that both the results and the overflows are met.</summary>
public static class RationalGen
{
    public static Arbitrary<Rational> Rationals() => Any.ToArbitrary();

    public static Gen<Rational> Any { get; } = Gen.Frequency(
        (6, from n in Gen.Choose(-200, 200) from d in Gen.Choose(1, 60) select new Rational(n, d)),
        (3, from n in Long from d in Long.Select(d => Math.Max(1, d == long.MinValue ? long.MaxValue : Math.Abs(d))) select new Rational(n, d)),
        (1, Gen.Elements(0, 1, -1, long.MaxValue, long.MinValue, long.MaxValue - 1).Select(n => new Rational(n))));

    private static Gen<long> Long => from high in Gen.Choose(int.MinValue, int.MaxValue - 1)
                                     from low in Gen.Choose(int.MinValue, int.MaxValue - 1)
                                     from shift in Gen.Choose(0, 62)
                                     select (((long)high << 32) ^ low) >> shift;
}

/// <summary>
/// Source: the laws of fractions, computed here with <see cref="BigInteger"/>, which cannot overflow.
/// </summary>
[Properties(Arbitrary = [typeof(RationalGen)], MaxTest = 500)]
public class RationalTests
{
    private static (BigInteger N, BigInteger D) Big(Rational r) => (r.Numerator, r.Denominator);

    /// <summary>The operation gives the exact fraction, or says that it does not fit exactly when it does not.</summary>
    private static void Exact(BigInteger n, BigInteger d, Func<Rational> operation, string name)
    {
        if (d.Sign < 0)
        {
            (n, d) = (-n, -d);
        }

        var g = BigInteger.GreatestCommonDivisor(n, d);
        (n, d) = (n / g, d / g);
        if (n >= long.MinValue && n <= long.MaxValue && d <= long.MaxValue)
        {
            var result = operation();
            Assert.Equal((n, d), Big(result));
        }
        else
        {
            var thrown = Assert.Throws<OverflowException>(() => operation());
            Assert.Contains(name, thrown.Message, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Property]
    public void Every_fraction_is_in_lowest_terms_with_a_positive_denominator(Rational r)
    {
        Assert.True(r.Denominator >= 1);
        Assert.Equal(BigInteger.One, BigInteger.GreatestCommonDivisor(r.Numerator, r.Denominator));
    }

    [Property]
    public void Sums_are_exact_or_refused(Rational a, Rational b) =>
        Exact((Big(a).N * Big(b).D) + (Big(b).N * Big(a).D), Big(a).D * Big(b).D, () => a + b, "addition");

    [Property]
    public void Differences_are_exact_or_refused(Rational a, Rational b) =>
        Exact((Big(a).N * Big(b).D) - (Big(b).N * Big(a).D), Big(a).D * Big(b).D, () => a - b, "subtraction");

    [Property]
    public void Products_are_exact_or_refused(Rational a, Rational b) =>
        Exact(Big(a).N * Big(b).N, Big(a).D * Big(b).D, () => a * b, "multiplication");

    [Property]
    public void Negation_is_exact_or_refused(Rational a) => Exact(-Big(a).N, Big(a).D, () => -a, "negation");

    [Property]
    public void Quotients_are_exact_or_refused(Rational a, Rational b)
    {
        if (b.Sign == 0)
        {
            Assert.Throws<DivideByZeroException>(() => a / b);
            return;
        }

        Exact(Big(a).N * Big(b).D, Big(a).D * Big(b).N, () => a / b, "division");
    }

    [Property]
    public void Making_a_fraction_is_exact_or_refused(long n, long d)
    {
        if (d == 0)
        {
            Assert.Throws<DivideByZeroException>(() => new Rational(n, d));
            return;
        }

        Exact(n, d, () => new Rational(n, d), "fraction");
    }

    [Theory]
    [InlineData(long.MinValue, long.MinValue, "1")]
    [InlineData(0, long.MinValue, "0")]
    [InlineData(2, long.MinValue, "-1/4611686018427387904")]
    [InlineData(-6, -4, "3/2")]
    [InlineData(6, -4, "-3/2")]
    public void The_sign_moves_to_the_numerator(long n, long d, string text) => Assert.Equal(text, new Rational(n, d).ToString());

    [Property]
    public void Order_is_the_order_of_the_exact_values(Rational a, Rational b)
    {
        var expected = (Big(a).N * Big(b).D).CompareTo(Big(b).N * Big(a).D);
        Assert.Equal(expected, Math.Sign(a.CompareTo(b)));
        Assert.Equal((expected < 0, expected <= 0, expected > 0, expected >= 0, expected == 0, expected != 0), (a < b, a <= b, a > b, a >= b, a == b, a != b));
        Assert.Equal(expected <= 0 ? a : b, Rational.Min(a, b));
        Assert.Equal(expected <= 0 ? b : a, Rational.Max(a, b));
        Assert.Equal(expected == 0, a.Equals(b));
        Assert.Equal(Big(a).N.Sign, a.Sign);
    }

    [Property]
    public void Equal_values_built_differently_have_one_hash(short n, PositiveInt d, PositiveInt k)
    {
        var plain = new Rational(n, d.Get);
        var widened = new Rational((long)n * k.Get, (long)d.Get * k.Get);
        Assert.Equal(plain, widened);
        Assert.Equal(plain.GetHashCode(), widened.GetHashCode());
    }

    [Property]
    public void Floor_and_ceiling_enclose(Rational a)
    {
        var floor = a.Floor();
        Assert.True(floor <= a);
        Assert.True((BigInteger)floor * a.Denominator > Big(a).N - a.Denominator);
        Assert.Equal(floor + (a.IsInteger ? 0 : 1), a.Ceiling());
        Assert.Equal(a.Denominator == 1, a.IsInteger);
    }

    [Property]
    public void What_is_printed_is_read_back(Rational a)
    {
        Assert.Equal(a.Denominator == 1 ? Big(a).N.ToString(CultureInfo.InvariantCulture) : $"{Big(a).N}/{Big(a).D}", a.ToString());
        Assert.Equal(a, Rational.Parse(a.ToString()));
        Assert.Equal(a, Rational.Parse($"  {a} "));
        Span<char> buffer = stackalloc char[64];
        Assert.True(Formattable(a).TryFormat(buffer, out var written, default, null));
        Assert.Equal(a.ToString(), buffer[..written].ToString());
        Assert.False(Formattable(a).TryFormat([], out _, default, null));
        Span<byte> bytes = stackalloc byte[64];
        Assert.True(((IUtf8SpanFormattable)a).TryFormat(bytes, out written, "G", null));
        Assert.Equal(a.ToString(), System.Text.Encoding.UTF8.GetString(bytes[..written]));
    }

    [Theory]
    [InlineData("0.00")]
    [InlineData("N")]
    [InlineData("GG")]
    public void An_unknown_format_is_refused_by_name(string format)
    {
        var half = new Rational(1, 2);
        Assert.Contains(format, Assert.Throws<FormatException>(() => Formattable(half).ToString(format, CultureInfo.InvariantCulture)).Message, StringComparison.Ordinal);
        Assert.Contains(format, Assert.Throws<FormatException>(() => Formattable(half).TryFormat(new char[9], out _, format, null)).Message, StringComparison.Ordinal);
        Assert.Contains(format, Assert.Throws<FormatException>(() => ((IUtf8SpanFormattable)half).TryFormat(new byte[9], out _, format, null)).Message, StringComparison.Ordinal);
        Assert.Equal(("1/2", "1/2", "1/2"), (Formattable(half).ToString("g", null), Formattable(half).ToString("G", null), Formattable(half).ToString(null, null)));
    }

    /// <summary>What a caller's own generic mathematics computes is what the operators compute.</summary>
    [Property]
    public void Generic_mathematics_takes_fractions(short a, PositiveInt b, short c)
    {
        var (x, y) = (new Rational(a, b.Get), new Rational(c, 7));
        Assert.Equal((x * x) + (y * y) - (-x), Squares(x, y));
        Assert.Equal(x < y ? y : x, Largest<Rational>([x, y]));

        static T Squares<T>(T x, T y)
            where T : struct, IAdditionOperators<T, T, T>, ISubtractionOperators<T, T, T>, IMultiplyOperators<T, T, T>, IUnaryNegationOperators<T, T>,
                IAdditiveIdentity<T, T>, IMultiplicativeIdentity<T, T>, IDivisionOperators<T, T, T> =>
            T.AdditiveIdentity + ((x * x / T.MultiplicativeIdentity) + (y * y) - (-x));

        static T Largest<T>(ReadOnlySpan<T> values)
            where T : IComparisonOperators<T, T, bool>, IMinMaxValue<T>
        {
            var largest = T.MinValue;
            foreach (var value in values)
            {
                largest = value > largest && value <= T.MaxValue ? value : largest;
            }

            return largest;
        }
    }

    private static ISpanFormattable Formattable(Rational value) => value;

    [Property]
    public void Doubles_are_near(Rational a)
    {
        var exact = (decimal)a.Numerator / a.Denominator;
        Assert.Equal((double)exact, a.ToDouble(), Math.Max(1e-27, Math.Abs((double)exact) * 1e-15));
    }

    [Fact]
    public void Default_is_zero()
    {
        Assert.Equal(Rational.Zero, default);
        Assert.Equal((0L, 1L, "0"), (default(Rational).Numerator, default(Rational).Denominator, default(Rational).ToString()));
        Assert.Equal(new Rational(0, 17), default);
        Assert.Equal(new Rational(0, 17).GetHashCode(), default(Rational).GetHashCode());
    }

    [Theory]
    [InlineData("72.5", 145, 2)]
    [InlineData(" 3/2 ", 3, 2)]
    [InlineData("-3", -3, 1)]
    [InlineData("6/4", 3, 2)]
    [InlineData("0.125", 1, 8)]
    [InlineData("-0.5", -1, 2)]
    public void Decimals_and_fractions_are_read_exactly(string text, long n, long d)
    {
        Assert.True(Rational.TryParse(text, out var value, out _));
        Assert.Equal((n, d), (value.Numerator, value.Denominator));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("1/0")]
    [InlineData("1/2/3")]
    [InlineData("1,5")]
    [InlineData("1e3")]
    [InlineData("NaN")]
    [InlineData("1/-2")]
    [InlineData("99999999999999999999")]
    [InlineData("1/99999999999999999999")]
    [InlineData("٣")]
    [InlineData("0x10")]
    public void What_is_no_number_is_not_read(string? text)
    {
        Assert.False(Rational.TryParse(text, out var value, out _));
        Assert.Equal(Rational.Zero, value);
    }

    [Property]
    public void Divisors_and_multiples_are_those_of_whole_numbers_of_any_size(long a, long b)
    {
        // Halved, so that the least number has an opposite; 0 has no multiples.
        (a, b) = (Math.Abs(a / 2), Math.Abs(b / 2));
        Assert.Equal(BigInteger.GreatestCommonDivisor(a, b), Rational.Gcd(a, b));
        (a, b) = (a + 1, b + 1);
        var multiple = (BigInteger)a * b / BigInteger.GreatestCommonDivisor(a, b);
        Assert.Equal(BigInteger.Min(multiple, long.MaxValue), Rational.Lcm(a, b));
    }

    [Fact]
    public void Divisors_of_negative_numbers_and_multiples_of_0_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.Gcd(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.Gcd(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.Lcm(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Rational.Lcm(1, 0));
    }

    [Theory]
    [InlineData(1L << 30)]
    [InlineData((1L << 30) - 1)]
    [InlineData((1L << 30) + 1)]
    [InlineData(1L << 31)]
    public void Around_the_size_from_which_wider_numbers_are_needed_all_is_exact(long edge)
    {
        foreach (var a in (Rational[])[new(edge), new(-edge), new(1, edge), new(edge - 1, edge), new(1 - edge, edge + 1)])
        {
            foreach (var b in (Rational[])[new(edge), new(-edge), new(1, edge), new(edge, edge + 1), new(-edge, edge - 1)])
            {
                Sums_are_exact_or_refused(a, b);
                Differences_are_exact_or_refused(a, b);
                Products_are_exact_or_refused(a, b);
                Exact(Big(a).N * Big(b).D, Big(a).D * Big(b).N, () => a / b, "division");
                Assert.Equal((Big(a).N * Big(b).D).CompareTo(Big(b).N * Big(a).D), a.CompareTo(b));
            }
        }
    }

    [Property]
    public void Reading_a_decimal_is_exact(int digits, byte places)
    {
        var scale = (byte)(places % 10);
        var value = new decimal((int)Math.Min(int.MaxValue, Math.Abs((long)digits)), 0, 0, digits < 0, scale);
        Assert.Equal(new Rational(Math.Clamp(digits, -int.MaxValue, int.MaxValue), (long)BigInteger.Pow(10, scale)), Rational.FromDecimal(value));
    }

    [Theory]
    [InlineData("79228162514264337593543950335")]
    [InlineData("9223372036854775808")]
    [InlineData("-9223372036854775809")]
    public void A_decimal_that_does_not_fit_is_an_overflow_that_names_the_operation(string text)
    {
        var thrown = Assert.Throws<OverflowException>(() => Rational.FromDecimal(decimal.Parse(text, CultureInfo.InvariantCulture)));
        Assert.Contains("decimal", thrown.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.0000000000000000000000000001")]
    [InlineData("1.0000000000000000000000000000")]
    [InlineData("7922816251426.4337593543950335")]
    [InlineData("12.500000000000000000000000000")]
    public void A_decimal_of_many_digits_is_exact_or_an_overflow(string text)
    {
        var value = decimal.Parse(text, CultureInfo.InvariantCulture);
        var digits = BigInteger.Parse(text.Replace(".", string.Empty, StringComparison.Ordinal), CultureInfo.InvariantCulture);
        Exact(digits, BigInteger.Pow(10, text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1), () => Rational.FromDecimal(value), "decimal");
    }
}
