using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>A svara that a tuning takes otherwise than its place: <c>R2 10/9</c>.</summary>
internal readonly record struct TunedDegree(Degree Degree, Interval Interval)
{
    /// <summary>Takes a degree and its interval.</summary>
    public static bool TryTake(ref TextCursor cursor, out Degree degree, out Interval interval, [NotNullWhen(false)] out TextError? error)
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

    public override string ToString() => $"{Degree} {Interval}";
}
