using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary><c>warmup plan</c>: plans warm-ups over days, and makes a day of a plan again, or holds a plan against a class that has changed.</summary>
internal static class PlanCommand
{
    private const string UsualFormats = ".html .txt";

    public static Command Create(Terminal terminal, CancellationToken cancellation)
    {
        var options = new PlanOptions();
        var command = new Command("plan", "Plans a warm-up for each day, makes the files of one day again (--plan and --day), or plans anew what no longer fits the class (--plan and --singers).");
        options.AddTo(command);
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(options.Plan) is { } path)
            {
                return WithPlan(terminal, ReadPlan(path), options, parsed, cancellation);
            }

            MakePlan(terminal, options, parsed, cancellation);
            return ExitCode.Fine;
        });
        return command;
    }

    /// <summary>What is done with a plan that was written before.</summary>
    private static int WithPlan(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var hasDay = parsed.GetValue(options.Day) is not null;
        if (options.HasSingers(parsed) && !hasDay)
        {
            options.RefuseWithClass(parsed);
            return Renew(terminal, plan, options, parsed, cancellation);
        }

        options.RefuseWithDay(parsed);
        if (parsed.GetValue(options.Week) is not null && !hasDay)
        {
            WriteWeek(terminal, plan, options, parsed, cancellation);
        }
        else
        {
            MakeDay(terminal, plan, options, parsed, cancellation);
        }

        return ExitCode.Fine;
    }

    private static void WriteWeek(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var path = new PlanFolder(options, parsed, "none").WriteWeek(plan, cancellation);
        if (parsed.GetValue(options.Json))
        {
            PlannedJson.Print(terminal, plan, PlanWeek.Of(plan.Days, PlanOptions.ReadDate(parsed, options.Week)!.Value), Cautions.All, [new(path, false)]);
            return;
        }

        terminal.Out.WriteLine($"wrote {path} (a week to print)");
        Report.PrintCautions(terminal, Cautions.All);
    }

    /// <summary>Plans anew the days that no longer fit a class, and writes the plan to another folder.</summary>
    private static int Renew(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var singers = options.ReadSingers(parsed);
        var start = options.ReadStart(parsed);
        var folder = new PlanFolder(options, parsed, UsualFormats);
        PlanRenewal renewal;
        PlanWritten written;
        using (var progress = terminal.Working("holding the plan against the class"))
        {
            renewal = plan.Renew(singers, start, cancellation);
            written = folder.Write(renewal.Plan, renewal.Plan.Days, progress, cancellation);
        }

        if (parsed.GetValue(options.Json))
        {
            PlannedJson.Print(terminal, renewal, singers, start, written);
            return renewal.IsFitForAll ? ExitCode.Fine : ExitCode.DoesNotFit;
        }

        RenewalReport.Print(terminal, renewal, singers);
        SingersHistory.PrintDue(terminal, singers, start ?? plan.Days[0].Date);
        terminal.Out.WriteLine(written);
        Report.PrintCautions(terminal, Cautions.All);
        return renewal.IsFitForAll ? ExitCode.Fine : ExitCode.DoesNotFit;
    }

    private static void MakePlan(Terminal terminal, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var request = options.ReadRequest(parsed, terminal);
        var folder = new PlanFolder(options, parsed, UsualFormats);
        PlanDraw draw;
        IEnumerable<PlanDay> days;
        PlanWritten written;
        PlanSinging singing;
        using (var progress = terminal.Working("planning the days"))
        {
            draw = Draw(request, parsed, cancellation);
            days = draw.KeepDays();
            var drawn = 0;
            foreach (var _ in days)
            {
                progress.Reach((double)++drawn / request.Days);
            }

            written = folder.Write(draw.Outline.Plan, days, progress, cancellation);
            progress.Begin("adding up what is sung");
            singing = PlanSinging.Of(draw.Outline.Plan, days.Where(d => !d.IsRest).Take(SingingTable.MostDays), request.Singers, SingingTable.MostSingers, cancellation);
        }

        if (parsed.GetValue(options.Json))
        {
            PlannedJson.Print(terminal, draw.Outline, days, request, singing, written);
            return;
        }

        PlanTable.Print(terminal, days);
        PlanTable.PrintClass(terminal, draw.Outline, days, request.Singers);
        SingersHistory.PrintDue(terminal, request.Singers, request.Start);
        SingingTable.Print(terminal, singing);
        terminal.Out.WriteLine(written);
        Report.PrintCautions(terminal, draw.Outline.Cautions);
    }

    private static PlanDraw Draw(PlanRequest request, ParseResult parsed, CancellationToken cancellation)
    {
        try
        {
            return WarmupPlan.Draw(request, cancellation);
        }
        catch (PlanImpossibleException impossible)
        {
            var command = impossible.Change is { } change ? $":{Environment.NewLine}  {PlanRemedy.Command(parsed, request, change.Request)}" : string.Empty;
            throw new InputException(impossible.Message + command);
        }
    }

    private static void MakeDay(Terminal terminal, WarmupPlan plan, PlanOptions options, ParseResult parsed, CancellationToken cancellation)
    {
        var date = PlanOptions.ReadDate(parsed, options.Day) ?? throw new InputException("--plan needs the day to make, the week to print or the class; add --day 2026-12-05, --week 2026-12-07 or --singers FILE");
        if (date < plan.Days[0].Date || date > plan.Days[^1].Date)
        {
            throw new InputException(string.Create(
                CultureInfo.InvariantCulture, $"--day must be between {plan.Days[0].Date:yyyy-MM-dd} and {plan.Days[^1].Date:yyyy-MM-dd}, not {date:yyyy-MM-dd}"));
        }

        var day = plan.DayOf(date);
        if (day.IsRest)
        {
            throw new InputException($"--day: {PlanFolder.NameOf(day)} is a day of rest in this plan; name another day");
        }

        var log = options.ReadLogPath(parsed);
        if (options.Sung.IsSung(parsed) && log is null)
        {
            throw new InputException("--sung needs the log to add to; add --log FILE");
        }

        var sung = options.Sung.Read(parsed, day);
        var written = new PlanFolder(options, parsed, ".txt .mid .musicxml").WriteDay(plan, day, cancellation);
        if (options.Sung.IsSung(parsed))
        {
            foreach (var entry in sung)
            {
                PlanLog.Append(log!, entry);
            }
        }

        var cautions = plan.ToScore(day, cancellationToken: cancellation).Cautions;
        if (parsed.GetValue(options.Json))
        {
            PlannedJson.Print(terminal, plan, [day], cautions, [.. written.Select(p => new PlanWritten.Entry(p, false))]);
            return;
        }

        foreach (var path in written)
        {
            terminal.Out.WriteLine($"wrote {path} ({Formats.Of(path).Name})");
        }

        PlanTable.PrintDay(terminal, plan, day);
        Report.PrintCautions(terminal, cautions);
    }

    private static WarmupPlan ReadPlan(string path) =>
        InputFile.Read("--plan", path, PlanFile.LargestFile, "a plan.json that 'warmup plan' wrote", bytes => PlanFile.Read(bytes));
}
