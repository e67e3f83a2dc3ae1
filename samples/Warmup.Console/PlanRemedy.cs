using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The command that was typed, with the one change that makes a plan possible.</summary>
internal static class PlanRemedy
{
    /// <summary>The command with the change in it, ready to be typed.</summary>
    public static string Command(ParseResult parsed, PlanRequest request, PlanRequest changed)
    {
        var options = Options(request, changed).ToList();
        var words = new List<string> { "warmup" };
        var isReplaced = false;
        foreach (var token in parsed.Tokens)
        {
            isReplaced = token.Type == TokenType.Option ? options.Exists(o => o.Name == token.Value && o.Name != PlanOptions.WithoutName) : isReplaced;
            if (!isReplaced)
            {
                words.Add(Quoted(token.Value));
            }
        }

        foreach (var (name, value) in options)
        {
            words.AddRange(value is null ? [] : [name, Quoted(value)]);
        }

        return string.Join(' ', words);
    }

    /// <summary>The options that differ; without a value where one has to be left out.</summary>
    private static IEnumerable<(string Name, string? Value)> Options(PlanRequest request, PlanRequest changed)
    {
        if (changed.Tonic != request.Tonic)
        {
            yield return (TonicOption.Name, changed.Tonic?.ToString());
        }

        foreach (var (name, before, after) in ((string, int, int)[])
        [
            ("--no-repeat", request.NoRepeatDays, changed.NoRepeatDays),
            ("--least", request.LeastFillPercent, changed.LeastFillPercent),
            ("--minutes", request.Minutes, changed.Minutes),
            ("--days", request.Days, changed.Days),
        ])
        {
            if (before != after)
            {
                yield return (name, after.ToString(CultureInfo.InvariantCulture));
            }
        }

        var (old, level) = (request.Level ?? Level.Of(request.Singers), changed.Level ?? Level.Of(changed.Singers));
        if (changed.Level is not null && level.Name != old.Name)
        {
            yield return ("--level", level.Name);
            yield return ("--tempo", null);
        }
        else if (changed.Level is not null && level.Tempo != old.Tempo)
        {
            yield return ("--tempo", level.Tempo.ToString());
        }

        if (changed.Log.Count != request.Log.Count)
        {
            yield return ("--log", null);
        }

        foreach (var singer in request.Singers.Except(changed.Singers))
        {
            yield return (PlanOptions.WithoutName, singer.Alias);
        }
    }

    private static string Quoted(string word) =>
        word.Length > 0 && word.All(c => char.IsAsciiLetterOrDigit(c) || "-_./:#".Contains(c, StringComparison.Ordinal)) && word[0] != '#'
            ? word
            : $"\"{word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("$", "\\$", StringComparison.Ordinal).Replace("`", "\\`", StringComparison.Ordinal)}\"";
}
