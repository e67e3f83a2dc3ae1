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

    /// <summary>Refuses a number outside a range, and NaN.</summary>
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
    /// <summary>
    /// Refuses a name that is empty, too long, begins or ends with white space, or holds control or bidirectional characters.
    /// </summary>
    public static string Name(string value, int longest, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        return NameFault(value, longest) is { } fault ? throw new ArgumentException($"{name} {fault}", name) : value;
    }

    /// <summary>What is wrong with a name; <see langword="null"/> where nothing is.</summary>
    public static string? NameFault(string value, int longest) =>
        string.IsNullOrWhiteSpace(value) || value.Length > longest
            ? string.Create(CultureInfo.InvariantCulture, $"must have 1 to {longest} characters, not {(string.IsNullOrWhiteSpace(value) ? 0 : value.Length)}")
            : char.IsWhiteSpace(value[0]) || char.IsWhiteSpace(value[^1])
            ? "must not begin or end with white space"
            : IndexOfControl(value) is var bad and >= 0 ? ControlFault(value, bad) : null;

    /// <summary>Refuses text over a length, and control characters and bidirectional marks.</summary>
    public static string PlainText(string value, int longest, [CallerArgumentExpression(nameof(value))] string? name = null)
    {
        ArgumentNullException.ThrowIfNull(value, name);
        if (value.Length > longest)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{name} must be at most {longest} characters long, not {value.Length}"), name);
        }

        var bad = IndexOfControl(value);
        return bad < 0 ? value : throw new ArgumentException($"{name} {ControlFault(value, bad)}", name);
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

    private static string ControlFault(string value, int at) => string.Create(
        CultureInfo.InvariantCulture, $"must not hold control or bidirectional characters (U+{(int)value[at]:X4} at position {at + 1})");

    private static string Message<T>(string? name, T low, T high, T value) =>
        string.Create(CultureInfo.InvariantCulture, $"{name} must be between {low} and {high}, not {value}");
}
