using System.Globalization;

namespace Warmup.Plans;

/// <summary>A plan: which drills are sung on which day, and everything that is needed to make each day's score again.</summary>
/// <remarks>Immutable, value equality. It holds no singer's alias or range, only what the class together needs of the breath.</remarks>
public sealed record WarmupPlan
{
    /// <summary>How the choices were drawn: <see cref="SeededSource.Name"/>.</summary>
    public required string Generator { get; init; }

    /// <summary>The seed.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The level's name.</summary>
    public required string Level { get; init; }

    /// <summary>The most minutes of a warm-up.</summary>
    public required int Minutes { get; init; }

    /// <summary>On so many days of singing after a drill it does not come back.</summary>
    public required int NoRepeatDays { get; init; }

    /// <summary>The weekdays without singing.</summary>
    public required ValueList<DayOfWeek> RestDays { get; init; }

    /// <summary>The tonic of the files. Singers whose voices lie elsewhere sing in their own octave.</summary>
    public required Tonic Tonic { get; init; }

    /// <summary>The tuning.</summary>
    public required Tuning Tuning { get; init; }

    /// <summary>What the class needs of the breath.</summary>
    public required BreathNeed Need { get; init; }

    /// <summary>The drills that days name by index.</summary>
    public required ValueList<PlanDrill> Drills { get; init; }

    /// <summary>The days in order, without gaps; at least one.</summary>
    public required ValueList<PlanDay> Days { get; init; }

    /// <summary>Makes a plan.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <returns>The plan and what was left out of it.</returns>
    /// <exception cref="PlanImpossibleException">The rules clash: the exception names a smallest set of them.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static PlanResult Make(PlanRequest request, CancellationToken cancellationToken = default) => Planner.Make(request, cancellationToken);

    /// <summary>A day by its date.</summary>
    /// <param name="date">The date.</param>
    /// <exception cref="ArgumentOutOfRangeException">The plan does not reach that day.</exception>
    public PlanDay DayOf(DateOnly date)
    {
        var index = date.DayNumber - Days[0].Date.DayNumber;
        return index >= 0 && index < Days.Count
            ? Days[index]
            : throw new ArgumentOutOfRangeException(
                null,
                string.Create(CultureInfo.InvariantCulture, $"the day must be between {Days[0].Date:yyyy-MM-dd} and {Days[^1].Date:yyyy-MM-dd}, not {date:yyyy-MM-dd}"));
    }

    /// <inheritdoc cref="ToScore(PlanDay, CancellationToken)"/>
    public Score ToScore(PlanDay day) => ToScore(day, CancellationToken.None);

    /// <summary>A day's warm-up as one score: a section for each drill, each begun by a count-in that is the rest before it.</summary>
    /// <param name="day">A day of this plan.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">Nothing is sung on that day.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(PlanDay day, CancellationToken cancellationToken) => ToScore(day, Tonic, cancellationToken);

    /// <summary>A day's warm-up on another tonic, such as another octave's for lower voices.</summary>
    /// <param name="day">A day of this plan.</param>
    /// <param name="tonic">The tonic.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">Nothing is sung on that day.</exception>
    /// <exception cref="PatternException">A drill cannot be made.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Score ToScore(PlanDay day, Tonic tonic, CancellationToken cancellationToken = default)
    {
        if (day.IsRest)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{day.Date:yyyy-MM-dd} is a day of rest; name another day"), nameof(day));
        }

        var sections = new List<Section>();
        var findings = new List<Finding>();
        Drone? drone = null;
        foreach (var planned in day.Drills)
        {
            var drill = Drills[planned.Drill];
            var score = drill.ToScore(tonic, Tuning, planned.Tempo, planned.Times, Need, cancellationToken);
            sections.AddRange(score.Sections);
            findings.AddRange(score.Findings);
            drone ??= score.Drone;
        }

