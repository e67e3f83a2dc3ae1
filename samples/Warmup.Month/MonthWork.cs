using System.Globalization;
using Warmup.Plans;

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

/// <summary>The folder holds another plan.</summary>
internal sealed class OtherPlanException(string message) : Exception(message);

/// <summary>
/// Writes the files of a plan's days into a folder. Started again in the same folder, it goes on where it was stopped; a file that is there is
/// whole, and is not touched.
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
    /// <exception cref="OtherPlanException">The folder holds another plan.</exception>
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
                if (!overwrite && File.Exists(path))
                {
                    kept++;
                    continue;
                }

                try
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    score ??= plan.ToScore(day, cancellationToken: cancellationToken);
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
        if (!overwrite && File.Exists(path))
        {
            if (PlanFile.Read(File.ReadAllBytes(path)) != plan)
            {
                throw new OtherPlanException($"{path} is another plan; choose another folder, or add --force to write the month again");
            }

            return;
        }

        AtomicFile.Write(path, stream => PlanFile.Write(plan, stream), overwrite);
    }
}
