using System.Globalization;

namespace Warmup.Plans;

/// <summary>A day of a plan.</summary>
/// <param name="Date">The date.</param>
/// <param name="Drills">The drills in the order in which they are sung; none on a rest day.</param>
/// <param name="Seconds">The warm-up's exact length in seconds, rests counted; 0 on a rest day.</param>
/// <param name="LeftOut">The drills, as indexes of the plan's, that every rule but the time would have allowed.</param>
/// <remarks>Immutable, value equality.</remarks>
public sealed record PlanDay(DateOnly Date, ValueList<PlannedDrill> Drills, Rational Seconds, ValueList<int> LeftOut)
{
    /// <summary>Whether nothing is sung.</summary>
    public bool IsRest => Drills.IsEmpty;

    /// <summary>The date and how much is sung.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: {Drills.Count} drills, {Seconds} s");
}

/// <summary>A drill on a day.</summary>
/// <param name="Drill">The index of the drill in the plan's.</param>
/// <param name="Tempo">Its tempo on that day, in aksharas a minute.</param>
/// <param name="Times">How many times its usual repetitions it is sung, 1 to 4.</param>
public sealed record PlannedDrill(int Drill, int Tempo, int Times)
{
    /// <summary>The greatest number of times (the project's own setting).</summary>
    public const int MostTimes = 4;
}
