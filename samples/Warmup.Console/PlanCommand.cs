using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary><c>warmup plan</c>: plans warm-ups over days, and makes a day of a plan again.</summary>
internal static class PlanCommand
{
    // What a day of the month's page links to: the page to practise with before a sheet to read, and a sheet before the files for other programs.
    private static readonly string[] LinkedFirst = [".html", ".pdf", ".txt"];

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var options = new PlanOptions();
        var command = new Command("plan", "Plans a warm-up for each day, or makes the files of one day again (--plan and --day).");
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
        var formats = options.ReadFormats(parsed, ".html .txt");
        PlanDraw draw;
        try
        {
            draw = WarmupPlan.Draw(request, cancellation);
        }
        catch (PlanImpossibleException impossible)
        {
            var command = impossible.Change is { } change ? $":{Environment.NewLine}  {PlanRemedy.Command(parsed, request, change.Request)}" : string.Empty;
            throw new InputException(impossible.Message + command);
        }

        // The days are drawn anew for each file, so that a plan over years takes no more memory than one over a month.
        var plan = draw.Outline.Plan;
        var force = parsed.GetValue(options.Force);
        var linked = LinkedFirst.FirstOrDefault(formats.Contains) ?? (formats.Count > 0 ? formats[0] : null);
        var (json, calendar) = (Path.Combine(folder, "plan.json"), Path.Combine(folder, "plan.ics"));
        Directory.CreateDirectory(folder);
        var pages = Pages().Select(p => Path.Combine(folder, p.FileName)).ToList();
        foreach (var file in ((string[])[json, calendar, .. pages]).Concat(Sung().SelectMany(d => Paths(folder, d, formats))))
        {
            Formats.RefuseUnwritable(file, force);
        }

        var days = WriteDays(folder, plan, Sung(), formats, force, cancellation);
        foreach (var page in Pages())
        {
            AtomicFile.Write(Path.Combine(folder, page.FileName), page.Write, force);
        }

        AtomicFile.Write(calendar, stream => PlanCalendar.Write(plan, draw.DrawDays, time, stream), force);
        AtomicFile.Write(json, stream => PlanFile.Write(plan, draw.DrawDays(), stream), force);
        PlanTable.Print(terminal, draw.DrawDays());
        PlanTable.PrintClass(terminal, draw, request.Singers);
        SingersHistory.PrintDue(terminal, request.Singers, request.Start);
        SingingTable.Print(terminal, PlanSinging.Of(plan, Sung().Take(SingingTable.MostDays), request.Singers, SingingTable.MostSingers, cancellation));
        var more = pages.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" (and {pages.Count - 1} more pages behind it)") : string.Empty;
        terminal.Out.WriteLine($"wrote {json}, {pages[0]}{more} and {calendar}{(formats.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $", and {days * formats.Count} files for the days") : string.Empty)}");
        Report.PrintCautions(terminal, draw.Outline.Cautions);

        IEnumerable<PlanDay> Sung() => draw.DrawDays().Where(d => !d.IsRest);

        IEnumerable<MonthPage> Pages() => MonthPage.Of(plan, draw.DrawDays(), linked is null ? null : d => Name(d) + linked);
    }

    /// <summary>Writes the files of all days, several days at a time, and counts the days.</summary>
    private static int WriteDays(string folder, WarmupPlan plan, IEnumerable<PlanDay> days, IReadOnlyList<string> formats, bool force, CancellationToken cancellation)
    {
        if (formats.Count == 0)
        {
            return days.Count();
        }

        Formats.RemoveLeftovers(folder);
        var scores = new DayScores(plan);
        var workers = new OrderedParallel { Workers = Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers), LookAhead = 2 * Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers) };
        return workers.Map(days, Write, cancellation).Count();

        DateOnly Write(PlanDay day, CancellationToken stop)
        {
            WriteDay(folder, day, scores.Of(day, stop), formats, force, stop);
            return day.Date;
        }
    }

    private static void MakeDay(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var date = PlanOptions.ReadDate(parsed, options.Day) ?? throw new InputException("--plan needs the day to make; add --day 2026-12-05");
        if (date < plan.Days[0].Date || date > plan.Days[^1].Date)
        {
            throw new InputException(string.Create(
                CultureInfo.InvariantCulture, $"--day must be between {plan.Days[0].Date:yyyy-MM-dd} and {plan.Days[^1].Date:yyyy-MM-dd}, not {date:yyyy-MM-dd}"));
        }

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

        var score = plan.ToScore(day, cancellationToken: cancellation);
        Formats.RemoveLeftovers(folder);
        WriteDay(folder, day, score, formats, force, cancellation);
        foreach (var path in Paths(folder, day, formats))
        {
            terminal.Out.WriteLine($"wrote {path} ({Formats.Of(path).Name})");
        }

        PlanTable.PrintDay(terminal, plan, day);
        if (parsed.GetValue(options.Sung))
        {
            AppendLog(log!, day, parsed.GetValue(options.Tick));
        }

        Report.PrintCautions(terminal, score.Cautions);
    }

    private static void AppendLog(string path, PlanDay day, bool ticked)
    {
        foreach (var planned in day.Drills)
        {
            PlanLog.Append(path, new LogEntry
            {
                Date = day.Date,
                ScaleName = planned.Drill.Scale.Name,
                ExerciseName = planned.Drill.ExerciseName,
                Tempo = planned.Tempo,
                IsTicked = ticked,
            });
        }
    }

    private static string Name(PlanDay day) => day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Paths(string folder, PlanDay day, IReadOnlyList<string> formats) => formats.Select(f => Path.Combine(folder, Name(day) + f));

    private static void WriteDay(
        string folder, PlanDay day, Score score, IReadOnlyList<string> formats, bool force, CancellationToken cancellation)
    {
        if (score.Seconds != day.Seconds)
        {
            throw new InputException($"the plan gives {day.Seconds} s for {Name(day)}, but its drills take {score.Seconds} s; the file was changed by hand, or another version wrote it");
        }

        Formats.WriteWhole([.. Paths(folder, day, formats).Select(path => Formats.File(path, Formats.Of(path), score, cancellation))], force);
    }

    private static WarmupPlan ReadPlan(string path) =>
        InputFile.Read("--plan", path, PlanFile.LargestFile, "a plan.json that 'warmup plan' wrote", bytes => PlanFile.Read(bytes));
}
