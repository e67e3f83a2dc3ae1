namespace Warmup.Plans;

/// <summary>
/// A plan whose days are drawn one after the other when they are asked for: for plans over years, of which no more than a day needs to be held.
/// </summary>
/// <remarks>The days are the same each time they are drawn, and the same as those of <see cref="WarmupPlan.Make"/>. Only one thread may draw at a time, since the drills are measured at new tempi on the way.</remarks>
public sealed class PlanDraw
{
    private readonly Func<IEnumerable<PlanDay>> _days;

    internal PlanDraw(PlanResult outline, Func<IEnumerable<PlanDay>> days) => (Outline, _days) = (outline, days);

    /// <summary>All but the days: its plan has none.</summary>
    public PlanResult Outline { get; }

    /// <summary>Draws the days in order, without gaps; each enumeration draws them anew.</summary>
    public IEnumerable<PlanDay> DrawDays() => _days();

    /// <summary>
    /// Draws the days once, and gives them as often as they are asked for, without drawing them again: for plans over years, of which several files are
    /// written. What is kept of a day takes some thirty bytes.
    /// </summary>
    public IEnumerable<PlanDay> KeepDays() => new DayRows(Outline.Plan, DrawDays());

    /// <summary>The whole plan, held in memory.</summary>
    public PlanResult ToResult() => Outline.With(Outline.Plan with { Days = DrawDays().ToValueList() });

    /// <summary>The plan without its days.</summary>
    public override string ToString() => Outline.ToString();
}
