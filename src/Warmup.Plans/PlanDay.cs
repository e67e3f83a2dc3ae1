using System.Globalization;

namespace Warmup.Plans;

/// <summary>A day of a plan. Immutable, value equality.</summary>
public sealed record PlanDay
{
    internal PlanDay(DateOnly date)
        : this(date, [], Rational.Zero, [])
    {
    }

    internal PlanDay(DateOnly date, ValueList<DayDrill> drills, Rational seconds, ValueList<PlanDrill> leftOut) =>
        (Date, Drills, Seconds, LeftOut) = (date, drills, seconds, leftOut);

    /// <summary>A day that fills less of the minutes says why, in per cent of them: 75 (the project's own setting).</summary>
    public static int FullPercent => 75;

    /// <summary>The date.</summary>
    public DateOnly Date { get; }

    /// <summary>The drills in the order in which they are sung; none on a rest day.</summary>
    public ValueList<DayDrill> Drills { get; }

    /// <summary>The scale of the day's drills; <see langword="null"/> on a rest day.</summary>
    public Scale? Scale => IsRest ? null : Drills[0].Drill.Scale;

    /// <summary>The warm-up's exact length in seconds, rests included; 0 on a rest day.</summary>
    public Rational Seconds { get; }

    /// <summary><see cref="Seconds"/> rounded up to whole seconds.</summary>
    public TimeSpan Duration => TimeSpan.FromSeconds((double)Seconds.Ceiling());

    /// <summary>The drills that every rule but the time would have allowed.</summary>
    public ValueList<PlanDrill> LeftOut { get; }

    /// <summary>Why the day fills less than <see cref="FullPercent"/> per cent of the minutes; <see langword="null"/> if it does not, and on rest days.</summary>
    public Shortfall? Shortfall { get; internal init; }

    /// <summary>
    /// The breath that is enough on this day, where it is not the plan's own: the class had changed when the day was planned anew.
    /// <see langword="null"/> for the plan's own.
    /// </summary>
    public BreathNeed? BreathNeed { get; internal init; }

    /// <summary>Whether nothing is sung.</summary>
    public bool IsRest => Drills.IsEmpty;

    /// <summary>The date and how much is sung.</summary>
    public override string ToString() => IsRest
        ? string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: rest")
        : string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: {Drills.Count} drills, {Seconds} s");
}
