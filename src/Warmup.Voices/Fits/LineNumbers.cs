using System.Globalization;

namespace Warmup.Voices;

/// <summary>Numbers of lines in words.</summary>
public static class LineNumbers
{
    /// <summary>Lines 1 2 3 5 as <c>1-3, 5</c>.</summary>
    /// <param name="lines">The numbers in any order; repeated ones count once.</param>
    public static string ToText(IEnumerable<int> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var parts = new List<(int From, int To)>();
        foreach (var line in lines.Distinct().Order())
        {
            if (parts.Count > 0 && parts[^1].To == line - 1)
            {
                parts[^1] = (parts[^1].From, line);
            }
            else
            {
                parts.Add((line, line));
            }
        }

        return string.Join(", ", parts.Select(p => p.From == p.To
            ? p.From.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{p.From}-{p.To}")));
    }
}
