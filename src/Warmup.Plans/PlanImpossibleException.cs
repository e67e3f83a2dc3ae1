namespace Warmup.Plans;

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
    public PlanImpossibleException(string? message)
        : base(message)
    {
    }

    /// <summary>An exception with a message, caused by another.</summary>
    /// <param name="message">What clashes.</param>
    /// <param name="innerException">The cause.</param>
    public PlanImpossibleException(string? message, Exception? innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An exception with the rules that clash, and what is missing under all of them.</summary>
    internal PlanImpossibleException(ValueList<PlanRule> clash, ValueList<ValueList<PlanRule>> further, string why)
        : base(Words(clash, further, why)) => (Clash, FurtherClashes) = (clash, further);

    /// <summary>
    /// An irreducible set of rules that clash: without any one of them the others can be met. Empty where no rule is to blame and the scales alone
    /// make a plan impossible.
    /// </summary>
    public ValueList<PlanRule> Clash { get; }

    /// <summary>Further sets that clash by themselves; no two sets share a rule. For a plan, one rule of each set has to be given up.</summary>
    public ValueList<ValueList<PlanRule>> FurtherClashes { get; }

    private static string Words(ValueList<PlanRule> clash, ValueList<ValueList<PlanRule>> further, string why)
    {
        if (clash.IsEmpty)
        {
            return $"no plan: {why}";
        }

        var sets = string.Join("; and ", ((ValueList<PlanRule>[])[clash, .. further]).Select(set => string.Join(" + ", set.ConvertAll(r => r.Text))));
        return clash.Count == 1 && further.IsEmpty
            ? $"no plan meets all the rules: {why}. This rule stands in the way: {sets}"
            : $"no plan meets all the rules: {why}. These stand in the way; of rules joined by +, one has to be given up: {sets}";
    }
}
