using System.Globalization;

namespace Warmup.Testing;

/// <summary>The result for one law. Immutable, value equality.</summary>
public sealed record LawReport
{
    internal LawReport(string ruleName, PatternLaw law, int cases, int silentCases, CaseCoverage coverage, LawFailure? failure) =>
        (RuleName, Law, Cases, SilentCases, Coverage, Failure) = (ruleName, law, cases, silentCases, coverage, failure);

    /// <summary>The rule's name.</summary>
    public string RuleName { get; }

    /// <summary>The law.</summary>
    public PatternLaw Law { get; }

    /// <summary>The number of cases in which the law said something.</summary>
    public int Cases { get; }

    /// <summary>The number of cases in which the law said nothing, since the scale refused the lines.</summary>
    public int SilentCases { get; }

    /// <summary>Of what kinds the cases were in which the law said something, up to the first that broke it.</summary>
    public CaseCoverage Coverage { get; }

    /// <summary>The smallest case found that breaks the law, or <see langword="null"/>.</summary>
    public LawFailure? Failure { get; }

    /// <summary>Whether the law held in every case, and there were cases.</summary>
    public bool IsKept => Failure is null && Cases > 0;

    /// <summary>
    /// The report in full: one line and the shares of the kinds of cases; for a broken law its sentence and the case, with a line that gives it again.
    /// </summary>
    public string Describe() => Failure is null
        ? ReportText.Kept(RuleName, Law.Name, Law.Algebra, IsKept, Cases, SilentCases, Coverage)
        : ReportText.Broken(RuleName, Law.Name, Law.Algebra, Law.Sentence, Failure.Describe());

    /// <summary>The rule, the law and whether it was kept.</summary>
    public override string ToString() => $"{RuleName}: {Law.Name}: {(IsKept ? "held" : Failure is null ? "never tried" : "BROKEN")}";
}

/// <summary>The smallest case that was found to break a law. Immutable, value equality.</summary>
public sealed record LawFailure
{
    internal LawFailure(Pattern pattern, Pattern other, Scale scale, string seed, int shrinks) =>
        (Pattern, Other, Scale, Seed, Shrinks) = (pattern, other, scale, seed, shrinks);

    /// <summary>The pattern p.</summary>
    public Pattern Pattern { get; }

    /// <summary>The pattern q, for laws with two patterns.</summary>
    public Pattern Other { get; }

    /// <summary>The scale.</summary>
    public Scale Scale { get; }

    /// <summary>The seed of the case: with it as <see cref="LawOptions.Seed"/> you see the case again.</summary>
    public string Seed { get; }

    /// <summary>How many smaller cases were found on the way to this one.</summary>
    public int Shrinks { get; }

    /// <summary>
    /// The line that gives the case again, for a test of any framework (xunit, NUnit, MSTest): put it where <c>rule</c> and <c>law</c> are the rule and the
    /// law of the report. It throws a <see cref="LawBrokenException"/>, which every framework takes for a failure.
    /// </summary>
    public string ReplayLine => ReportText.Replay("Check", Seed);

    /// <summary>The case in five lines.</summary>
    public string Describe() => string.Create(
        CultureInfo.InvariantCulture, $"  p      {Pattern}\n  q      {Other}\n  scale  {Scale.ToText()}\n  seed   {Seed} (after {Shrinks} shrinks)\n  replay {ReplayLine}");

    /// <summary>The pattern p and the scale, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of($"{Pattern} in {Scale.ToText()}");
}
