using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan, and what was left out of it and why. Immutable, value equality.</summary>
public sealed record PlanResult
{
    internal PlanResult(WarmupPlan plan) => Plan = plan;

    /// <summary>The plan.</summary>
    public WarmupPlan Plan { get; private init; }

    /// <summary>The scales that are not in the plan, and why. It names singers, and so is not part of the plan.</summary>
    public ValueList<string> LeftOut { get; internal init; }

    /// <summary>For each singer in the class's order: how many octaves above the tonic of the files they sing, mostly 0 or -1.</summary>
    public ValueList<int> Octaves { get; internal init; }

    /// <summary>
    /// For each singer in the class's order: the fastest tempo that the log says they sang and the teacher ticked, in aksharas a minute;
    /// <see langword="null"/> for none. The plan goes on from the slowest of them.
    /// </summary>
    public ValueList<int?> Reached { get; internal init; }

    /// <summary>The entries of the log whose drills get their turn again before others, since lines stayed off; the earliest first.</summary>
    public ValueList<LogEntry> Again { get; internal init; }

    /// <summary>What the class's limits keep out or ease, for the teacher. It names singers, and so is not part of the plan.</summary>
    public ValueList<string> Limits { get; internal init; }

    /// <summary>The cautions, which stand with every plan.</summary>
    public ValueList<Caution> Cautions { get; } = FramingExercises.Cautions;

    internal PlanResult With(WarmupPlan plan) => this with { Plan = plan };

    /// <summary>The plan, and how much was left out.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Plan}; {LeftOut.Count} notes on scales left out");
}