        var scale = Drills[day.Drills[0].Drill].Scale;
        return new Score(
            string.Create(CultureInfo.InvariantCulture, $"Warm-up {day.Date:yyyy-MM-dd}: {scale.Name}"),
            sections.ToValueList(),
            drone,
            findings.Distinct().ToValueList());
    }
}

/// <summary>A plan, and what was left out of it and why.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="LeftOut">The scales that are not in it: which, and for whom they do not fit. It names singers and is not part of the plan.</param>
/// <param name="Octaves">For each singer in the class's order: the octaves above the files' tonic in which they sing, mostly 0 or -1.</param>
public sealed record PlanResult(WarmupPlan Plan, ValueList<string> LeftOut, ValueList<int> Octaves)
{
    /// <summary>What the class's limits keep out or ease, for the teacher. It names singers and is not part of the plan.</summary>
    public ValueList<string> Limits { get; init; }

    /// <summary>The cautions, which stand with every plan.</summary>
    public ValueList<Caution> Cautions { get; } = Warmup.Cautions.All;
}

/// <summary>The rules of a plan clash.</summary>
public sealed class PlanImpossibleException : InvalidOperationException
{
    /// <summary>An exception without rules.</summary>
    public PlanImpossibleException()
        : this("no plan meets the rules")
    {
    }

    /// <summary>An exception with a message.</summary>
    /// <param name="message">What clashes.</param>
    public PlanImpossibleException(string message)
        : base(message)
    {
    }

    /// <summary>An exception with a message, caused by another.</summary>
    /// <param name="message">What clashes.</param>
    /// <param name="innerException">The cause.</param>
    public PlanImpossibleException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An exception with the rules that clash.</summary>
    /// <param name="clash">The rules: without any one of them the others can be met. Empty where the scales alone make a plan impossible.</param>
    /// <param name="further">Further sets that clash by themselves and have no rule in common with each other.</param>
    /// <param name="why">What is missing with all of them.</param>
    public PlanImpossibleException(ValueList<PlanRule> clash, ValueList<ValueList<PlanRule>> further, string why)
        : base(Words(clash, further, why)) => (Clash, Further) = (clash, further);

    /// <summary>An irreducible set of rules that clash: without any one of them the others can be met.</summary>
    public ValueList<PlanRule> Clash { get; }

    /// <summary>Further sets that clash by themselves. A plan needs one rule given up of each.</summary>
    public ValueList<ValueList<PlanRule>> Further { get; }

    private static string Words(ValueList<PlanRule> clash, ValueList<ValueList<PlanRule>> further, string why)
    {
        if (clash.IsEmpty)
        {
            return $"no plan: {why}";
        }

        var sets = string.Join("; and ", ((ValueList<PlanRule>[])[clash, .. further]).Select(set => string.Join(" + ", set)));
        return $"no plan meets all the rules: {why}. {(clash.Count == 1 && further.IsEmpty ? "This rule stands in the way" : "These stand in the way; of rules joined by +, one has to be given up")}: {sets}";
    }
}

/// <summary>What a rule of a plan is about.</summary>
public enum PlanRuleKind
{
    /// <summary>A singer's comfortable range.</summary>
    Range,

    /// <summary>A singer's breath.</summary>
    Breath,

    /// <summary>How fast a singer can change notes.</summary>
    Agility,

    /// <summary>The minutes of a warm-up.</summary>
    Budget,

    /// <summary>The ceiling of the difficulty.</summary>
    Ceiling,

    /// <summary>The days without a repeat.</summary>
    NoRepeat,

    /// <summary>The days of rest.</summary>
    Rest,

    /// <summary>What the log says was sung before.</summary>
    Log,

    /// <summary>How much of the minutes has to be filled.</summary>
    Fill,
}

/// <summary>A rule of a plan.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Singer">The singer's alias, or <see langword="null"/>.</param>
/// <param name="Text">The rule in words, with an example of what it refuses.</param>
public sealed record PlanRule(PlanRuleKind Kind, string? Singer, string Text)
{
    /// <summary>The words.</summary>
    public override string ToString() => Text;
}
