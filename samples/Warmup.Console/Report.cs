using System.Text.Json;
using System.Text.Json.Serialization;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary>Prints how a score fits singers.</summary>
internal static class Report
{
    public const string Schema = "urn:warmup:findings:1";

    /// <summary>A table of singers with their findings, and the cautions.</summary>
    /// <returns>Whether the score fits all.</returns>
    public static bool Print(Terminal terminal, Score score, ValueList<Singer> singers, Action? beforeCautions = null)
    {
        foreach (var finding in score.Findings)
        {
            terminal.Out.WriteLine($"note: {finding.Describe()}");
        }

        if (singers.IsEmpty)
        {
            return true;
        }

        var fits = true;
        var table = new Table().Border(TableBorder.Ascii2).AddColumns("singer", "fits", "line", "what does not fit, and what would help");
        foreach (var singer in singers)
        {
            var findings = score.Check(singer);
            if (findings.IsEmpty)
            {
                table.AddRow(Terminal.Plain(singer.ToString()), "yes", string.Empty, string.Empty);
            }

            foreach (var row in Rows(findings))
            {
                fits &= row.Worst.Severity != Severity.Error;
                table.AddRow(Terminal.Plain(singer.ToString()), "no", row.Lines, Terminal.Plain($"{row.Worst.Message}; {row.Worst.Fix}"));
            }
        }

        terminal.Rich.Write(table);
        beforeCautions?.Invoke();
        PrintCautions(terminal, score.Cautions);
        return fits;
    }

    /// <summary>The cautions with their sources.</summary>
    public static void PrintCautions(Terminal terminal, ValueList<Caution> cautions)
    {
        foreach (var caution in cautions)
        {
            terminal.Out.WriteLine($"- {caution.Text} ({caution.Source})");
        }
    }

    /// <summary>The findings in groups that one fix clears: the lines of each group, and its worst finding.</summary>
    public static IEnumerable<(string Lines, Finding Worst)> Rows(IEnumerable<Finding> findings) =>
        findings.GroupBy(f => (f.Code, f.Fix, f.Place?.Section, f.Place?.Title)).Select(group =>
            (Lines(group.Key.Section, group.Key.Title, group), group.MaxBy(f => Math.Abs((f.Measured ?? 0) - (f.Limit ?? 0)))!));

    private static string Lines(int? section, string? title, IEnumerable<Finding> findings)
    {
        var lines = LineNumbers.ToText(findings.Select(f => f.Place?.Line ?? 0).Where(l => l > 0));
        return title is null ? lines : $"section {section}: {lines}";
    }

    /// <summary>The same as JSON.</summary>
    /// <returns>Whether the score fits all.</returns>
    public static bool PrintJson(Terminal terminal, Score score, ValueList<Singer> singers)
    {
        var report = ToReport(score, singers);
        terminal.Json(report, ConsoleJson.Default.FitReport);
        return report.Singers.All(s => s.Fits);
    }

    private static FitReport ToReport(Score score, ValueList<Singer> singers) => new(
        Schema,
        score.Title,
        score.Findings.Select(ToRow).ToList(),
        singers.Select(s => new SingerReport(s.Alias, score.Fits(s), score.Check(s).Select(ToRow).ToList())).ToList(),
        score.Cautions.Select(c => c.Text).ToList());

    private static FindingRow ToRow(Finding finding) => new(
        finding.Code,
        JsonNamingPolicy.CamelCase.ConvertName(finding.Severity.ToString()),
        finding.Place is { Title: not null } place ? place.Section : null,
        finding.Place?.Line,
        finding.Place?.Beat?.ToString(),
        finding.Message,
        finding.Measured,
        finding.Limit,
        finding.Unit,
        finding.Fix);
}

internal sealed record FitReport(string Schema, string Title, List<FindingRow> Notes, List<SingerReport> Singers, List<string> Cautions);

internal sealed record SingerReport(string Alias, bool Fits, List<FindingRow> Findings);

internal sealed record FindingRow(
    string Code, string Severity, int? Section, int? Line, string? Beat, string Message, double? Measured, double? Limit, string? Unit, string Fix);

internal sealed record ScaleReport(string Schema, List<ScaleRow> Scales);

internal sealed record ScaleRow(string Name, string Family, int? Parent, string Notes, string Ascent, string Descent, bool Vakra, List<string> Spellings, string Source);

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true)]
[JsonSerializable(typeof(FitReport))]
[JsonSerializable(typeof(ClassJson))]
[JsonSerializable(typeof(HistoryReport))]
[JsonSerializable(typeof(ScaleReport))]
[JsonSerializable(typeof(ScaleDetail))]
[JsonSerializable(typeof(PatternReport))]
[JsonSerializable(typeof(PatternDetail))]
[JsonSerializable(typeof(ExerciseReport))]
internal sealed partial class ConsoleJson : JsonSerializerContext;
