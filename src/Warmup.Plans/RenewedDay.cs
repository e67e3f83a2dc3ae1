using System.Globalization;

namespace Warmup.Plans;

/// <summary>A planned day that no longer fits the class, and what became of it. Immutable, value equality.</summary>
public sealed record RenewedDay
{
    internal RenewedDay(PlanDay before, PlanDay now, ValueList<Finding> why, string? refusal) => (Before, Now, Why, Refusal) = (before, now, why, refusal);

    /// <summary>The day as it was planned.</summary>
    public PlanDay Before { get; }

    /// <summary>The day as it is planned now; as before where no other warm-up is possible.</summary>
    public PlanDay Now { get; }

    /// <summary>Why it no longer fits: for each singer whom it does not fit, the first finding.</summary>
    public ValueList<Finding> Why { get; }

    /// <summary>Why no other warm-up is possible on that day; <see langword="null"/> where one was planned.</summary>
    public string? Refusal { get; }

    /// <summary>Whether the same drills are sung, with more breaths.</summary>
    public bool HasOnlyMoreBreaths => Refusal is null && Now.Drills == Before.Drills;

    /// <summary>The date, and what became of the day.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Before.Date:yyyy-MM-dd}: {(Refusal is not null ? "no other warm-up is possible" : HasOnlyMoreBreaths ? "more breaths" : "planned anew")}");
}
