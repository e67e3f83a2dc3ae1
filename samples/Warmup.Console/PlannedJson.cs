using System.Globalization;
using System.Text.Json;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The report of <c>warmup plan</c> as JSON: a new plan, one that was held against its class again, a day or a week.</summary>
internal sealed record PlannedJson(
    string Schema,
    string Tonic,
    string Level,
    int Minutes,
    List<PlannedJson.DayRow> Days,
    List<PlannedJson.PlannedSinger> Singers,
    PlannedJson.SungRow? Sung,
    List<string> Limits,
    List<string> LeftOut,
    List<PlannedJson.AgainRow>? Again,
    List<PlannedJson.Renewed>? Renewals,
    List<ClassJson.CautionRow> Cautions,
    List<PlannedJson.FileRow> Files)
{
    public const string Name = "urn:warmup:planned:1";

    /// <summary>Prints a new plan.</summary>
    public static void Print(Terminal terminal, PlanResult made, IEnumerable<PlanDay> days, PlanRequest request, PlanSinging singing, PlanWritten written) =>
        Print(terminal, Of(made.Plan, days, made.Cautions, written.Files) with
        {
            Singers = [.. request.Singers.Select((s, i) => ToPerson(s, made.Octaves[i], made.Reached[i], request.Start, []) with { Breaths = ToBreaths(singing, s) })],
            Sung = new SungRow(singing.Days, singing.Time.Share.ToDouble(), singing.Time.BreathsInside),
            Limits = [.. made.Limits],
            LeftOut = [.. made.LeftOut],
            Again = [.. made.Again.Select(e => new AgainRow(e.ScaleName, e.ExerciseName, Date(e.Date), [.. e.OffLines]))],
        });

    /// <summary>Prints a plan that was held against its class.</summary>
    public static void Print(Terminal terminal, PlanRenewal renewal, ValueList<Singer> singers, DateOnly? start, PlanWritten written)
    {
        var plan = renewal.Plan;
        Print(terminal, Of(plan, plan.Days, Warmup.Cautions.All, written.Files) with
        {
            Singers = [.. singers.Select((s, i) => ToPerson(s, renewal.Octaves[i], null, start ?? plan.Days[0].Date, FindingsOf(renewal, s)))],
            Renewals = [.. renewal.Days.Select(d => new Renewed(
                Date(d.Before.Date),
                d.Refusal is not null ? "notPossible" : d.HasOnlyMoreBreaths ? "moreBreaths" : "plannedAnew",
                d.Refusal,
                [.. d.Before.Drills.Select(ToDrill)]))],
        });
    }

    /// <summary>Prints some days of a plan.</summary>
    public static void Print(Terminal terminal, WarmupPlan plan, IEnumerable<PlanDay> days, ValueList<Caution> cautions, List<PlanWritten.Entry> files) =>
        Print(terminal, Of(plan, days, cautions, files));

    private static void Print(Terminal terminal, PlannedJson report) => terminal.Json(report, ConsoleJson.Default.PlannedJson);

    private static PlannedJson Of(WarmupPlan plan, IEnumerable<PlanDay> days, ValueList<Caution> cautions, List<PlanWritten.Entry> files) => new(
        Name,
        plan.Tonic.ToString(),
        plan.LevelName,
        plan.Minutes,
        [.. days.Select(ToDay)],
        [],
        null,
        [],
        [],
        null,
        null,
        [.. cautions.Select(c => new ClassJson.CautionRow(c.Text, c.Source))],
        files.ConvertAll(f => new FileRow(f.Path, f.Kept)));

    private static DayRow ToDay(PlanDay day) => new(
        Date(day.Date),
        day.Scale?.Name,
        day.Seconds.ToDouble(),
        [.. day.Drills.Select(ToDrill)],
        day.Shortfall?.ToString(),
        [.. day.LeftOut.Select(d => d.ExerciseName)]);

    private static DrillRow ToDrill(DayDrill planned) => new(
        planned.Drill.ExerciseName,
        planned.Drill.Title,
        JsonNamingPolicy.CamelCase.ConvertName(planned.Drill.Role.ToString()),
        planned.Tempo,
        planned.Times,
        planned.Drill.ClimbSemitones);

    private static PlannedSinger ToPerson(Singer singer, int octaves, int? reached, DateOnly on, List<FindingOfDay> findings) =>
        new(singer.Alias, octaves, reached, singer.IsMeasuringDue(on), null, findings);

    private static PlannedBreath? ToBreaths(PlanSinging singing, Singer singer) => singing.Breaths.FirstOrDefault(b => b.Singer == singer) is { } breath
        ? new PlannedBreath(breath.OwnBreathsInside, breath.Together, breath.WithoutSinger, breath.Time.Share.ToDouble())
        : null;

    private static List<FindingOfDay> FindingsOf(PlanRenewal renewal, Singer singer) =>
        [.. renewal.Days.SelectMany(d => d.Why.Where(f => f.Singer == singer.Alias).Select(f => new FindingOfDay(Date(d.Before.Date), Report.ToRow(f, null, null))))];

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A day; a day of rest has no scale and no drills. <c>Short</c> says why it fills too little of the minutes.</summary>
    internal sealed record DayRow(string Date, string? Scale, double Seconds, List<DrillRow> Drills, string? Short, List<string> LeftOut);

    internal sealed record DrillRow(string Name, string Title, string Role, int Tempo, int Times, int ClimbSemitones);

    /// <summary>A singer of the class; the findings are those of the days as they were planned before the class changed.</summary>
    internal sealed record PlannedSinger(string Alias, int Octaves, int? Reached, bool MeasureAnew, PlannedBreath? Breaths, List<FindingOfDay> Findings);

    /// <summary>What a singer's breath asks of the class; given for those with the shortest breaths.</summary>
    internal sealed record PlannedBreath(int OwnInside, int? InsideTogether, int? InsideWithoutSinger, double SungShare);

    internal sealed record FindingOfDay(string Date, FindingRow Finding);

    /// <summary>How much of the time the class sings in the first days of singing, and how often it breathes inside a line.</summary>
    internal sealed record SungRow(int Days, double Share, int BreathsInside);

    /// <summary>A drill that gets its turn again before others: on its last day in the log these lines stayed off.</summary>
    internal sealed record AgainRow(string Scale, string Name, string Date, List<int> Lines);

    /// <summary>A day that no longer fitted the class: what became of it, and the drills that it had.</summary>
    internal sealed record Renewed(string Date, string Outcome, string? Why, List<DrillRow> Before);

    /// <summary>A file of the plan, and whether it was there already.</summary>
    internal sealed record FileRow(string Path, bool Kept);
}
