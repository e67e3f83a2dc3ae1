using System.Collections.Concurrent;

namespace Warmup.Plans;

/// <summary>
/// The scores of a plan's days, for many days: a drill that comes again at the same tempo and as often is made once. After the tempi have stopped rising the
/// memory no longer grows.
/// </summary>
/// <remarks>Safe to share between threads.</remarks>
public sealed class DayScores
{
    private readonly WarmupPlan _plan;
    private readonly ConcurrentDictionary<(PlanDrill Drill, int Tempo, int Times, BreathNeed? Need), Score> _known = new(ByDrill.Only);

    /// <summary>The scores of a plan's days.</summary>
    /// <param name="plan">The plan.</param>
    public DayScores(WarmupPlan plan) => _plan = plan ?? throw new ArgumentNullException(nameof(plan));

    /// <summary>A day's score, the same as <see cref="WarmupPlan.ToScore(PlanDay, Tonic, CancellationToken)"/> gives.</summary>
    /// <param name="day">A day of the plan.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">Nothing is sung on that day.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score Of(PlanDay day, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(day);
        return WarmupPlan.ToScore(day, planned => _known.GetOrAdd((planned.Drill, planned.Tempo, planned.Times, day.BreathNeed), _ => _plan.ToScore(planned, day.BreathNeed, _plan.Tonic, cancellationToken)));
    }

    /// <summary>The plan.</summary>
    public override string ToString() => _plan.ToString();

    /// <summary>The days hold the plan's own drills, so that it is enough to compare where they are.</summary>
    private sealed class ByDrill : IEqualityComparer<(PlanDrill Drill, int Tempo, int Times, BreathNeed? Need)>
    {
        public static readonly ByDrill Only = new();

        public bool Equals((PlanDrill Drill, int Tempo, int Times, BreathNeed? Need) x, (PlanDrill Drill, int Tempo, int Times, BreathNeed? Need) y) =>
            ReferenceEquals(x.Drill, y.Drill) && x.Tempo == y.Tempo && x.Times == y.Times && x.Need == y.Need;

        public int GetHashCode((PlanDrill Drill, int Tempo, int Times, BreathNeed? Need) key) =>
            HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Drill), key.Tempo, key.Times);
    }
}
