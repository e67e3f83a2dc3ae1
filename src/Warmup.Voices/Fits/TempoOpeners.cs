using System.Globalization;

namespace Warmup.Voices;

/// <summary>What opens an empty tempo window.</summary>
internal static class TempoOpeners
{
    // With more lines the search for how many to leave out would take too long.
    private const int MostLines = 64;

    /// <summary>The changes that open a window: breaths, fewer lines, another speed.</summary>
    public static IEnumerable<string> Of(TempoScan closed, IReadOnlyList<TempoScan> speeds, CancellationToken cancellation)
    {
        if (closed.Checks.Has(ScoreChecks.Breath) && Breaths(closed, cancellation) is { } breaths)
        {
            yield return breaths;
        }

        if (FewerLines(closed, cancellation) is { } fewer)
        {
            yield return fewer;
        }

        foreach (var other in speeds)
        {
            if (!other.Intervals.IsEmpty)
            {
                var notYet = other.Drill.Speeds[0].Kalam < closed.Drill.Speeds[0].Kalam ? $"{closed.Drill.Speeds[0]} not yet: " : string.Empty;
                yield return $"{notYet}{other.Drill.Speeds[0]} has {string.Join(", ", other.Intervals)}";
            }
        }
    }

    /// <summary>The cheapest plan at any tempo that it opens; of equally cheap ones that of the slowest tempo.</summary>
    private static string? Breaths(TempoScan closed, CancellationToken cancellation)
    {
        var planned = new TempoScan(closed.Drill, closed.Lines, closed.Singers, closed.Checks, true, cancellation);
        var need = BreathNeed.Of(closed.Singers);
        (int Tempo, BreathPlan Plan)? best = null;
        foreach (var interval in planned.Intervals)
        {
            for (var tempo = interval.Slowest; tempo <= interval.Fastest; tempo++)
            {
                if (BreathPlan.TryMake(planned.Score(tempo), need, out var plan, out _, cancellation)
                    && (best is not { } known || (plan!.Cost, plan.Harm).CompareTo((known.Plan.Cost, known.Plan.Harm)) < 0))
                {
                    best = (tempo, plan!);
                }
            }
        }

        return best is { } found
            ? string.Create(CultureInfo.InvariantCulture, $"breaths open {string.Join(", ", planned.Intervals)} (at {found.Tempo}: {found.Plan.Describe()})")
            : null;
    }

    private static string? FewerLines(TempoScan closed, CancellationToken cancellation)
    {
        var count = closed.Lines.Lines.Count;
        for (var fewer = 1; fewer < count && count <= MostLines; fewer++)
        {
            var lines = new Expansion([.. closed.Lines.Lines.AsSpan()[..(count - fewer)]], closed.Lines.Findings);
            var scan = new TempoScan(closed.Drill, lines, closed.Singers, closed.Checks, false, cancellation);
            if (!scan.Intervals.IsEmpty)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{fewer} {(fewer == 1 ? "line" : "lines")} fewer at the end {(fewer == 1 ? "opens" : "open")} {string.Join(", ", scan.Intervals)}");
            }
        }

        return null;
    }
}
