using System.Globalization;
using Warmup.Plans;
using Warmup.Samples;

namespace Warmup.Month;

/// <summary>The result of a run.</summary>
/// <param name="Written">The number of files written in this run.</param>
/// <param name="Kept">The number of files that were already there and stayed as they were.</param>
/// <param name="Left">The number of files still to be written; more than 0 only if the work was stopped.</param>
internal sealed record MonthReport(int Written, int Kept, int Left)
{
    public bool IsDone => Left == 0;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Written} files written, {Kept} kept, {Left} left");
}

/// <summary>
/// Writes the files of a plan's days into a folder. Started again in the same folder, it goes on where it was stopped; a file that is there with just
/// what the plan gives is kept, and any other is refused by name.
/// </summary>
/// <param name="folder">The folder; it is made if it does not exist.</param>
/// <param name="formats">What each day is written as.</param>
internal sealed class MonthWork(string folder, ValueList<IScoreFormat> formats)
{
    private const string PlanName = "plan.json";

    /// <summary>Writes what is missing.</summary>
    /// <param name="plan">The plan; if the folder already holds a plan, it must be the same.</param>
    /// <param name="overwrite">Whether to replace files that exist, and another plan.</param>
    /// <param name="wrote">Hears the name of each file that was written.</param>
    /// <param name="cancellationToken">Stops the work; the file that is being written is taken back.</param>
    /// <exception cref="OtherContentException">The folder holds another plan, or a file that was changed.</exception>
    /// <exception cref="IOException">The disk refuses, or another run wrote the same file meanwhile.</exception>
    public MonthReport Run(WarmupPlan plan, bool overwrite, Action<string> wrote, CancellationToken cancellationToken)
    {
        Directory.CreateDirectory(folder);
        KeepPlan(plan, overwrite);
        var (written, kept, left) = (0, 0, 0);
        foreach (var day in plan.Days)
        {
            if (day.IsRest)
            {
                continue;
            }

            Score? score = null;
            foreach (var format in formats)
            {
                var path = Path.Combine(folder, day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + format.Extensions[0]);
                try
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    score ??= plan.ToScore(day, cancellationToken: cancellationToken);
                    if (!overwrite && KeptFiles.Has(path, stream => format.Write(score, stream, cancellationToken), "is there and holds something else than this plan gives; move it away, or add --force"))
                    {
                        kept++;
                        continue;
                    }

                    format.Save(score, path, overwrite, cancellationToken);
                }
                catch (OperationCanceledException)
                {
                    left++;
                    continue;
                }

                written++;
                wrote(path);
            }
        }

        return new MonthReport(written, kept, left);
    }

    /// <summary>Writes the plan before all other files, so that a later run knows whether the files are its own.</summary>
    private void KeepPlan(WarmupPlan plan, bool overwrite)
    {
        var path = Path.Combine(folder, PlanName);
        void Write(Stream stream) => PlanFile.Write(plan, stream);
        if (overwrite || !KeptFiles.Has(path, Write, "holds another plan; choose another folder, or add --force to write the month again"))
        {
            AtomicFile.Write(path, Write, overwrite);
        }
    }
}
