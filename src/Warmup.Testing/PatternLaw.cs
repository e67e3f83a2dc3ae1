namespace Warmup.Testing;

/// <summary>What a law says about a rule in one case.</summary>
public enum LawVerdict
{
    /// <summary>The law holds.</summary>
    Holds,

    /// <summary>The law does not hold.</summary>
    Broken,

    /// <summary>The scale has no such lines, or they would be too many: the law says nothing.</summary>
    SaysNothing,
}

/// <summary>A law for pattern rules: one of <see cref="PatternLaws"/>, or your own.</summary>
/// <remarks>Immutable, value equality; what two laws check is equal if it is the same function.</remarks>
public sealed record PatternLaw : Law
{
    private readonly Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> _check;

    /// <summary>Makes a law.</summary>
    /// <param name="name">A short name, 1 to 60 characters without control characters.</param>
    /// <param name="algebra">The law in one line, where <c>f</c> is the rule and <c>p</c> and <c>q</c> are patterns; at most 500 characters.</param>
    /// <param name="sentence">The law in one sentence; at most 500 characters.</param>
    /// <param name="check">Checks a rule against the law for two patterns, p and q, in a scale.</param>
    /// <exception cref="ArgumentException">A text is empty or too long, or holds a control character.</exception>
    public PatternLaw(string name, string algebra, string sentence, Func<PatternRule, Pattern, Pattern, Scale, LawVerdict> check)
        : base(name, algebra, sentence)
    {
        ArgumentNullException.ThrowIfNull(check);
        _check = check;
    }

    /// <summary>Checks a rule against the law in one case.</summary>
    /// <param name="rule">The rule f.</param>
    /// <param name="pattern">The pattern p.</param>
    /// <param name="other">The pattern q, for laws with two patterns.</param>
    /// <param name="scale">The scale.</param>
    public LawVerdict Check(PatternRule rule, Pattern pattern, Pattern other, Scale scale)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(other);
        ArgumentNullException.ThrowIfNull(scale);
        return _check(rule, pattern, other, scale);
    }
}
