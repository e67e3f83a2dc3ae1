using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace Warmup;

/// <content>How .NET's own readers (minimal APIs, options, JSON) find a pattern's text form.</content>
[JsonConverter(typeof(TextJsonConverter<Pattern>))]
public abstract partial record Pattern : ISpanParsable<Pattern>
{
    static Pattern IParsable<Pattern>.Parse(string s, IFormatProvider? provider)
    {
        ArgumentNullException.ThrowIfNull(s);
        return Parse(s);
    }

    static bool IParsable<Pattern>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Pattern result)
    {
        result = null;
        return s is not null && TryParse(s, out result, out _);
    }

    static Pattern ISpanParsable<Pattern>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => Parse(s.ToString());

    static bool ISpanParsable<Pattern>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Pattern result) =>
        TryParse(s.ToString(), out result, out _);
}
