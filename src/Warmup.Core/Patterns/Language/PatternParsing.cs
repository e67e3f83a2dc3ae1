using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace Warmup;

[JsonConverter(typeof(TextJsonConverter<Pattern>))]
public abstract partial record Pattern : ISpanParsable<Pattern>
{
    /// <summary>Reads a pattern's text in the library's own words: <c>ladder.reversed + ladder.ends</c>.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <exception cref="WarmupFormatException">The text is not a pattern; the error has the place and the fix.</exception>
    /// <remarks>Words that a program adds are read by its <see cref="PatternLanguage"/>.</remarks>
    public static Pattern Parse(string text) => PatternLanguage.Standard.Parse(text);

    /// <summary>Reads a pattern's text as <see cref="Parse(string)"/> does, or says what is wrong with it.</summary>
    /// <param name="text">The text, at most 10,000 characters.</param>
    /// <param name="pattern">The pattern, or <see langword="null"/>.</param>
    /// <param name="error">The place and what was expected, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a pattern.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error) =>
        PatternLanguage.Standard.TryParse(text, out pattern, out error);

    static Pattern IParsable<Pattern>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static Pattern ISpanParsable<Pattern>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s.ToString());

    static bool IParsable<Pattern>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Pattern result)
    {
        result = null;
        return s is not null && TryParse(s, out result, out _);
    }

    static bool ISpanParsable<Pattern>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Pattern result) =>
        TryParse(s.ToString(), out result, out _);
}
