namespace Warmup.Plans;

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

/// <summary>A rule of a plan. Immutable, value equality.</summary>
public sealed record PlanRule
{
    internal PlanRule(PlanRuleKind kind, string? singer, string text) => (Kind, Singer, Text) = (kind, singer, text);

    /// <summary>What the rule is about.</summary>
    public PlanRuleKind Kind { get; }

    /// <summary>The alias of the singer whom the rule protects, or <see langword="null"/>.</summary>
    public string? Singer { get; }

    /// <summary>The rule in words, with an example of what it refuses.</summary>
    public string Text { get; }

    /// <summary>The kind, and the singer if there is one.</summary>
    public override string ToString() => Singer is null ? Kind.ToString() : $"{Kind} of {Singer}";
}
