using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Collections;
using Microsoft.FSharp.Core;

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

    /// <summary>Throws where a law was broken or never tried.</summary>
    /// <param name="reports">The reports.</param>
    /// <exception cref="LawBrokenException">A law was broken or never tried; the message describes the cases.</exception>
    public static void ThrowIfBroken(this ValueList<LawReport> reports)
    {
        var broken = reports.Where(r => !r.IsKept).Select(r => r.Describe()).ToList();
        if (broken.Count > 0)
        {
            throw new LawBrokenException(string.Join('\n', broken));
        }
    }

    private static LawReport Run(PatternRule rule, PatternLaw law, LawOptions options)
    {
        var silent = 0;
        var cases = Arb.From(
            from pattern in options.Patterns
            from other in options.Patterns
            from scale in options.Scales
            select new Case(pattern, other, scale),
            Shrink);
        var property = Prop.ForAll(cases, c =>
        {
            var verdict = law.Check(rule, c.Pattern, c.Other, c.Scale);
            silent += verdict == LawVerdict.SaysNothing ? 1 : 0;
            return Prop.When(verdict != LawVerdict.Broken, verdict != LawVerdict.SaysNothing);
        });
        var runner = new Runner();
        var config = Config.Quick.WithMaxTest(options.Cases).WithMaxRejected(20 * options.Cases).WithRunner(runner);
        if (options.ToReplay() is { } replay)
        {
            config = config.WithReplay(FSharpOption<Replay>.Some(replay));
        }

        FsCheck.Check.One(config, property);
        return runner.Result switch
        {
            TestResult.Failed failed => new LawReport(rule.Name, law, failed.Item1.NumberOfTests, silent, Failure(failed)),
            TestResult.Passed passed => new LawReport(rule.Name, law, passed.Item1.NumberOfTests, silent, null),
            TestResult.Exhausted exhausted => new LawReport(rule.Name, law, exhausted.Item.NumberOfTests, silent, null),
            _ => throw new InvalidOperationException("the law was not run"),
        };
    }

    private static LawFailure Failure(TestResult.Failed failed)
    {
        var smallest = (Case)failed.Item3.Head;
        var seed = string.Create(CultureInfo.InvariantCulture, $"{failed.Item6.Seed},{failed.Item6.Gamma},{failed.Item7}");
        return new LawFailure(smallest.Pattern, smallest.Other, smallest.Scale, seed, failed.Item1.NumberOfShrinks);
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

    private sealed class Runner : IRunner
    {
        public TestResult? Result { get; private set; }

        public void OnStartFixture(Type t)
        {
        }

        public void OnArguments(int ntest, FSharpList<object> args, FSharpFunc<int, FSharpFunc<FSharpList<object>, string>> every)
        {
        }

        public void OnShrink(FSharpList<object> args, FSharpFunc<FSharpList<object>, string> everyShrink)
        {
        }

        public void OnFinished(string name, TestResult testResult) => Result = testResult;
    }
}
