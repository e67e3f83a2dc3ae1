using System.Globalization;

namespace Warmup.Cli;

/// <summary><c>--lines</c>: some of a pattern's lines, such as <c>1-5,7</c>.</summary>
internal static class LineChoice
{
    // What is typed is far shorter; a longer list is a mistake.
    private const int MostLines = 10_000;

    /// <exception cref="InputException">The text names no lines.</exception>
    public static ValueList<int> Read(string text)
    {
        var lines = new SortedSet<int>();
        foreach (var part in text.Split(','))
        {
            var ends = part.Split('-');
            if (ends.Length > 2 || !TryRead(ends[0], out var from) || !TryRead(ends[^1], out var to) || to < from || to > MostLines)
            {
                throw new InputException($"--lines must name lines from 1, such as 1-5,7, not {TextError.Quote(part)} in {TextError.Quote(text)}");
            }

            lines.UnionWith(Enumerable.Range(from, to - from + 1));
        }

        return lines.ToValueList();
    }

    /// <summary>The drill with these of its lines.</summary>
    /// <exception cref="InputException">It has no line of such a number.</exception>
    public static Drill Of(Drill drill, ValueList<int> lines)
    {
        try
        {
            return new FewerLines(lines).Apply(drill);
        }
        catch (ArgumentException refused)
        {
            throw new InputException($"--lines {ToText(lines)}: {refused.Message.Split(" (Parameter", 2)[0]}");
        }
    }

    /// <summary>Some of the lines that were chosen already, as they are named after <c>--lines</c>.</summary>
    public static string ToText(ValueList<int> lines, string? before) => ToText(before is null ? lines : lines.ConvertAll(l => Read(before)[l - 1]));

    public static string ToText(IEnumerable<int> lines) => LineNumbers.ToText(lines).Replace(" ", string.Empty, StringComparison.Ordinal);

    private static bool TryRead(string text, out int line) => int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out line) && line > 0;
}
