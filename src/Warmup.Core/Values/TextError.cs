using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>What is wrong with a text that somebody typed: where, what, and what would mend it.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record TextError
{
    /// <summary>The longest piece of the typed text that a message repeats, in characters.</summary>
    internal const int LongestQuote = 40;

    /// <summary>Says what is wrong at a place.</summary>
    /// <param name="line">The line, counted from 1.</param>
    /// <param name="column">The column, counted from 1 in UTF-16 code units.</param>
    /// <param name="message">What was found and what was expected, with the fix; one sentence, no full stop.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="message"/> is <see langword="null"/>.</exception>
    public TextError(int line, int column, string message)
    {
        Line = Require.InRange(line, 1, int.MaxValue);
        Column = Require.InRange(column, 1, int.MaxValue);
        ArgumentNullException.ThrowIfNull(message);
        Message = message;
    }

    /// <summary>The line, counted from 1.</summary>
    public int Line { get; }

    /// <summary>The column, counted from 1 in UTF-16 code units.</summary>
    public int Column { get; }

    /// <summary>What was found and what was expected, with the fix; one sentence, no full stop.</summary>
    public string Message { get; }

    /// <summary>The message and its place: <c>column 3: unknown svara 'R9'</c>, with the line before it when it is not the first.</summary>
    public override string ToString() => Line == 1 ? $"column {Column}: {Message}" : $"line {Line}, column {Column}: {Message}";

    /// <summary>The exception that says the same.</summary>
    public WarmupFormatException ToException() => new(this);

    /// <summary>What is wrong in the first line.</summary>
    /// <param name="column">The column, counted from 1 in UTF-16 code units.</param>
    /// <param name="message">What was found and what was expected.</param>
    public static TextError At(int column, string message) => new(1, column, message);

    /// <summary>Quotes a piece of typed text for a one-line message: at most 40 characters, with control characters shown as '?'.</summary>
    /// <param name="text">The typed text.</param>
    public static string Quote(ReadOnlySpan<char> text)
    {
        var cut = text.Length > LongestQuote;
        Span<char> shown = stackalloc char[LongestQuote];
        var length = Math.Min(text.Length, LongestQuote);
        for (var i = 0; i < length; i++)
        {
            shown[i] = char.IsControl(text[i]) || char.IsSurrogate(text[i]) || BreaksLine(text[i]) ? '?' : text[i];
        }

        return $"'{shown[..length]}{(cut ? "..." : string.Empty)}'";
    }

    // Invisible marks, and the separators that some terminals show as a new line.
    private static bool BreaksLine(char c) => char.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}

/// <summary>A text could not be read; <see cref="Error"/> has the place and the fix.</summary>
[SuppressMessage("Design", "CA1032:Implement standard exception constructors", Justification = "It always says what is wrong and where.")]
public sealed class WarmupFormatException : FormatException
{
    /// <summary>An exception that says what the error says.</summary>
    /// <param name="error">The error.</param>
    /// <exception cref="ArgumentNullException"><paramref name="error"/> is <see langword="null"/>.</exception>
    public WarmupFormatException(TextError error)
        : base(error?.ToString()) => Error = error ?? throw new ArgumentNullException(nameof(error));

    /// <summary>The place and the fix.</summary>
    public TextError Error { get; }
}
