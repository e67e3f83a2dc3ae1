namespace Warmup.Voices;

/// <summary>The cheapest breaths that keep every span within a capacity, added to the score. Immutable, value equality.</summary>
public sealed record PlannedBreaths : Remedy
{
    /// <summary>Says what the breaths must be enough for.</summary>
    /// <param name="need">The capacity and the shortest breath.</param>
    public PlannedBreaths(BreathNeed need) => Need = Require.NotNull(need);

    /// <summary>What the breaths must be enough for.</summary>
    public BreathNeed Need { get; }

    internal override RemedyKind Kind => RemedyKind.PlannedBreaths;

    /// <summary>The score with the breaths of <see cref="BreathPlan.TryMake"/>; where there is no plan, the score itself.</summary>
    /// <param name="score">The score.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public override Score Apply(Score score, CancellationToken cancellationToken = default) =>
        BreathPlanner.Find(Require.NotNull(score), Need, cancellationToken) is { } plan ? score.WithBreaths(plan) : score;

    /// <inheritdoc/>
    public override string Describe(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return ToString();
    }

    /// <summary>What the breaths are enough for.</summary>
    public override string ToString() => OneLine.Of($"planned breaths ({Need})");

    internal override int Size(Drill drill) => 2;
}
