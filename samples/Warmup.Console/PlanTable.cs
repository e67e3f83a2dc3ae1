using System.Globalization;
using Spectre.Console;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>Prints a plan.</summary>
internal static class PlanTable
{
    private const int DaysAWeek = 7;

    // A plan over years would fill screens; its page has all months.
    private const int MostMonths = 6;
    private const int MostShort = 5;

    public static void Print(Terminal terminal, WarmupPlan plan)
    {
        var months = plan.Days.GroupBy(d => (d.Date.Year, d.Date.Month)).ToList();
        foreach (var month in months.Take(MostMonths))
        {
            terminal.Rich.Write(Month(month.ToList()));
        }

        if (months.Count > MostMonths)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {months.Count - MostMonths} more months in plan.html"));
        }
    }

    /// <summary>Who sings where, and which scales were left out for whom.</summary>
    public static void PrintClass(Terminal terminal, PlanResult made, ValueList<Singer> singers)
    {
        terminal.Out.WriteLine($"tonic {made.Plan.Tonic}, level {made.Plan.LevelName}");
        foreach (var group in Enumerable.Range(0, singers.Count).GroupBy(s => made.Octaves[s]).Where(g => g.Key != 0).OrderBy(g => g.Key))
        {
            var octaves = Math.Abs(group.Key) == 1 ? "an octave" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(group.Key)} octaves");
            terminal.Out.WriteLine($"{octaves} {(group.Key < 0 ? "lower" : "higher")}: {string.Join(", ", group.Select(s => singers[s].Alias))}");
        }

        foreach (var limit in made.Limits)
        {
            terminal.Out.WriteLine(limit);
        }

        PrintShort(terminal, made.Plan);
        foreach (var scale in made.LeftOut)
        {
            terminal.Out.WriteLine($"left out: {scale}");
        }
    }

    /// <summary>The days that fill too little of the time, and why.</summary>
    private static void PrintShort(Terminal terminal, WarmupPlan plan)
    {
        var days = plan.Days.Where(d => d.Shortfall is not null).ToList();
        foreach (var day in days.Take(MostShort))
        {
            terminal.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"short: {day.Date:yyyy-MM-dd} lasts {Minutes(day)} of {plan.Minutes}:00 minutes; {day.Shortfall}"));
        }

        if (days.Count > MostShort)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"short: {days.Count - MostShort} more days, marked with an asterisk; plan.html gives the reasons"));
        }
    }

    public static void PrintDay(Terminal terminal, WarmupPlan plan, PlanDay day)
    {
        foreach (var planned in day.Drills)
        {
            terminal.Out.WriteLine($"  {planned}: {planned.Drill.Title}");
        }

        terminal.Out.WriteLine($"{Minutes(day)} of {plan.Minutes}:00 minutes");
        if (day.Shortfall is { } shortfall)
        {
            terminal.Out.WriteLine($"short: {shortfall}");
        }

        if (!day.LeftOut.IsEmpty)
        {
            terminal.Out.WriteLine($"left out for lack of time: {string.Join(", ", day.LeftOut.ConvertAll(d => d.ExerciseName))}");
        }
    }

    private static Table Month(List<PlanDay> days)
    {
        var first = new DateOnly(days[0].Date.Year, days[0].Date.Month, 1);
        var table = new Table().Border(TableBorder.Ascii2).Title(first.ToString("MMMM yyyy", CultureInfo.InvariantCulture)).AddColumns("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun");
        var before = ((int)first.DayOfWeek + DaysAWeek - 1) % DaysAWeek;
        var cells = Enumerable.Repeat(string.Empty, before).ToList();
        for (var day = first; day.Month == first.Month; day = day.AddDays(1))
        {
            cells.Add(Cell(day, days.Find(d => d.Date == day)));
            if (day == DateOnly.MaxValue)
            {
                break;
            }
        }

        foreach (var week in cells.Chunk(DaysAWeek))
        {
            table.AddRow(week.Concat(Enumerable.Repeat(string.Empty, DaysAWeek - week.Length)).ToArray());
        }

        return table;
    }

    private static string Cell(DateOnly date, PlanDay? day)
    {
        var number = date.Day.ToString(CultureInfo.InvariantCulture);
        return day is null ? number
            : day.IsRest ? $"{number} rest"
            : $"{number} {Terminal.Plain(day.Scale!.Name)} {Minutes(day)}{(day.Shortfall is null ? string.Empty : "*")}";
    }

    private static string Minutes(PlanDay day) => day.Duration.ToString("m\\:ss", CultureInfo.InvariantCulture);
}
