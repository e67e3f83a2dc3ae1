using System.Globalization;

namespace Warmup.Testing;

/// <summary>The result for one law: a <see cref="LawReport"/> or a <see cref="ScoreLawReport"/>. Immutable, value equality.</summary>
/// <typeparam name="TLaw">The kind of law.</typeparam>
/// <typeparam name="TFailure">The kind of case that breaks it.</typeparam>
public abstract record LawReport<TLaw, TFailure>
    where TLaw : Law
    where TFailure : BrokenCase
{
    private protected LawReport(string ruleName, TLaw law, int cases, int silentCases, CaseCoverage coverage, TFailure? failure) =>
        (RuleName, Law, Cases, SilentCases, Coverage, Failure) = (ruleName, law, cases, silentCases, coverage, failure);

    /// <summary>The rule's name.</summary>
    public string RuleName { get; }

    /// <summary>The law.</summary>
    public TLaw Law { get; }

    /// <summary>The number of cases in which the law said something.</summary>
    public int Cases { get; }

    /// <summary>The number of cases in which the law said nothing, since a scale refused the lines or the law does not concern them.</summary>
    public int SilentCases { get; }

    /// <summary>Of what kinds the cases were in which the law said something, up to the first that broke it.</summary>
    public CaseCoverage Coverage { get; }

    /// <summary>The smallest case found that breaks the law, or <see langword="null"/>.</summary>
    public TFailure? Failure { get; }

    /// <summary>Whether the law held in every case, and there were cases.</summary>
    public bool IsKept => Failure is null && Cases > 0;

    /// <summary>
    /// The report in full: one line and the shares of the kinds of cases; for a broken law its sentence and the case, with a line that gives it again.
    /// </summary>
    public string Describe()
    {
        var tried = $"{RuleName}: {Law.Name} ({Law.Algebra})";
        if (Failure is not null)
        {
            return $"{tried}: BROKEN\n  {Law.Sentence}\n{Failure.Describe()}";
        }

        var first = string.Create(CultureInfo.InvariantCulture, $"{tried}: {(IsKept ? "held" : "never tried")} in {Cases} cases ({SilentCases} said nothing)");
        return Coverage.Shares.IsEmpty ? first : $"{first}\n  {Coverage.Describe().Replace("\n", "\n  ", StringComparison.Ordinal)}";
    }

    /// <summary>The rule, the law and whether it was kept.</summary>
    public sealed override string ToString() => $"{RuleName}: {Law.Name}: {(IsKept ? "held" : Failure is null ? "never tried" : "BROKEN")}";
}

/// <summary>The result for one law of patterns. Immutable, value equality.</summary>
public sealed record LawReport : LawReport<PatternLaw, LawFailure>
{
    internal LawReport(string ruleName, PatternLaw law, int cases, int silentCases, CaseCoverage coverage, LawFailure? failure)
        : base(ruleName, law, cases, silentCases, coverage, failure)
    {
    }
}

/// <summary>The result for one law of scores. Immutable, value equality.</summary>
public sealed record ScoreLawReport : LawReport<ScoreLaw, ScoreLawFailure>
{
    internal ScoreLawReport(string ruleName, ScoreLaw law, int cases, int silentCases, CaseCoverage coverage, ScoreLawFailure? failure)
        : base(ruleName, law, cases, silentCases, coverage, failure)
    {
    }
}
