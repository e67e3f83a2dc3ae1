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

    public static void Print(Terminal terminal, IEnumerable<PlanDay> days)
    {
        var (months, month) = (0, new List<PlanDay>());
        foreach (var day in days)
        {
            if (month.Count > 0 && month[0].Date.Month != day.Date.Month)
            {
                End();
            }

            month.Add(day);
        }

        End();
        if (months > MostMonths)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"and {months - MostMonths} more months in plan.html"));
        }

        void End()
        {
            if (months++ < MostMonths)
            {
                terminal.Rich.Write(Month(month));
            }

            month = [];
        }
    }

    /// <summary>Who sings where, and which scales were left out for whom.</summary>
    public static void PrintClass(Terminal terminal, PlanResult made, IEnumerable<PlanDay> days, ValueList<Singer> singers)
    {
        terminal.Out.WriteLine($"tonic {made.Plan.Tonic}, level {made.Plan.LevelName}");
        PrintOctaves(terminal, made.Octaves, singers);
        PrintReached(terminal, made, singers);
        foreach (var again in made.Again)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"again before others: {again.ExerciseName} in {again.ScaleName}, of which on {again.Date:yyyy-MM-dd} these lines stayed off: {string.Join(", ", again.OffLines)} (--no-again switches this off)"));
        }

        foreach (var limit in made.Limits)
        {
            terminal.Out.WriteLine(limit);
        }

        PrintShort(terminal, made.Plan.Minutes, days);
        foreach (var scale in made.LeftOut)
        {
            terminal.Out.WriteLine($"left out: {scale}");
        }
    }

    public static void PrintOctaves(Terminal terminal, ValueList<int> octavesOfSingers, ValueList<Singer> singers)
    {
        foreach (var group in Enumerable.Range(0, singers.Count).GroupBy(s => octavesOfSingers[s]).Where(g => g.Key != 0).OrderBy(g => g.Key))
        {
            var octaves = Math.Abs(group.Key) == 1 ? "an octave" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(group.Key)} octaves");
            terminal.Out.WriteLine($"{octaves} {(group.Key < 0 ? "lower" : "higher")}: {string.Join(", ", group.Select(s => singers[s].Alias))}");
        }
    }

    /// <summary>What the log says each singer has reached, where it says that of anybody.</summary>
    private static void PrintReached(Terminal terminal, PlanResult made, ValueList<Singer> singers)
    {
        if (made.Reached.All(r => r is null))
        {
            return;
        }

        var reached = Enumerable.Range(0, singers.Count).Select(s => $"{singers[s].Alias} {(made.Reached[s] is { } tempo ? tempo.ToString(CultureInfo.InvariantCulture) : "nothing yet")}");
        terminal.Out.WriteLine($"reached and ticked: {string.Join(", ", reached)}; the plan goes on from the slowest");
    }

    /// <summary>The days that fill too little of the time, and why.</summary>
    private static void PrintShort(Terminal terminal, int minutes, IEnumerable<PlanDay> days)
    {
        var count = 0;
        foreach (var day in days.Where(d => d.Shortfall is not null))
        {
            if (count++ < MostShort)
            {
                terminal.Out.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"short: {day.Date:yyyy-MM-dd} lasts {Minutes(day)} of {minutes}:00 minutes; {day.Shortfall}"));
            }
        }

        if (count > MostShort)
        {
            terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"short: {count - MostShort} more days, marked with an asterisk; plan.html gives the reasons"));
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
