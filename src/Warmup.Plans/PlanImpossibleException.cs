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
    internal PlanImpossibleException(ValueList<PlanRule> clash, ValueList<ValueList<PlanRule>> further, PlanRefusal refusal)
        : base(refusal.ToString()) => (Clash, FurtherClashes, Change) = (clash, further, refusal.Change);

    /// <summary>
    /// An irreducible set of rules that clash: without any one of them the others can be met. Empty where no rule is to blame and the scales alone
    /// make a plan impossible.
    /// </summary>
    public ValueList<PlanRule> Clash { get; }

    /// <summary>Further sets that clash by themselves; no two sets share a rule. For a plan, one rule of each set has to be given up.</summary>
    public ValueList<ValueList<PlanRule>> FurtherClashes { get; }

    /// <summary>The smallest single change that was found with which there is a plan; <see langword="null"/> where none was found.</summary>
    public PlanChange? Change { get; }
}

/// <summary>A refusal in words.</summary>
/// <param name="Tried">The tonics tried; empty where none was needed.</param>
/// <param name="Why">What is missing on the tonic that comes nearest.</param>
/// <param name="Clashes">The sets of rules that clash, in short.</param>
/// <param name="Change">The change that helps, or nothing.</param>
internal sealed record PlanRefusal(string Tried, string Why, IReadOnlyList<string> Clashes, PlanChange? Change)
{
    // The rest is in the exception's sets.
    private const int MostClashes = 3;

    public override string ToString()
    {
        var more = Clashes.Count > MostClashes ? $"; and {Clashes.Count - MostClashes} more" : string.Empty;
        var clash = Clashes.Count switch
        {
            0 => string.Empty,
            1 when !Clashes[0].Contains(" + ", StringComparison.Ordinal) => $". In the way: {Clashes[0]}",
            1 => $". One of these has to give: {Clashes[0]}",
            _ => $". In the way, where one of those joined by + has to give: {string.Join("; and ", Clashes.Take(MostClashes))}{more}",
        };
        var change = Change is not null ? $". There is a plan if you {Change.Text}" : Clashes.Count > 0 ? ". No single change that was tried helps" : string.Empty;
        return $"no plan{(Tried.Length == 0 ? string.Empty : $" {Tried}")}: {Why}{clash}{change}";
    }
}
