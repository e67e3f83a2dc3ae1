using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Unicode;

namespace Warmup;

/// <content>The text form: <c>3</c>, <c>3/2</c>.</content>
public readonly partial struct Rational : ITextForm<Rational>, ISpanFormattable, IUtf8SpanFormattable
{
    // Two numbers of 19 digits fit several times over.
    private const int LongestText = 64;
    private const int MostDecimals = 9;
    private const decimal LargestDecimal = 1_000_000_000m;

    static int ITextForm<Rational>.LongestText => LongestText;

    static string ITextForm<Rational>.What => "a number";

    /// <summary>Reads a whole number (<c>-3</c>), a fraction (<c>3/2</c>) or a decimal (<c>72.5</c>).</summary>
    /// <param name="text">The text; white space around it has no meaning. A decimal has at most 9 digits after the point and lies within a thousand million.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a number, or does not fit 64 bits.</exception>
    public static Rational Parse(string text) => TextForm.Parse<Rational>(text);

    /// <summary>Reads a number as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">The number, or 0.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was such a number.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Rational value, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out value, out error);

    static Rational IParsable<Rational>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Rational>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Rational result) => TryParse(s, out result, out _);

    static Rational ISpanParsable<Rational>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Rational>(s);

    static bool ISpanParsable<Rational>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Rational result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Rational>.TryRead(TextCursor cursor, out Rational value, [NotNullWhen(false)] out TextError? error)
    {
        cursor.SkipWhiteSpace();
        var text = cursor.Rest.TrimEnd();
        error = TryRead(text, out value)
            ? null
            : cursor.Error(text.IsEmpty ? "the number is missing; write for example 3, 3/2 or 72.5" : $"{TextError.Quote(text)} is not a number; write for example 3, 3/2 or 72.5");
        return error is null;
    }

    /// <summary>Reads a number that makes up a whole text.</summary>
    internal static bool TryRead(ReadOnlySpan<char> text, out Rational value)
    {
        const NumberStyles Whole = NumberStyles.AllowLeadingSign;
        value = default;
        if (text.Length > LongestText)
        {
            return false;
        }

        var slash = text.IndexOf('/');
        if (long.TryParse((slash < 0 ? text : text[..slash]).Trim(), Whole, CultureInfo.InvariantCulture, out var numerator))
        {
            long denominator = 1;
            if (slash >= 0
                && (!long.TryParse(text[(slash + 1)..].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out denominator) || denominator == 0))
            {
                return false;
            }

            value = new Rational(numerator, denominator);
            return true;
        }

        if (slash >= 0
            || !decimal.TryParse(text.Trim(), Whole | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number)
            || Math.Abs(number) > LargestDecimal
            || number.Scale > MostDecimals)
        {
            return false;
        }

        value = FromDecimal(number);
        return true;
    }

    /// <summary><c>3</c> or <c>3/2</c>; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => IsInteger
        ? Numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider)
    {
        RefuseUnknown(format);
        return ToString();
    }

    bool ISpanFormattable.TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        RefuseUnknown(format);
        return IsInteger
            ? Numerator.TryFormat(destination, out charsWritten, default, CultureInfo.InvariantCulture)
            : destination.TryWrite(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}", out charsWritten);
    }

    bool IUtf8SpanFormattable.TryFormat(Span<byte> utf8Destination, out int bytesWritten, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        RefuseUnknown(format);
        return IsInteger
            ? Numerator.TryFormat(utf8Destination, out bytesWritten, default, CultureInfo.InvariantCulture)
            : Utf8.TryWrite(utf8Destination, CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}", out bytesWritten);
    }

    private static void RefuseUnknown(ReadOnlySpan<char> format)
    {
        if (!format.IsEmpty && !format.Equals("G", StringComparison.OrdinalIgnoreCase))
        {
            throw new FormatException($"a fraction has no format {TextError.Quote(format)}; it is written in one way, G");
        }
    }
}
