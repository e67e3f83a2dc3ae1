using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Voices;

/// <summary>Where a singer, or a class, breathes in a score: the cheapest breaths that keep every span within the capacity.</summary>
/// <remarks>Costs are those of <see cref="BreathCosts"/>. Immutable, value equality.</remarks>
public sealed record BreathPlan
{
    internal BreathPlan(BreathNeed need, ValueList<PlannedBreath> breaths) => (Need, Breaths) = (need, breaths);

    /// <summary>What the plan was made for.</summary>
    public BreathNeed Need { get; }

    /// <summary>The breaths that are added, in order; silences that are long enough already are not listed.</summary>
    public ValueList<PlannedBreath> Breaths { get; }

    /// <summary>The sum of the breaths' costs.</summary>
    public int Cost => Breaths.Sum(b => b.Cost);

    /// <summary>The sum of the breaths' harm, which decides between plans of equal cost.</summary>
    public int Harm => Breaths.Sum(b => b.Harm);

    /// <summary>The cheapest plan for a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="need">The capacity and the shortest breath.</param>
    /// <param name="plan">The plan, or <see langword="null"/>.</param>
    /// <param name="refusal">Why there is none, or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether there is a plan.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static bool TryMake(Score score, BreathNeed need, [NotNullWhen(true)] out BreathPlan? plan, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(need);
        return BreathPlanner.TryMake(score, need, out plan, out refusal, cancellationToken);
    }

    /// <summary>The whole plan in words, however many breaths it has: <c>2 breaths: after line 3; after line 5</c>.</summary>
    public string Describe()
    {
        if (Breaths.IsEmpty)
        {
            return "no further breaths";
        }

        var count = string.Create(CultureInfo.InvariantCulture, $"{Breaths.Count} {(Breaths.Count == 1 ? "breath" : "breaths")}");
        return $"{count}: {string.Join("; ", Breaths)}";
    }

    /// <summary>The plan in words, cut to 200 characters; <see cref="Describe"/> gives all of it.</summary>
    public override string ToString() => OneLine.Of(Describe());
}
