using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>A type that has a text form: the type says once how it is read, and all its ways of reading do that.</summary>
/// <typeparam name="TSelf">The type itself.</typeparam>
internal interface ITextForm<TSelf> : ISpanParsable<TSelf>
    where TSelf : ITextForm<TSelf>
{
    /// <summary>The longest text that is read, in characters; what is longer is refused before it is looked at.</summary>
    static abstract int LongestText { get; }

    /// <summary>What the text is, for messages: <c>a number</c>, <c>a tonic</c>.</summary>
    static abstract string What { get; }

    /// <summary>Reads the whole text; white space around it has no meaning.</summary>
    /// <param name="cursor">The text, not longer than <see cref="LongestText"/>.</param>
    /// <param name="value">The value, or the type's default.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    static abstract bool TryRead(TextCursor cursor, [MaybeNullWhen(false)] out TSelf value, [NotNullWhen(false)] out TextError? error);
}

/// <summary>A type whose <see cref="object.ToString"/> is a name for people, and whose text form is another text.</summary>
internal interface IWritesText
{
    /// <summary>The text that <c>Parse</c> reads back to an equal value.</summary>
    string ToText();
}

/// <summary>What all types with a text form do alike.</summary>
internal static class TextForm
{
    /// <summary>Reads a text, or throws.</summary>
    /// <exception cref="ArgumentNullException">The text is null.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a value.</exception>
    public static T Parse<T>(string text)
        where T : ITextForm<T>
    {
        ArgumentNullException.ThrowIfNull(text);
        return Parse<T>(text.AsSpan());
    }

    /// <summary>Reads a text, or throws.</summary>
    /// <exception cref="WarmupFormatException">The text is not such a value.</exception>
    public static T Parse<T>(ReadOnlySpan<char> text)
        where T : ITextForm<T> => TryParse<T>(text, out var value, out var error) ? value : throw error.ToException();

    /// <summary>Reads a text; <see langword="null"/> is refused like an empty one.</summary>
    public static bool TryParse<T>([NotNullWhen(true)] string? text, [MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out TextError? error)
        where T : ITextForm<T> => TryParse(text.AsSpan(), out value, out error);

    /// <summary>Reads a text.</summary>
    public static bool TryParse<T>(ReadOnlySpan<char> text, [MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out TextError? error)
        where T : ITextForm<T>
    {
        if (IsReadable<T>(text, out error) && T.TryRead(new TextCursor(text), out value, out error))
        {
            return true;
        }

        value = default;
        return false;
    }

    /// <summary>
    /// Whether a text is looked at: it is short enough and has no NUL, which .NET's own readers of numbers pass over at a number's end, so that "2" and
    /// one would be 2.
    /// </summary>
    public static bool IsReadable<T>(ReadOnlySpan<char> text, [NotNullWhen(false)] out TextError? error)
        where T : ITextForm<T>
    {
        error = text.Length > T.LongestText
            ? TextError.At(T.LongestText + 1, string.Create(CultureInfo.InvariantCulture, $"{T.What} must be at most {T.LongestText} characters long, not {text.Length}"))
            : text.IndexOf('\0') is var place and >= 0 ? new TextCursor(text).ErrorAt(place, $"{T.What} cannot hold the character U+0000; take it out") : null;
        return error is null;
    }

    /// <summary>The text form of a value that has one.</summary>
    public static string Of<T>(T value) => value is IWritesText writes ? writes.ToText() : value?.ToString() ?? string.Empty;
}
