using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan after its class has changed: the days that no longer fitted are planned anew, all others are as they were. Immutable, value equality.</summary>
public sealed record PlanRenewal
{
    internal PlanRenewal(WarmupPlan plan, ValueList<RenewedDay> days, ValueList<int> octaves) => (Plan, Days, Octaves) = (plan, days, octaves);

    /// <summary>The plan.</summary>
    public WarmupPlan Plan { get; }

    /// <summary>The days that no longer fitted, in order.</summary>
    public ValueList<RenewedDay> Days { get; }

    /// <summary>For each singer in the class's order: how many octaves above the tonic of the files they sing.</summary>
    public ValueList<int> Octaves { get; }

    /// <summary>Whether every day that was looked at fits the class now.</summary>
    public bool IsFitForAll => !Days.Any(d => d.Refusal is not null);

    /// <summary>The plan, and how many days no longer fitted.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Plan}; {Days.Count} days no longer fitted");
}
