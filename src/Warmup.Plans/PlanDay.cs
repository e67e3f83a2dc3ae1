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
    /// <summary>A day that fills less of the minutes says why, in per cent of them (the project's own setting).</summary>
    public const int FullPercent = 75;

    /// <summary>Why the day fills less than <see cref="FullPercent"/> per cent of the minutes; <see langword="null"/> if it does not, and on rest days.</summary>
    public Shortfall? Shortfall { get; init; }

    /// <summary>Whether nothing is sung.</summary>
    public bool IsRest => Drills.IsEmpty;

    /// <summary>The date and how much is sung.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}: {Drills.Count} drills, {Seconds} s");
}

/// <summary>A drill on a day.</summary>
/// <param name="Drill">The index of the drill in the plan's.</param>
/// <param name="Tempo">Its tempo on that day, in aksharas a minute.</param>
/// <param name="Times">How many times its usual repetitions it is sung, 1 to 6.</param>
public sealed record PlannedDrill(int Drill, int Tempo, int Times)
{
    /// <summary>The greatest number of times (the project's own setting).</summary>
    public const int MostTimes = 6;
}

/// <summary>Why a warm-up is short: where the scale's other middle drills are. All that are sung are sung as often as they may be.</summary>
/// <param name="Unfit">Those that do not fit someone of the class.</param>
/// <param name="Closed">Those that lie above the week's ceiling of difficulty.</param>
/// <param name="Waiting">Those that were sung too short a time ago, or are kept for the scale's next turns.</param>
/// <param name="Order">Those that are wider but easier than the others of the day, or the other way round, or harder than its hardest.</param>
public sealed record Shortfall(int Unfit, int Closed, int Waiting, int Order)
{
    /// <summary>The reasons in words.</summary>
    public override string ToString()
    {
        var parts = (((int Count, string Text)[])
            [
                (Unfit, "do not fit the class"),
                (Closed, "lie above the week's ceiling"),
                (Waiting, "wait for another day"),
                (Order, "have no place in the rising order"),
            ])
            .Where(p => p.Count > 0)
            .Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Count} {p.Text}"))
            .ToList();
        return parts.Count == 0 ? "the scale has no further drills" : $"of the scale's other drills {string.Join(", ", parts)}";
    }
}
