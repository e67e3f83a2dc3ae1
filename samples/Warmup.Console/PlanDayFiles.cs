using System.Runtime.ExceptionServices;
using Warmup.Plans;
using Warmup.Samples;

namespace Warmup.Cli;

/// <summary>The files of a plan's days, made several days at a time.</summary>
/// <param name="plan">The plan.</param>
/// <param name="days">Its days of singing, which are gone through several times.</param>
/// <param name="pathsOf">The files of a day.</param>
/// <param name="progress">Hears how many days are done.</param>
internal sealed class PlanDayFiles(WarmupPlan plan, IEnumerable<PlanDay> days, Func<PlanDay, string[]> pathsOf, Progress progress)
{
    /// <summary>What is said of a file that is there and holds something else, after its name.</summary>
    public const string Otherwise = "is there and holds something else than this plan gives; move it away, choose another folder, or add --force";

    private readonly DayScores _scores = new(plan);

    /// <summary>A day's score, if it is as long as the plan says.</summary>
    /// <exception cref="InputException">The plan was changed by hand.</exception>
    public static Score Checked(PlanDay day, Score score) => score.Seconds == day.Seconds
        ? score
        : throw new InputException($"the plan gives {day.Seconds} s for {PlanFolder.NameOf(day)}, but its drills take {score.Seconds} s; the file was changed by hand, or another version wrote it");

    /// <summary>The files that are there, with just what would be written.</summary>
    /// <exception cref="OtherContentException">A file holds something else.</exception>
    public IEnumerable<string> Kept(CancellationToken cancellation) => ForEach("looking at the days that are there", days.Where(d => pathsOf(d).Any(File.Exists)), KeptOf, cancellation).SelectMany(k => k);

    /// <summary>Writes the files of all days but those that are kept.</summary>
    public void Write(HashSet<string> kept, bool force, CancellationToken cancellation)
    {
        foreach (var _ in ForEach("writing the days", days.Where(d => !pathsOf(d).All(kept.Contains)), WriteOf, cancellation))
        {
        }

        bool WriteOf(PlanDay day, CancellationToken stop)
        {
            var score = Checked(day, _scores.Of(day, stop));
            Formats.WriteWhole([.. pathsOf(day).Where(p => !kept.Contains(p)).Select(p => Formats.File(p, Formats.Of(p), score, stop))], force);
            return true;
        }
    }

    private List<string> KeptOf(PlanDay day, CancellationToken stop)
    {
        var score = Checked(day, _scores.Of(day, stop));
        return [.. pathsOf(day).Where(p => KeptFiles.Has(p, Formats.File(p, Formats.Of(p), score, stop).Write, Otherwise))];
    }

    private IEnumerable<TResult> ForEach<TResult>(string what, IEnumerable<PlanDay> some, Func<PlanDay, CancellationToken, TResult> make, CancellationToken cancellation)
    {
        progress.Begin(what);
        var workers = new OrderedParallel { Workers = Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers), LookAhead = 2 * Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers) };
        var (done, all) = (0, some.Count());
        using var results = workers.Map(some, make, cancellation).GetEnumerator();
        while (Next())
        {
            progress.Reach((double)++done / all);
            yield return results.Current;
        }

        // What went wrong with a day is said as it is, without the place of the day among the others.
        bool Next()
        {
            try
            {
                return results.MoveNext();
            }
            catch (OrderedParallelException failed)
            {
                ExceptionDispatchInfo.Throw(failed.InnerException!);
                throw;
            }
        }
    }
}
