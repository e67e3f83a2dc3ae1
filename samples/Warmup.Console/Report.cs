using System.Text.Json;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary>How a score fits singers, and what would make it fit.</summary>
internal sealed class Report
{
    public const string Schema = "urn:warmup:findings:2";

    private readonly Drill _drill;
    private readonly Score _score;
    private readonly ValueList<Singer> _singers;
    private readonly ValueList<Advice> _advice;
    private readonly Func<Remedy, IReadOnlyList<string>> _toOptions;

    private Report(Drill drill, Score score, ValueList<Singer> singers, ValueList<Advice> advice, Func<Remedy, IReadOnlyList<string>> toOptions) =>
        (_drill, _score, _singers, _advice, _toOptions) = (drill, score, singers, advice, toOptions);

    /// <summary>Whether the score fits all.</summary>
    public bool Fits => !_advice.Any(a => a.Finding.Severity == Severity.Error);

    /// <summary>Checks a drill.</summary>
    /// <param name="drill">The drill.</param>
    /// <param name="score">Its score, with the planned breaths if there are any.</param>
    /// <param name="singers">The singers, or none.</param>
    /// <param name="planned">What breaths were planned for, or <see langword="null"/>.</param>
    /// <param name="toOptions">The options that make a change.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Report Of(
        Drill drill, Score score, ValueList<Singer> singers, BreathNeed? planned, Func<Remedy, IReadOnlyList<string>> toOptions, CancellationToken cancellation) =>
        new(drill, score, singers, singers.IsEmpty ? [] : drill.Advise(singers, planned: planned, cancellationToken: cancellation), toOptions);

    /// <summary>A table of singers with their findings, what would help, and the cautions.</summary>
    public void Print(Terminal terminal, Action? beforeCautions = null)
    {
        foreach (var finding in _score.Findings)
        {
            terminal.Out.WriteLine($"note: {finding.Describe()}");
        }

        if (_singers.IsEmpty)
        {
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("singer", "fits", "line", "what does not fit");
        var help = new List<string>();
        foreach (var singer in _singers)
        {
            var rows = Rows(_advice.Where(a => a.Singer == singer)).ToList();
            if (rows.Count == 0)
            {
                table.AddRow(Terminal.Plain(singer.ToString()), "yes", string.Empty, string.Empty);
            }

            foreach (var (lines, worst) in rows)
            {
                table.AddRow(Terminal.Plain(singer.ToString()), "no", lines, Terminal.Plain(worst.Finding.Message));
                help.Add($"- {singer.Alias}, {worst.Finding.Code.Split('.')[0]}{(lines.Length == 0 ? string.Empty : $", {LinesWord(lines)} {lines}")}: {Help(worst)}");
            }
        }

        terminal.Rich.Write(table);
        if (help.Count > 0)
        {
            terminal.Out.WriteLine("What would help (applied and checked: it brings no new finding):");
            help.ForEach(terminal.Out.WriteLine);
        }

        beforeCautions?.Invoke();
        PrintCautions(terminal, _score.Cautions);
    }

    /// <summary>The same as JSON, with the files that were written, if any.</summary>
    public void PrintJson(Terminal terminal, List<WrittenFile>? files = null) => PrintJson(terminal, _score, _singers, files, singer => _advice.Where(a => a.Singer == singer).Select(
        a => ToRow(a.Finding, Together(a), a.Remedies.IsEmpty ? new WithoutRemedy(a.Otherwise, Alone(a)) : null)));

    /// <summary>The findings with what would help, for reports of other kinds.</summary>
    public List<SungFindingRow> SungRows() => [.. _advice.Select(a => new SungFindingRow(
        a.Singer.Alias, a.Finding.Code, a.Finding.Place?.Line, a.Finding.Message, Together(a), a.Remedies.IsEmpty ? new WithoutRemedy(a.Otherwise, Alone(a)) : null))];

    /// <summary>Findings as JSON.</summary>
    public static void PrintJson(Terminal terminal, Score score, ValueList<Singer> singers, List<WrittenFile>? files, Func<Singer, IEnumerable<FindingRow>> rowsOf) => terminal.Json(
        new FitReport(
            Schema,
            score.Title,
            score.Findings.Select(f => ToRow(f, null, null)).ToList(),
            singers.Select(s => ToSinger(s, rowsOf(s).ToList())).ToList(),
            score.Cautions.Select(c => c.Text).ToList(),
            files),
        ConsoleJson.Default.FitReport);

    /// <summary>The cautions, in two lines or whole with their sources.</summary>
    public static void PrintCautions(Terminal terminal, ValueList<Caution> cautions) => CautionOption.Print(terminal.Out, cautions, terminal.HasWholeCautions);

    /// <summary>The findings in groups that the same changes clear: the lines of each group, and its worst finding.</summary>
    public static IEnumerable<(string Lines, Advice Worst)> Rows(IEnumerable<Advice> advice) =>
        advice.GroupBy(a => (a.Finding.Code, a.Finding.Place?.Section, a.Finding.Place?.Title, a.Remedies, a.Alone, a.Otherwise)).Select(group =>
            (Lines(group.Key.Section, group.Key.Title, group.Select(a => a.Finding)), group.MaxBy(a => Math.Abs((a.Finding.Measured ?? 0) - (a.Finding.Limit ?? 0)))!));

    /// <summary><c>line</c> for one number, <c>lines</c> for more.</summary>
    public static string LinesWord(string lines) => lines.All(char.IsAsciiDigit) ? "line" : "lines";

    private static string Lines(int? section, string? title, IEnumerable<Finding> findings)
    {
        var lines = LineNumbers.ToText(findings.Select(f => f.Place?.Line ?? 0).Where(l => l > 0));
        return title is null ? lines : $"section {section}: {lines}";
    }

    private static string Quoted(string option) => option.Any(c => c is ' ' or '\'' or ',' or '#') ? $"\"{option}\"" : option;

    private string Help(Advice advice)
    {
        var ways = string.Join("; or ", (advice.Remedies.IsEmpty ? Alone(advice) : Together(advice)).Select(r => r.Options.Count == 0 ? r.Text : $"{r.Text} ({string.Join(' ', r.Options.Select(Quoted))})"));
        return advice.Remedies.IsEmpty ? $"{advice.Otherwise}{(ways.Length == 0 ? string.Empty : $": {ways}")}" : ways;
    }

    private static SingerReport ToSinger(Singer singer, List<FindingRow> rows) =>
        new(singer.Alias, !rows.Exists(r => r.Severity == Word(Severity.Error)), rows);

    private static string Word(Severity severity) => JsonNamingPolicy.CamelCase.ConvertName(severity.ToString());

    private List<RemedyRow> Together(Advice advice) => [.. advice.Remedies.Select(r => new RemedyRow(r.Describe(_drill), [.. _toOptions(r)]))];

    private List<RemedyRow> Alone(Advice advice) =>
        [.. advice.Alone.Select(r => new RemedyRow(r.Describe(_drill), [SingerOptions.AliasName, advice.Singer.Alias, .. _toOptions(r)]))];

    public static FindingRow ToRow(Finding finding, List<RemedyRow>? remedies, WithoutRemedy? without) => new(
        finding.Code,
        Word(finding.Severity),
        finding.Place is { Title: not null } place ? place.Section : null,
        finding.Place?.Line,
        finding.Place?.Beat?.ToString(),
        finding.Message,
        finding.Measured,
        finding.Limit,
        finding.Unit,
        finding.Fix.Length == 0 ? null : finding.Fix,
        remedies,
        without);
}
