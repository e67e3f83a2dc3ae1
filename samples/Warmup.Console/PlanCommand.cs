using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary><c>warmup plan</c>: plans warm-ups over days, and makes a day of a plan again.</summary>
internal static class PlanCommand
{
    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var options = new PlanOptions();
        var command = new Command("plan", "Plans a warm-up for each day, or with --plan and --day makes a day's files again.");
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(options.Plan) is { } path)
            {
                options.RefuseWith("--plan", parsed);
                MakeDay(terminal, ReadPlan(path), options, parsed, cancellation);
            }
            else
            {
                MakePlan(terminal, options, parsed, cancellation);
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static void MakePlan(Terminal terminal, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var request = options.ReadRequest(parsed, terminal);
        var time = options.ReadTime(parsed);
        var folder = options.ReadFolder(parsed);
        var formats = options.ReadFormats(parsed, ".txt");
        PlanResult made;
        try
        {
            made = WarmupPlan.Make(request, cancellation);
        }
        catch (PlanImpossibleException impossible)
        {
            throw new InputException(impossible.Message);
        }

        var plan = made.Plan;
        var force = parsed.GetValue(options.Force);
        var (json, page, calendar) = (Path.Combine(folder, "plan.json"), Path.Combine(folder, "plan.html"), Path.Combine(folder, "plan.ics"));
        var days = plan.Days.Where(d => !d.IsRest).ToList();
        Directory.CreateDirectory(folder);
        foreach (var file in (string[])[json, page, calendar, .. days.SelectMany(d => Paths(folder, d, formats))])
        {
            Formats.RefuseUnwritable(file, force);
        }

        foreach (var day in days)
        {
            if (formats.Count > 0)
            {
                WriteDay(folder, day, plan.ToScore(day, cancellation), formats, force, cancellation);
            }
        }

        string? sheet = formats.Contains(".txt") ? ".txt" : formats.Count > 0 ? formats[0] : null;
        AtomicFile.Write(page, stream => MonthPage.Write(plan, stream, sheet is null ? null : d => Name(d) + sheet), force);
        AtomicFile.Write(calendar, stream => PlanCalendar.Write(plan, time, stream), force);
        AtomicFile.Write(json, stream => PlanFile.Write(plan, stream), force);
        PlanTable.Print(terminal, plan);
        PlanTable.PrintClass(terminal, made, request.Singers);
        terminal.Out.WriteLine($"wrote {json}, {page} and {calendar}{(formats.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $", and {days.Count * formats.Count} files of days") : string.Empty)}");
        Report.PrintCautions(terminal);
    }

    private static void MakeDay(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var date = PlanOptions.ReadDate(parsed, options.Day) ?? throw new InputException("--plan needs the day to make; add --day 2026-12-05");
        var day = plan.DayOf(date);
        if (day.IsRest)
        {
            throw new InputException($"--day: {Name(day)} is a day of rest in this plan; name another day");
        }

        var log = options.ReadLogPath(parsed);
        if (parsed.GetValue(options.Sung) && log is null)
        {
            throw new InputException("--sung needs the log to add to; add --log FILE");
        }

        var folder = options.ReadFolder(parsed);
        var formats = options.ReadFormats(parsed, ".txt .mid .musicxml");
        var force = parsed.GetValue(options.Force);
        Directory.CreateDirectory(folder);
        foreach (var path in Paths(folder, day, formats))
        {
            Formats.RefuseUnwritable(path, force);
        }

        var score = plan.ToScore(day, cancellation);
        WriteDay(folder, day, score, formats, force, cancellation);
        foreach (var path in Paths(folder, day, formats))
        {
            terminal.Out.WriteLine($"wrote {path} ({Formats.Of(path).Name})");
        }

        PlanTable.PrintDay(terminal, plan, day);
        if (parsed.GetValue(options.Sung))
        {
            AppendLog(log!, plan, day, parsed.GetValue(options.Tick));
        }

        Report.PrintCautions(terminal);
    }

    private static void AppendLog(string path, WarmupPlan plan, PlanDay day, bool ticked)
    {
        foreach (var planned in day.Drills)
        {
            var drill = plan.Drills[planned.Drill];
            PlanLog.Append(path, new LogEntry(day.Date, drill.Scale.Name, drill.Exercise, planned.Tempo, ticked));
        }
    }

    private static string Name(PlanDay day) => day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Paths(string folder, PlanDay day, IReadOnlyList<string> formats) => formats.Select(f => Path.Combine(folder, Name(day) + f));

    private static void WriteDay(
        string folder, PlanDay day, Score score, IReadOnlyList<string> formats, bool force, CancellationToken cancellation)
    {
        if (score.Seconds != day.Seconds)
        {
            throw new InputException($"the plan gives {day.Seconds} s for {Name(day)}, but its drills take {score.Seconds} s; it was changed by hand, or made by another version");
        }

        foreach (var path in Paths(folder, day, formats))
        {
            Formats.Of(path).Save(score, path, force, cancellation);
        }
    }

    private static WarmupPlan ReadPlan(string path)
    {
        try
        {
            return new FileInfo(path) is { Exists: true, Length: > PlanFile.LargestFile } large
                ? throw new InputException($"--plan: {path} has {large.Length} bytes; the most is {PlanFile.LargestFile}")
                : PlanFile.Read(File.ReadAllBytes(path));
        }
        catch (WarmupFormatException broken)
        {
            throw new InputException($"--plan: {path}, {broken.Error}");
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw new InputException($"--plan: {path} cannot be read ({unreadable.Message}); name a plan.json that 'warmup plan' wrote");
        }
    }
}
