using System.Globalization;

namespace Warmup.Testing;

/// <summary>The result for one law of scores. Immutable, value equality.</summary>
public sealed record ScoreLawReport
{
    internal ScoreLawReport(string ruleName, ScoreLaw law, int cases, int silentCases, CaseCoverage coverage, ScoreLawFailure? failure) =>
        (RuleName, Law, Cases, SilentCases, Coverage, Failure) = (ruleName, law, cases, silentCases, coverage, failure);

    /// <summary>The rule's name.</summary>
    public string RuleName { get; }

    /// <summary>The law.</summary>
    public ScoreLaw Law { get; }

    /// <summary>The number of cases in which the law said something.</summary>
    public int Cases { get; }

    /// <summary>The number of cases in which the law said nothing, since a scale refused the lines or the law does not concern them.</summary>
    public int SilentCases { get; }

    /// <summary>Of what kinds the cases were in which the law said something, up to the first that broke it.</summary>
    public CaseCoverage Coverage { get; }

    /// <summary>The smallest drills found that break the law, or <see langword="null"/>.</summary>
    public ScoreLawFailure? Failure { get; }

    /// <summary>Whether the law held in every case, and there were cases.</summary>
    public bool IsKept => Failure is null && Cases > 0;

    /// <summary>
    /// The report in full: one line and the shares of the kinds of cases; for a broken law its sentence and the drills, with a line that gives them again.
    /// </summary>
    public string Describe() => Failure is null
        ? ReportText.Kept(RuleName, Law.Name, Law.Algebra, IsKept, Cases, SilentCases, Coverage)
        : ReportText.Broken(RuleName, Law.Name, Law.Algebra, Law.Sentence, Failure.Describe());

    /// <summary>The rule, the law and whether it was kept.</summary>
    public override string ToString() => $"{RuleName}: {Law.Name}: {(IsKept ? "held" : Failure is null ? "never tried" : "BROKEN")}";
}

/// <summary>The smallest drills that were found to break a law of scores. Immutable, value equality.</summary>
public sealed record ScoreLawFailure
{
    internal ScoreLawFailure(ValueList<Drill> drills, string seed, int shrinks) => (Drills, Seed, Shrinks) = (drills, seed, shrinks);

    /// <summary>The drills, one where one is enough.</summary>
    public ValueList<Drill> Drills { get; }

    /// <summary>The seed of the case: with it as <see cref="LawOptions.Seed"/> you see the case again.</summary>
    public string Seed { get; }

    /// <summary>How many simpler cases were found on the way to this one.</summary>
    public int Shrinks { get; }

    /// <summary>
    /// The line that gives the case again, for a test of any framework (xunit, NUnit, MSTest): put it where <c>rule</c> and <c>law</c> are the rule and the
    /// law of the report. It throws a <see cref="LawBrokenException"/>, which every framework takes for a failure.
    /// </summary>
    public string ReplayLine => ReportText.Replay("CheckSung", Seed);

    /// <summary>A line for each drill, as the options of the program <c>warmup</c> name its parts, then the seed and the line that gives the case again.</summary>
    public string Describe() => string.Join('\n', (string[])
    [
        .. Drills.ConvertAll(d => $"  drill  {ToText(d)}"),
        string.Create(CultureInfo.InvariantCulture, $"  seed   {Seed} (after {Shrinks} shrinks)"),
        $"  replay {ReplayLine}",
    ]);

    /// <summary>The first drill, at most 200 characters.</summary>
    public override string ToString() => OneLine.Of(ToText(Drills[0]));

    private static string ToText(Drill drill) => string.Create(
        CultureInfo.InvariantCulture,
        $"{drill.Pattern} in {drill.Scale.ToText()}, tala {drill.Meter.Name}, speeds {string.Join(", ", drill.Speeds)}, tempo {drill.Tempo}, tonic {drill.Tonic}{(drill.Delivery == Delivery.Continuous ? string.Empty : ", line by line")}");
}
