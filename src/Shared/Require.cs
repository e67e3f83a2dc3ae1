using System.Globalization;
using System.Runtime.CompilerServices;

namespace Warmup;

/// <summary>The one place for argument checks: every message carries the value and the allowed range.</summary>
internal static class Require
{
    /// <summary>Refuses a whole number outside a range.</summary>
    public static int InRange(int value, int low, int high, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, low, high, value));

    /// <summary>Refuses a fraction outside a range.</summary>
    public static Rational InRange(Rational value, Rational low, Rational high, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, low, high, value));

    /// <summary>Refuses a number outside a range, and what is no number.</summary>
    public static double InRange(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Message(name, low, high, value));

    /// <summary>Refuses null by the name of the option or argument.</summary>
    public static T NotNull<T>(T? value, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : class => value ?? throw new ArgumentNullException(name);

    /// <summary>Refuses a number that stands for no member of an enumeration.</summary>
    public static T Defined<T>(T value, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : struct, Enum => Enum.IsDefined(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                name, value, string.Create(CultureInfo.InvariantCulture, $"{name} must be one of {string.Join(", ", Enum.GetNames<T>())}, not {value}"));

    /// <summary>Refuses empty text, control characters and bidirectional marks, and text over a length.</summary>
    public static string PlainText(string value, int longest, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        if (value.Length > longest)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{name} must be at most {longest} characters long, not {value.Length}"), name);
        }

        var bad = IndexOfControl(value);
        return bad < 0
            ? value
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{name} must not hold control or bidirectional characters (U+{(int)value[bad]:X4} at position {bad + 1})"),
                name);
    }

    /// <summary>The position of the first control character, bidirectional mark or lone surrogate; -1 when there is none.</summary>
    public static int IndexOfControl(ReadOnlySpan<char> text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsControl(c)
                || c is '\u200E' or '\u200F' or '\u061C' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069')
                || c is '\uFFFE' or '\uFFFF' or '\u2028' or '\u2029')
            {
                return i;
            }

            if (char.IsSurrogate(c))
            {
                if (!char.IsHighSurrogate(c) || i + 1 == text.Length || !char.IsLowSurrogate(text[i + 1]))
                {
                    return i;
                }

                i++;
            }
        }

        return -1;
    }

    private static string Message<T>(string? name, T low, T high, T value) =>
        string.Create(CultureInfo.InvariantCulture, $"{name} must be between {low} and {high}, not {value}");
}
