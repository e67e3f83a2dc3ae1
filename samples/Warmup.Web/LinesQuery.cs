using System.Globalization;

namespace Warmup.Web;

/// <summary>Reads which lines are sung, and what planned breaths must be enough for.</summary>
internal static class LinesQuery
{
    // What is typed is far shorter; a longer list is a mistake.
    private const int HighestLine = 10_000;

    /// <summary>The numbers of the lines that are sung, such as <c>1-5,7</c>; none where all are.</summary>
    public static ValueList<int> Read(QueryValues values)
    {
        if (values.Text("lines", string.Empty) is not { Length: > 0 } text)
        {
            return [];
        }

        var lines = new SortedSet<int>();
        foreach (var part in text.Split(','))
        {
            var ends = part.Split('-');
            if (ends.Length > 2 || Number(ends[0]) is not { } from || Number(ends[^1]) is not { } to || to < from)
            {
                values.Wrong("lines", $"must name lines from 1, such as 1-5,7, not {TextError.Quote(part)}");
                return [];
            }

            lines.UnionWith(Enumerable.Range(from, to - from + 1));
        }

        return lines.ToValueList();
    }

    /// <summary>The text that <see cref="Read"/> reads.</summary>
    public static string ToText(IEnumerable<int> lines) => LineNumbers.ToText(lines).Replace(" ", string.Empty, StringComparison.Ordinal);

    /// <summary>What planned breaths must be enough for: <c>12/0.8</c>, the longest breath and the shortest pause that is one, in seconds.</summary>
    public static BreathNeed? Breaths(QueryValues values)
    {
        if (values.Text("breaths", string.Empty) is not { Length: > 0 } text)
        {
            return null;
        }

        if (text.Split('/') is [var capacity, var shortest] && Seconds(capacity, 120) is { } most && Seconds(shortest, 10) is { } least)
        {
            try
            {
                return new BreathNeed(most, least);
            }
            catch (ArgumentException)
            {
                // Falls through to the same message.
            }
        }

        values.Wrong("breaths", $"must be two numbers of seconds such as 12/0.8, what one breath lasts and the shortest pause that is a breath, not {TextError.Quote(text)}");
        return null;
    }

    /// <summary>The text that <see cref="Breaths"/> reads.</summary>
    public static string ToText(BreathNeed need) => $"{ToText(need.CapacitySeconds)}/{ToText(need.ShortestBreathSeconds)}";

    /// <summary>A number of seconds in thousandths, rounded.</summary>
    public static string ToText(Rational seconds) => Math.Round((decimal)seconds.Numerator / seconds.Denominator, 3).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A number of seconds above 0, exact to thousandths.</summary>
    public static Rational? Seconds(string text, int most) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) && seconds > 0 && seconds <= most && decimal.Round(seconds, 3) == seconds
            ? new Rational((long)(seconds * 1000), 1000)
            : null;

    private static int? Number(string text) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var line) && line is > 0 and <= HighestLine ? line : null;
}
