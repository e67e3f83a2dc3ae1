using System.Globalization;

namespace Warmup.Plans;

/// <summary>How much of a plan is sung, and whose breath asks what of the class. Immutable, value equality.</summary>
/// <remarks>It names singers, and so is not part of the plan.</remarks>
public sealed record PlanSinging
{
    private PlanSinging(int days, SungTime time, ValueList<ClassBreath> breaths) => (Days, Time, Breaths) = (days, time, breaths);

    /// <summary>The days of singing that were looked at.</summary>
    public int Days { get; }

    /// <summary>How much the class sings, and how often it breathes inside a line.</summary>
    public SungTime Time { get; }

    /// <summary>What the shortest breaths ask of the class, the shortest first.</summary>
    public ValueList<ClassBreath> Breaths { get; }

    /// <summary>Measures a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="days">The days of the plan to look at; rest days are left out.</param>
    /// <param name="singers">The class that the plan was made for.</param>
    /// <param name="most">How many singers are looked at, those with the shortest breath first, 1 or more; 8 by default.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no singers, or <paramref name="most"/> is below 1.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PlanSinging Of(WarmupPlan plan, IEnumerable<PlanDay> days, ValueList<Singer> singers, int most = 8, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(days);
        var sung = days.Where(d => !d.IsRest).ToList();

        // Many days have the same drills at the same tempo: each is made once.
        var made = new Dictionary<(DayDrill Planned, BreathNeed? Need), (Score Score, SungTime Time)>();
        var time = SungTime.None;
        var scores = new List<Score>();
        foreach (var (planned, need) in sung.SelectMany(d => d.Drills.Select(p => (p, d.BreathNeed))))
        {
            if (!made.TryGetValue((planned, need), out var known))
            {
                var score = planned.Drill.ToOwnScore(plan.Tonic, plan.Tuning, planned.Tempo, planned.Times, cancellationToken);
                var asClass = plan.ToScore(planned, need, plan.Tonic, cancellationToken);
                known = made[(planned, need)] = (score, SungTime.Of(asClass));
            }

            scores.Add(known.Score);
            time = time.Plus(known.Time);
        }

        return new PlanSinging(sung.Count, time, ClassBreath.Of(scores.ToValueList(), singers, most, cancellationToken));
    }

    /// <summary>The days and the time.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Days} {(Days == 1 ? "day" : "days")}: {Time}");
}
