using System.Globalization;

namespace Warmup.Testing;

/// <summary>The result for one law. Immutable, value equality.</summary>
public sealed record LawReport
{
    internal LawReport(string ruleName, PatternLaw law, int cases, int silentCases, LawFailure? failure) =>
        (RuleName, Law, Cases, SilentCases, Failure) = (ruleName, law, cases, silentCases, failure);

    /// <summary>The rule's name.</summary>
    public string RuleName { get; }

    /// <summary>The law.</summary>
    public PatternLaw Law { get; }

    /// <summary>The number of cases in which the law said something.</summary>
    public int Cases { get; }

    /// <summary>The number of cases in which the law said nothing, since the scale refused the lines.</summary>
    public int SilentCases { get; }

    /// <summary>The smallest case found that breaks the law, or <see langword="null"/>.</summary>
    public LawFailure? Failure { get; }

    /// <summary>Whether the law held in every case, and there were cases.</summary>
    public bool IsKept => Failure is null && Cases > 0;

    /// <summary>The report in full: one line, or for a broken law also its sentence and the case, with the seed that gives it again.</summary>
    public string Describe() => Failure is null
        ? string.Create(CultureInfo.InvariantCulture, $"{RuleName}: {Law.Name} ({Law.Algebra}): {(IsKept ? "held" : "never tried")} in {Cases} cases ({SilentCases} said nothing)")
        : $"{RuleName}: {Law.Name} ({Law.Algebra}): BROKEN\n  {Law.Sentence}\n{Failure.Describe()}";

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

    /// <summary>The case in four lines.</summary>
    public string Describe() =>
        string.Create(CultureInfo.InvariantCulture, $"  p     {Pattern}\n  q     {Other}\n  scale {Scale.ToText()}\n  seed  {Seed} (after {Shrinks} shrinks)");

    /// <summary>The pattern p and the scale, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of($"{Pattern} in {Scale.ToText()}");
}
