using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Collections;
using Microsoft.FSharp.Core;

namespace Warmup.Testing;

/// <summary>One law tried over generated cases, which are counted, and shrunk where one breaks it.</summary>
/// <typeparam name="TCase">What the law is tried with.</typeparam>
internal sealed class CaseRun<TCase>
{
    /// <summary>Runs the law.</summary>
    /// <param name="cases">The cases, with how they are shrunk.</param>
    /// <param name="check">What the law says about a case.</param>
    /// <param name="count">Counts of what kinds a case is.</param>
    /// <param name="options">How to run.</param>
    public CaseRun(Arbitrary<TCase> cases, Func<TCase, LawVerdict> check, Action<CaseCounter, TCase> count, LawOptions options)
    {
        var counter = new CaseCounter();
        var (silent, isBroken) = (0, false);
        var property = Prop.ForAll(cases, c =>
        {
            var verdict = check(c);
            silent += verdict == LawVerdict.SaysNothing ? 1 : 0;
            if (verdict != LawVerdict.SaysNothing && !isBroken)
            {
                // What comes after the first broken case are attempts to shrink it.
                count(counter, c);
                isBroken = verdict == LawVerdict.Broken;
            }

            return Prop.When(verdict != LawVerdict.Broken, verdict != LawVerdict.SaysNothing);
        });
        var runner = new Runner();
        var config = Config.Quick.WithMaxTest(options.Cases).WithMaxRejected(20 * options.Cases).WithRunner(runner);
        if (options.ToReplay() is { } replay)
        {
            config = config.WithReplay(FSharpOption<Replay>.Some(replay));
        }

        FsCheck.Check.One(config, property);
        (Cases, Failure) = runner.Result switch
        {
            TestResult.Failed failed => (failed.Item1.NumberOfTests, FailureOf(failed)),
            TestResult.Passed passed => (passed.Item1.NumberOfTests, null),
            TestResult.Exhausted exhausted => (exhausted.Item.NumberOfTests, null),
            _ => throw new InvalidOperationException("the law was not run"),
        };
        (Silent, Coverage) = (silent, counter.ToCoverage());
    }

    /// <summary>The number of cases in which the law said something.</summary>
    public int Cases { get; }

    /// <summary>The number of cases in which it said nothing.</summary>
    public int Silent { get; }

    /// <summary>Of what kinds the cases were.</summary>
    public CaseCoverage Coverage { get; }

    /// <summary>The smallest case that broke the law, the seed of the case it was shrunk from, and in how many steps; or <see langword="null"/>.</summary>
    public (TCase Case, string Seed, int Shrinks)? Failure { get; }

    private static (TCase Case, string Seed, int Shrinks)? FailureOf(TestResult.Failed failed) => (
        (TCase)failed.Item3.Head,
        string.Create(CultureInfo.InvariantCulture, $"{failed.Item6.Seed},{failed.Item6.Gamma},{failed.Item7}"),
        failed.Item1.NumberOfShrinks);

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
