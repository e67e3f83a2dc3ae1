using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Voices;

/// <summary>Where a singer, or a class, breathes in a score: the cheapest breaths that keep every span within the capacity.</summary>
/// <param name="Need">What the plan was made for.</param>
/// <param name="Breaths">The breaths that are added, in order; silences that are long enough already are not listed.</param>
/// <remarks>Costs are those of <see cref="BreathCosts"/>. Immutable, value equality.</remarks>
public sealed record BreathPlan(BreathNeed Need, ValueList<PlannedBreath> Breaths)
{
    /// <summary>The sum of the breaths' costs.</summary>
    public int Cost => ((IEnumerable<PlannedBreath>)Breaths).Sum(b => b.Cost);

    /// <summary>The sum of the breaths' harm, which decides between plans of equal cost.</summary>
    public int Harm => ((IEnumerable<PlannedBreath>)Breaths).Sum(b => b.Harm);

    /// <summary>The cheapest plan for a score.</summary>
    /// <param name="score">The score.</param>
    /// <param name="need">The capacity and the shortest breath.</param>
    /// <param name="plan">The plan, or <see langword="null"/>.</param>
    /// <param name="refusal">Why there is none and what would help, or <see langword="null"/>.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>Whether there is a plan.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static bool TryMake(Score score, BreathNeed need, [NotNullWhen(true)] out BreathPlan? plan, [NotNullWhen(false)] out Finding? refusal, CancellationToken cancellationToken = default) =>
        BreathPlanner.TryMake(score, need, out plan, out refusal, cancellationToken);

    /// <summary>The plan in words: <c>2 breaths: after line 3; after line 5</c>.</summary>
    public override string ToString()
    {
        if (Breaths.IsEmpty)
        {
            return "no further breaths";
        }

        var count = string.Create(CultureInfo.InvariantCulture, $"{Breaths.Count} {(Breaths.Count == 1 ? "breath" : "breaths")}");
        return $"{count}: {string.Join("; ", Breaths.ConvertAll(b => b.Where))}";
    }
}

/// <summary>A breath of a plan.</summary>
/// <param name="Section">The index of the section.</param>
/// <param name="AfterNote">The index of the note before it in the section's notes.</param>
/// <param name="Line">The line of that note, counted from 1.</param>
/// <param name="Place">The place of that note in its line, counted from 1.</param>
/// <param name="Onset">Its onset in aksharas from the section's beginning: the note before ends here.</param>
/// <param name="Length">Its length in aksharas.</param>
/// <param name="AtLineEnd">Whether the note before is the last of its line.</param>
/// <param name="Cost">Its cost.</param>
/// <param name="Harm">Its harm.</param>
/// <param name="LetsGo">Whether a held note is let go earlier than the shortest breath alone would ask for.</param>
public sealed record PlannedBreath(
    int Section, int AfterNote, int Line, int Place, Rational Onset, Rational Length, bool AtLineEnd, int Cost, int Harm, bool LetsGo = false)
{
    /// <summary>The place in words: <c>after line 3</c>, <c>in line 4 after note 2</c>.</summary>
    public string Where
    {
        get
        {
            var part = Section == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"in part {Section + 1} ");
            var place = AtLineEnd
                ? string.Create(CultureInfo.InvariantCulture, $"after line {Line}")
                : string.Create(CultureInfo.InvariantCulture, $"in line {Line} after note {Place}");
            return LetsGo ? $"{part}{place}, let go early" : part + place;
        }
    }
}
