using System.CommandLine;
using System.Globalization;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary>The folder that a plan is written to: the plan, its page, its calendar, the files of its days, and a week to print.</summary>
internal sealed class PlanFolder
{
    // What a day of the month's page links to: the page to practise with before a sheet to read, and a sheet before the files for other programs.
    private static readonly string[] LinkedFirst = [".html", ".pdf", ".txt"];

    private readonly string _folder;
    private readonly IReadOnlyList<string> _formats;
    private readonly TimeOnly _time;
    private readonly DateOnly? _week;
    private readonly bool _force;

    /// <summary>The folder as the options name it; what is wrong with them is said before any work.</summary>
    public PlanFolder(PlanOptions options, ParseResult parsed, string usualFormats)
    {
        _time = options.ReadTime(parsed);
        _folder = options.ReadFolder(parsed);
        _formats = options.ReadFormats(parsed, usualFormats);
        _week = PlanOptions.ReadDate(parsed, options.Week);
        _force = parsed.GetValue(options.Force);
    }

    public static string NameOf(PlanDay day) => day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Writes the whole plan. No file is replaced without --force.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">Its days, which are gone through several times.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>What was written, in words.</returns>
    public string Write(WarmupPlan plan, IEnumerable<PlanDay> days, CancellationToken cancellation)
    {
        var linked = LinkedFirst.FirstOrDefault(_formats.Contains) ?? (_formats.Count > 0 ? _formats[0] : null);
        var (json, calendar) = (In("plan.json"), In("plan.ics"));
        string[] week = _week is { } first ? [PlanWeek.PathIn(_folder, days, first)] : [];
        Directory.CreateDirectory(_folder);
        var pages = Pages().Select(p => In(p.FileName)).ToList();
        foreach (var file in ((string[])[json, calendar, .. pages, .. week]).Concat(Sung().SelectMany(Paths)))
        {
            Formats.RefuseUnwritable(file, _force);
        }

        var count = WriteDays(plan, Sung(), cancellation);
        foreach (var page in Pages())
        {
            AtomicFile.Write(In(page.FileName), page.Write, _force);
        }

        AtomicFile.Write(calendar, stream => PlanCalendar.Write(plan, days, _time, stream), _force);
        foreach (var path in week)
        {
            PlanWeek.Write(plan, days, _week!.Value, path, _force, cancellation);
        }

        AtomicFile.Write(json, stream => PlanFile.Write(plan, days, stream), _force);
        var more = pages.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $" (and {pages.Count - 1} more pages after it)") : string.Empty;
        var others = _formats.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $", and {count * _formats.Count} files for the days") : string.Empty;
        return $"wrote {json}, {pages[0]}{more} and {calendar}{others}{string.Concat(week.Select(w => $", and {w} to print"))}";

        IEnumerable<PlanDay> Sung() => days.Where(d => !d.IsRest);

        IEnumerable<MonthPage> Pages() => MonthPage.Of(plan, days, linked is null ? null : d => NameOf(d) + linked);
    }

    /// <summary>Writes the week alone.</summary>
    /// <returns>What was written, in words.</returns>
    public string WriteWeek(WarmupPlan plan, CancellationToken cancellation)
    {
        var path = PlanWeek.PathIn(_folder, plan.Days, _week!.Value);
        Directory.CreateDirectory(_folder);
        Formats.RefuseUnwritable(path, _force);
        PlanWeek.Write(plan, plan.Days, _week.Value, path, _force, cancellation);
        return $"wrote {path} (a week to print)";
    }

    /// <summary>Writes the files of one day.</summary>
    /// <returns>What was written, a line for each file.</returns>
    public IEnumerable<string> WriteDay(WarmupPlan plan, PlanDay day, CancellationToken cancellation)
    {
        Directory.CreateDirectory(_folder);
        foreach (var path in Paths(day))
        {
            Formats.RefuseUnwritable(path, _force);
        }

        Formats.RemoveLeftovers(_folder);
        WriteChecked(day, plan.ToScore(day, cancellationToken: cancellation), cancellation);
        return Paths(day).Select(path => $"wrote {path} ({Formats.Of(path).Name})");
    }

    /// <summary>Writes the files of all days, several days at a time, and counts the days.</summary>
    private int WriteDays(WarmupPlan plan, IEnumerable<PlanDay> days, CancellationToken cancellation)
    {
        if (_formats.Count == 0)
        {
            return days.Count();
        }

        Formats.RemoveLeftovers(_folder);
        var scores = new DayScores(plan);
        var workers = new OrderedParallel { Workers = Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers), LookAhead = 2 * Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers) };
        return workers.Map(days, Write, cancellation).Count();

        DateOnly Write(PlanDay day, CancellationToken stop)
        {
            WriteChecked(day, scores.Of(day, stop), stop);
            return day.Date;
        }
    }

    private string In(string name) => Path.Combine(_folder, name);

    private IEnumerable<string> Paths(PlanDay day) => _formats.Select(f => In(NameOf(day) + f));

    private void WriteChecked(PlanDay day, Score score, CancellationToken cancellation)
    {
        if (score.Seconds != day.Seconds)
        {
            throw new InputException($"the plan gives {day.Seconds} s for {NameOf(day)}, but its drills take {score.Seconds} s; the file was changed by hand, or another version wrote it");
        }

        Formats.WriteWhole([.. Paths(day).Select(path => Formats.File(path, Formats.Of(path), score, cancellation))], _force);
    }
}
