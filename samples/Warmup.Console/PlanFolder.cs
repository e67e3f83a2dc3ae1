using System.CommandLine;
using System.Globalization;
using Warmup.Plans;
using Warmup.Samples;

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

    /// <summary>
    /// Writes the whole plan, its <c>plan.json</c> first, or what is missing of it. Without --force no file is replaced: what is there must hold just what
    /// would be written, and that is looked at before anything is written.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">Its days, which are gone through several times.</param>
    /// <param name="progress">Hears how many days are done.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="StoppedException">The work was stopped and can go on.</exception>
    public PlanWritten Write(WarmupPlan plan, IEnumerable<PlanDay> days, Progress progress, CancellationToken cancellation)
    {
        var linked = LinkedFirst.FirstOrDefault(_formats.Contains) ?? (_formats.Count > 0 ? _formats[0] : null);
        string[] week = _week is { } first ? [PlanWeek.PathIn(_folder, days, first)] : [];
        string[] own = [.. Own().Select(f => f.Path)], ofDays = [.. Sung().SelectMany(Paths)];
        Directory.CreateDirectory(_folder);
        Formats.RemoveLeftovers(_folder);
        var work = new PlanDayFiles(plan, Sung(), day => [.. Paths(day)], progress);
        var kept = new HashSet<string>(StringComparer.Ordinal);
        try
        {
            if (!_force)
            {
                kept.UnionWith(Own().Where((f, i) => KeptFiles.Has(f.Path, f.Write, i == 0 ? "holds another plan; choose another folder, or add --force" : PlanDayFiles.Otherwise)).Select(f => f.Path));
                kept.UnionWith(work.Kept(cancellation));
            }

            foreach (var (path, write) in Own().Take(1).Where(f => !kept.Contains(f.Path)))
            {
                AtomicFile.Write(path, write, _force);
            }

            work.Write(kept, _force, cancellation);
            foreach (var (path, write) in Own().Skip(1).Where(f => !kept.Contains(f.Path)))
            {
                AtomicFile.Write(path, write, _force);
            }
        }
        catch (OperationCanceledException stopped)
        {
            var (there, all) = (own.Concat(ofDays).Count(File.Exists), own.Length + ofDays.Length);
            throw new StoppedException(string.Create(
                CultureInfo.InvariantCulture, $"stopped; no half-written file is left: {_folder} has {there} of the plan's {all} files, and the same command writes the others"), stopped);
        }

        var pages = own.Length - 2 - week.Length;
        var more = pages > 1 ? string.Create(CultureInfo.InvariantCulture, $" (and {pages - 1} more pages after it)") : string.Empty;
        var others = _formats.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $", and {ofDays.Length} files for the days") : string.Empty;
        return new PlanWritten(
            _folder,
            [.. own.Concat(ofDays).Select(f => new PlanWritten.Entry(f, kept.Contains(f)))],
            $"wrote {own[0]}, {own[1]}{more} and {In("plan.ics")}{others}{string.Concat(week.Select(w => $", and {w} to print"))}");

        IEnumerable<PlanDay> Sung() => days.Where(d => !d.IsRest);

        // The plan comes first: it says what the folder's other files are.
        IEnumerable<(string Path, Action<Stream> Write)> Own()
        {
            yield return (In("plan.json"), stream => PlanFile.Write(plan, days, stream));
            foreach (var page in MonthPage.Of(plan, days, linked is null ? null : d => NameOf(d) + linked))
            {
                yield return (In(page.FileName), page.Write);
            }

            yield return (In("plan.ics"), stream => PlanCalendar.Write(plan, days, _time, stream));
            foreach (var path in week)
            {
                yield return (path, stream => PlanWeek.Write(plan, days, _week!.Value, stream, cancellation));
            }
        }
    }

    /// <summary>Writes the week alone.</summary>
    /// <returns>The file.</returns>
    public string WriteWeek(WarmupPlan plan, CancellationToken cancellation)
    {
        var path = PlanWeek.PathIn(_folder, plan.Days, _week!.Value);
        Directory.CreateDirectory(_folder);
        Formats.RefuseUnwritable(path, _force);
        AtomicFile.Write(path, stream => PlanWeek.Write(plan, plan.Days, _week.Value, stream, cancellation), _force);
        return path;
    }

    /// <summary>Writes the files of one day.</summary>
    /// <returns>The files.</returns>
    public IReadOnlyList<string> WriteDay(WarmupPlan plan, PlanDay day, CancellationToken cancellation)
    {
        Directory.CreateDirectory(_folder);
        foreach (var path in Paths(day))
        {
            Formats.RefuseUnwritable(path, _force);
        }

        Formats.RemoveLeftovers(_folder);
        var score = PlanDayFiles.Checked(day, plan.ToScore(day, cancellationToken: cancellation));
        string[] paths = [.. Paths(day)];
        Formats.WriteWhole([.. paths.Select(path => Formats.File(path, Formats.Of(path), score, cancellation))], _force);
        return paths;
    }

    private string In(string name) => Path.Combine(_folder, name);

    private IEnumerable<string> Paths(PlanDay day) => _formats.Select(f => In(NameOf(day) + f));
}
