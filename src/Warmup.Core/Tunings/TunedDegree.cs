using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A svara that a tuning tunes differently from its place: <c>R2 10/9</c>. <c>default</c> is S at the unison.</summary>
/// <remarks>Immutable, value equality.</remarks>
[JsonConverter(typeof(TextJsonConverter<TunedDegree>))]
public readonly record struct TunedDegree : ITextForm<TunedDegree>
{
    internal TunedDegree(Degree degree, Interval interval)
    {
        Degree = degree;
        Interval = interval;
    }

    /// <summary>The svara.</summary>
    public Degree Degree { get; }

    /// <summary>Its interval above the tonic.</summary>
    public Interval Interval { get; }

    static int ITextForm<TunedDegree>.LongestText => 400;

    static string ITextForm<TunedDegree>.What => "a tuned svara";

    static TunedDegree IParsable<TunedDegree>.Parse(string s, IFormatProvider? provider) => TextForm.Parse<TunedDegree>(s);

    static bool IParsable<TunedDegree>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out TunedDegree result) => TextForm.TryParse(s, out result, out _);

    static TunedDegree ISpanParsable<TunedDegree>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<TunedDegree>(s);

    static bool ISpanParsable<TunedDegree>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out TunedDegree result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<TunedDegree>.TryRead(TextCursor cursor, out TunedDegree value, [NotNullWhen(false)] out TextError? error)
    {
        var text = cursor.Trimmed();
        value = default;
        if (!TryTake(ref text, out var degree, out var interval, out error))
        {
            return false;
        }

        error = text.IsAtEnd ? null : text.Error($"unexpected {TextError.Quote(text.Rest)} after the interval");
        value = error is null ? new TunedDegree(degree, interval) : default;
        return error is null;
    }

    /// <summary>Takes a degree and its interval.</summary>
    internal static bool TryTake(ref TextCursor cursor, out Degree degree, out Interval interval, [NotNullWhen(false)] out TextError? error)
    {
        interval = default;
        cursor.TryTakeWord(out var word);
        if (!Degree.TryRead(word, out degree))
        {
            error = word.Error($"{TextError.Quote(word.Rest)} is not a svara; write the svara that is tuned differently and its interval, such as R2 10/9");
            return false;
        }

        cursor.TryTakeWord(out word);
        return Interval.TryRead(word, out interval, out error);
    }

    /// <summary>The svara and its interval: <c>R2 10/9</c>.</summary>
    public override string ToString() => $"{Degree} {Interval}";
}
