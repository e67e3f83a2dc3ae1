using System.Globalization;

namespace Warmup.Plans;

/// <summary>Finds the smallest change with which a refused request can be planned. Every change is tried before it is offered.</summary>
internal static class PlanChanges
{
    // How far the start of the tempo is moved, in aksharas a minute (the project's own settings).
    private static readonly int[] Tempi = [-6, 6, -12, 12, -18, 18, -24, 24];

    private static readonly int[] Percents = [40, 30, 20, 10, 0];

    /// <summary>
    /// The first change that helps: another tonic, a shorter wait, less of the time filled, more minutes, another tempo, another level, no log,
    /// one singer fewer, fewer days. Where none of these is enough and the tonic was typed: another tonic and one of them.
    /// </summary>
    public static PlanChange? Smallest(PlanRequest request, CancellationToken cancellation)
    {
        foreach (var change in Tonics(request, cancellation).Concat(Others(request)).Concat(WithAnotherTonic(request, cancellation)))
        {
            if (Planner.IsPossible(change.Request, cancellation))
            {
                return change;
            }
        }

        return null;
    }

    /// <summary>For a typed tonic the best of the others.</summary>
    private static IEnumerable<PlanChange> Tonics(PlanRequest request, CancellationToken cancellation)
    {
        if (request.Tonic is { } typed && Planner.BestTonic(request with { Tonic = null }, cancellation) is { } tonic)
        {
            yield return new PlanChange($"take the tonic {tonic} instead of {typed}", request with { Tonic = tonic });
        }
    }

    private static IEnumerable<PlanChange> WithAnotherTonic(PlanRequest request, CancellationToken cancellation)
    {
        if (request.Tonic is not { } typed)
        {
            yield break;
        }

        foreach (var change in Others(request with { Tonic = null }))
        {
            if (Planner.BestTonic(change.Request, cancellation) is { } tonic)
            {
                yield return new PlanChange($"take the tonic {tonic} instead of {typed}, and {change.Text}", change.Request with { Tonic = tonic });
            }
        }
    }

    private static IEnumerable<PlanChange> Others(PlanRequest request)
    {
        for (var days = request.NoRepeatDays - 1; days >= 0; days = days > 10 ? days / 2 : days - 1)
        {
            yield return Say($"keep drills away for {days} {(days == 1 ? "day" : "days")} of singing instead of {request.NoRepeatDays}", request with { NoRepeatDays = days });
        }

        foreach (var percent in Percents.Where(p => p < request.LeastFillPercent))
        {
            yield return Say($"let a scale fill {percent} % of the minutes instead of {request.LeastFillPercent} %", request with { LeastFillPercent = percent });
        }

        for (var minutes = request.Minutes + 1; minutes <= PlanRequest.MostMinutes; minutes++)
        {
            yield return Say($"take {minutes} minutes instead of {request.Minutes}", request with { Minutes = minutes });
        }

        var level = request.Level ?? Level.Of(request.Singers);
        foreach (var start in Tempi.Select(t => level.StartTempo + t).Where(t => t is >= 30 and <= 180))
        {
            var tempo = level.Tempo.Step.Sign == 0 ? TempoRamp.Constant(start) : new TempoRamp(start, level.Tempo.Step, Rational.Max(start, level.Tempo.Ceiling));
            yield return Say($"begin at {start} aksharas a minute instead of {level.StartTempo}", request with { Level = level with { Tempo = tempo } });
        }

        foreach (var other in Level.All.Where(l => l.Name != level.Name))
        {
            yield return Say($"take the level {other.Name} instead of {level.Name}", request with { Level = other });
        }

        if (!request.Log.IsEmpty)
        {
            yield return Say($"begin without the log", request with { Log = [] });
        }

        foreach (var singer in request.Singers.Count is > 1 and <= MostSingers ? request.Singers : [])
        {
            yield return Say($"plan without {singer.Alias}", request with { Singers = request.Singers.Where(s => s != singer).ToValueList() });
        }

        for (var days = request.Days / 2; days > 0; days /= 2)
        {
            yield return Say($"plan {days} days instead of {request.Days}", request with { Days = days });
        }
    }

    // Each singer left out is a plan to try.
    private const int MostSingers = 40;

    private static PlanChange Say(FormattableString text, PlanRequest request) => new(text.ToString(CultureInfo.InvariantCulture), request);
}
