using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>Checks a rule against laws over generated patterns and scales, and shrinks what breaks them.</summary>
public static class LawSuite
{
    /// <summary>Checks a rule against laws.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="laws">The laws that the rule claims to keep, at least one.</param>
    /// <returns>A report for each law, in their order.</returns>
    /// <exception cref="ArgumentException">There is no law.</exception>
    public static ValueList<LawReport> Check(PatternRule rule, params ReadOnlySpan<PatternLaw> laws) => Check(rule, new LawOptions(), laws);

    /// <summary>Checks a rule against laws, with options.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="options">How to run.</param>
    /// <param name="laws">The laws that the rule claims to keep, at least one.</param>
    /// <returns>A report for each law, in their order.</returns>
    /// <exception cref="ArgumentException">There is no law.</exception>
    public static ValueList<LawReport> Check(PatternRule rule, LawOptions options, params ReadOnlySpan<PatternLaw> laws)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(options);
        if (laws.IsEmpty)
        {
            throw new ArgumentException("name at least one law", nameof(laws));
        }

        var reports = new LawReport[laws.Length];
        for (var i = 0; i < reports.Length; i++)
        {
            ArgumentNullException.ThrowIfNull(laws[i], nameof(laws));
            reports[i] = Run(rule, laws[i], options);
        }

        return [.. reports];
    }

    /// <summary>Checks how a rule's lines are sung against laws of scores, over drills in all talas; what breaks a law is shrunk to the smallest drill.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="laws">The laws that the rule claims to keep, at least one.</param>
    /// <returns>A report for each law, in their order.</returns>
    /// <exception cref="ArgumentException">There is no law.</exception>
    public static ValueList<ScoreLawReport> CheckSung(PatternRule rule, params ReadOnlySpan<ScoreLaw> laws) => CheckSung(rule, new LawOptions(), laws);

    /// <summary>Checks how a rule's lines are sung against laws of scores, with options.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="options">How to run; the drills are those of <see cref="DrillGenerators.Sung"/>, whatever patterns and scales the options name.</param>
    /// <param name="laws">The laws that the rule claims to keep, at least one.</param>
    /// <returns>A report for each law, in their order.</returns>
    /// <exception cref="ArgumentException">There is no law.</exception>
    public static ValueList<ScoreLawReport> CheckSung(PatternRule rule, LawOptions options, params ReadOnlySpan<ScoreLaw> laws)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(options);
        if (laws.IsEmpty)
        {
            throw new ArgumentException("name at least one law", nameof(laws));
        }

        var reports = new ScoreLawReport[laws.Length];
        for (var i = 0; i < reports.Length; i++)
        {
            ArgumentNullException.ThrowIfNull(laws[i], nameof(laws));
            reports[i] = Run(rule, laws[i], options);
        }

        return [.. reports];
    }

    /// <summary>Throws where a law of scores was broken or never tried.</summary>
    /// <param name="reports">The reports.</param>
    /// <exception cref="LawBrokenException">A law was broken or never tried; the message describes the cases.</exception>
    public static void ThrowIfBroken(this ValueList<ScoreLawReport> reports) => Throw(reports.Where(r => !r.IsKept).Select(r => r.Describe()));

    /// <summary>Throws where a law was broken or never tried.</summary>
    /// <param name="reports">The reports.</param>
    /// <exception cref="LawBrokenException">A law was broken or never tried; the message describes the cases.</exception>
    public static void ThrowIfBroken(this ValueList<LawReport> reports) => Throw(reports.Where(r => !r.IsKept).Select(r => r.Describe()));

    private static void Throw(IEnumerable<string> broken)
    {
        var texts = broken.ToList();
        if (texts.Count > 0)
        {
            throw new LawBrokenException(string.Join('\n', texts));
        }
    }

    private static LawReport Run(PatternRule rule, PatternLaw law, LawOptions options)
    {
        var cases = Arb.From(
            from pattern in options.Patterns
            from other in options.Patterns
            from scale in options.Scales
            select new Case(pattern, other, scale),
            Shrink);
        var run = new CaseRun<Case>(cases, c => law.Check(rule, c.Pattern, c.Other, c.Scale), static (counter, c) => counter.Add(c.Pattern, c.Scale), options);
        var failure = run.Failure is { } f ? new LawFailure(f.Case.Pattern, f.Case.Other, f.Case.Scale, f.Seed, f.Shrinks) : null;
        return new LawReport(rule.Name, law, run.Cases, run.Silent, run.Coverage, failure);
    }

    private static ScoreLawReport Run(PatternRule rule, ScoreLaw law, LawOptions options)
    {
        var cases = Arb.From(DrillGenerators.Sung.Select(d => new SungCase(d)), c => DrillGenerators.Shrink(c.Drills).Select(d => new SungCase(d)));
        var run = new CaseRun<SungCase>(cases, c => Verdict(rule, law, c.Drills), static (counter, c) => counter.Add(c.Drills), options);
        var failure = run.Failure is { } f ? new ScoreLawFailure(f.Case.Drills, f.Seed, f.Shrinks) : null;
        return new ScoreLawReport(rule.Name, law, run.Cases, run.Silent, run.Coverage, failure);
    }

    private static LawVerdict Verdict(PatternRule rule, ScoreLaw law, ValueList<Drill> drills)
    {
        var (before, after) = (new List<Score>(), new List<Score>());
        foreach (var drill in drills)
        {
            if (rule.Lines(drill.Pattern, drill.Scale) is not { } lines
                || !drill.TryToScore(out var plain, out _)
                || !(drill with { Expansion = new Expansion(lines) }).TryToScore(out var sung, out _))
            {
                return LawVerdict.SaysNothing;
            }

            before.Add(plain);
            after.Add(sung);
        }

        return law.Check(Score.Join("before", before), Score.Join("after", after));
    }

    private static IEnumerable<Case> Shrink(Case large)
    {
        // The scale first: a small case in a plain scale is easier to sing through than a tiny one in an odd one.
        foreach (var scale in ScaleGenerators.Shrink(large.Scale))
        {
            yield return large with { Scale = scale };
        }

        foreach (var pattern in PatternGenerators.Shrink(large.Pattern))
        {
            yield return large with { Pattern = pattern };
        }

        if (large.Other != Pattern.Run)
        {
            yield return large with { Other = Pattern.Run };
        }

        foreach (var other in PatternGenerators.Shrink(large.Other))
        {
            yield return large with { Other = other };
        }
    }

    private sealed record Case(Pattern Pattern, Pattern Other, Scale Scale);

    // A list alone would be shrunk by FsCheck as it sees fit.
    private sealed record SungCase(ValueList<Drill> Drills);
}
