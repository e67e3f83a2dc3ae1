using System.Text;
using Warmup.Samples;

namespace Warmup.Web;

/// <summary>The class as text: a JSON file of singers, a table, or rows of a table without their heading.</summary>
internal static class ClassText
{
    private const string Heading = "alias,low,high,sustainedSeconds,experience";

    /// <summary>An invented class to begin with. No such people exist.</summary>
    public const string Invented = Heading + "\nWren,G3,E5,18,beginner\nFinch,F3,D5,20,intermediate\nHeron,F3,C5,22,advanced\nOtter,C3,G4,24,intermediate\nBadger,G2,D4,22,beginner\nRobin,B3,D5,12,beginner\n";

    /// <summary>The singers, or what is wrong with the text.</summary>
    public static ValueList<Singer> Read(string text, Limits limits, List<QueryError> errors)
    {
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            return [];
        }

        try
        {
            var singers = trimmed[0] == '{' ? SingersFile.Read(Encoding.UTF8.GetBytes(trimmed)) : SingersCsv.Read(Encoding.UTF8.GetBytes(WithHeading(trimmed)));
            if (singers.Count <= limits.MostSingers)
            {
                return singers;
            }

            errors.Add(new("class", null, null, Texts.English.TooManySingers(limits.MostSingers)));
        }
        catch (WarmupFormatException wrong)
        {
            errors.Add(new("class", wrong.Error.Line, wrong.Error.Column, wrong.Error.Message));
        }

        return [];
    }

    /// <summary>The class as a table, only with the columns that say something.</summary>
    public static string ToTable(ValueList<Singer> singers)
    {
        using var bytes = new MemoryStream();
        SingersCsv.Write(singers, bytes);
        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    /// <summary>The table with one more row.</summary>
    public static string WithRow(string table, params IEnumerable<string> cells)
    {
        var row = string.Join(',', cells.Select(c => c.AsSpan().ContainsAny(",\"\r\n") ? $"\"{c.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : c));
        var before = table.Trim();
        return before.Length == 0 ? $"{Heading}\n{row}\n" : $"{before}\n{row}\n";
    }

    private static string WithHeading(string table) => table.StartsWith("alias", StringComparison.OrdinalIgnoreCase) || table.Contains("alias,", StringComparison.OrdinalIgnoreCase)
        ? table
        : $"{string.Join(',', Heading.Split(',').Take(Math.Max(4, table.Split('\n')[0].Split(',').Length)))}\n{table}";
}
