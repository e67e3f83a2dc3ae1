using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Collections;
using Microsoft.FSharp.Core;

namespace Warmup.Testing;

/// <summary>How a law suite runs.</summary>
public sealed record LawOptions
{
    /// <summary>Cases that say something, for each law; 200 by default, 1 to 100,000.</summary>
    public int Cases { get; init; } = 200;

    /// <summary>The seed to begin with, as a report prints it; a new one for each run by default.</summary>
    public string? Seed { get; init; }

    /// <summary>The patterns; <see cref="PatternGenerators.Patterns"/> by default.</summary>
    public Gen<Pattern> Patterns { get; init; } = PatternGenerators.Patterns;

    /// <summary>The scales; <see cref="ScaleGenerators.Scales"/> by default.</summary>
    public Gen<Scale> Scales { get; init; } = ScaleGenerators.Scales;
}

/// <summary>What became of one law.</summary>
/// <param name="Rule">The rule's name.</param>
/// <param name="Law">The law.</param>
/// <param name="Cases">The cases in which it said something.</param>
/// <param name="SilentCases">The cases in which it said nothing, since the scale refused the lines.</param>
/// <param name="Failure">The smallest case found that breaks it, or <see langword="null"/>.</param>
public sealed record LawReport(string Rule, PatternLaw Law, int Cases, int SilentCases, LawFailure? Failure)
{
    /// <summary>Whether the law held in every case, and there were cases.</summary>
    public bool Holds => Failure is null && Cases > 0;

    /// <summary>One line, or for a broken law the case: both patterns' text, the scale written out, and the seed that gives it again.</summary>
    public override string ToString() => Failure is null
        ? string.Create(CultureInfo.InvariantCulture, $"{Rule}: {Law.Name} ({Law.Algebra}): {(Cases > 0 ? "held" : "never tried")} in {Cases} cases ({SilentCases} said nothing)")
        : string.Create(CultureInfo.InvariantCulture, $"{Rule}: {Law.Name} ({Law.Algebra}): BROKEN\n  {Law.English}\n{Failure}");
}

/// <summary>The smallest case that was found to break a law.</summary>
/// <param name="Pattern">The pattern p.</param>
/// <param name="Other">The pattern q, for laws that take two.</param>
/// <param name="Scale">The scale.</param>
/// <param name="Seed">What to give as <see cref="LawOptions.Seed"/> to see it again.</param>
/// <param name="Shrinks">How many smaller cases were found on the way to it.</param>
public sealed record LawFailure(Pattern Pattern, Pattern Other, Scale Scale, string Seed, int Shrinks)
{
    /// <summary>The case in four lines.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"  p     {Pattern}\n  q     {Other}\n  scale {Scale.ToNotesText()}\n  seed  {Seed} (after {Shrinks} shrinks)");
}

/// <summary>A rule broke a law that it was said to keep.</summary>
public sealed class LawBrokenException : Exception
{
    /// <summary>An exception without a report.</summary>
    public LawBrokenException()
        : this("a law was broken")
    {
    }

    /// <summary>An exception with the reports as its message.</summary>
    /// <param name="message">The reports.</param>
    public LawBrokenException(string message)
        : base(message)
    {
    }

    /// <summary>An exception caused by another.</summary>
    /// <param name="message">The reports.</param>
    /// <param name="innerException">The cause.</param>
    public LawBrokenException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}

/// <summary>Holds a rule against laws, over generated patterns and scales, and shrinks what breaks them.</summary>
public static class LawSuite
{
    /// <summary>Holds a rule against laws.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="laws">The laws it claims.</param>
    /// <returns>A report for each law, in their order.</returns>
    public static ValueList<LawReport> Check(PatternRule rule, params ReadOnlySpan<PatternLaw> laws) => Check(rule, new LawOptions(), laws);

    /// <summary>Holds a rule against laws, in a way of your own.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="options">How to run.</param>
    /// <param name="laws">The laws it claims.</param>
    /// <returns>A report for each law, in their order.</returns>
    public static ValueList<LawReport> Check(PatternRule rule, LawOptions options, params ReadOnlySpan<PatternLaw> laws)
    {
        var reports = new LawReport[laws.Length];
        for (var i = 0; i < reports.Length; i++)
        {
            reports[i] = Run(rule, laws[i], options);
        }

        return [.. reports];
    }

    /// <summary>Throws where a law was broken or never tried.</summary>
    /// <param name="reports">The reports.</param>
    /// <exception cref="LawBrokenException">A law was broken; the message has the cases.</exception>
    public static void ThrowIfBroken(this ValueList<LawReport> reports)
    {
        var broken = ((IEnumerable<LawReport>)reports).Where(r => !r.Holds).ToList();
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
        if (options.Seed is { } seed)
        {
            config = config.WithReplay(FSharpOption<Replay>.Some(ReadSeed(seed)));
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

    private static Replay ReadSeed(string seed)
    {
        var parts = seed.Split(',', StringSplitOptions.TrimEntries);
        return parts.Length is 2 or 3
            && ulong.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out var state)
            && ulong.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var gamma)
            ? new Replay(
                new Rnd(state, gamma),
                parts.Length == 3 && int.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out var size) ? FSharpOption<int>.Some(size) : FSharpOption<int>.None)
            : throw new ArgumentException($"a seed is two or three whole numbers as a report prints them, not '{seed}'", nameof(seed));
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
