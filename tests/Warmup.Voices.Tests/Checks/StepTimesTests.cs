using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: what the checks and the breath plans say of a score that is made anew for each tempo.</summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class StepTimesTests
{
    private static readonly Experience[] Levels = [Experience.Beginner, Experience.Intermediate, Experience.Advanced];

    [Property(MaxTest = 300)]
    public void Steps_that_tempi_share_say_what_a_score_of_its_own_says(TimedCase sung, Singer singer)
    {
        var lines = sung.Drill.Expand();
        var times = new TempoTimes(sung.Drill, lines, CancellationToken.None);
        foreach (var tempo in sung.Tempi)
        {
            var isMade = (sung.Drill with { Tempo = tempo }).TryToScore(out var score, out _);
            var steps = times.At(tempo);
            Assert.Equal(isMade, steps is not null);
            if (!isMade)
            {
                continue;
            }

            var clock = StepClock.Of(steps!.Section, tempo);
            Assert.Equal(score!.Sections[0].Notes, steps.Section.Notes);
            Assert.Equal(Stretches(StepClock.Of(score.Sections[0])), Stretches(clock));
            foreach (var level in Levels)
            {
                var hurried = AgilityCheck.WorstOfEachLine(score, AgilityLimits.Of(level)).Select(h => (h.Note.LineIndex % lines.Lines.Count, h.Needed.ToDouble() - h.Available.ToDouble()));
                Assert.Equal(Worst(hurried), Worst(steps.TooFast(level, clock).Select(f => (f.Line, f.Excess))));
                Assert.True(tempo.Rounds > 1 || steps.IsTooFast(level, tempo.Start) == steps.TooFast(level, clock).Any());
            }

            foreach (var capacity in Capacities(score, singer))
            {
                var spans = BreathSpan.Of(score, singer.ShortestBreathSeconds).Where(s => s.Seconds > capacity).Select(s => ((s.First.Line - 1) % lines.Lines.Count, s.Seconds));
                Assert.Equal(spans, steps.Spans.TooLong(singer.ShortestBreathSeconds, capacity, clock));
                var need = new BreathNeed(capacity, singer.ShortestBreathSeconds);
                var isPossible = BreathPlan.TryMake(score, need, out var plan, out _);
                Assert.Equal(isPossible, BreathReach.IsPossible(steps.Section, clock, need));
                var found = BreathPlanner.FindSteps(steps.Section, clock, need, CancellationToken.None);
                Assert.Equal(isPossible, found is not null);
                if (found is not var (factor, breaths))
                {
                    continue;
                }

                Assert.Equal(plan!.Breaths.Select(b => (b.AfterNote, b.Onset)), breaths.Select(b => (b.Note, new Rational(b.Begin, steps.Section.Resolution * factor))));
                spans = BreathSpan.Of(score.WithBreaths(plan), singer.ShortestBreathSeconds).Where(s => s.Seconds > capacity / 2).Select(s => ((s.First.Line - 1) % lines.Lines.Count, s.Seconds));
                Assert.Equal(spans, new StepSpans(steps.Section, lines.Lines.Count, factor, breaths).TooLong(singer.ShortestBreathSeconds, capacity / 2, clock.Finer(factor)));
            }
        }
    }

    [Fact]
    public void The_cases_are_of_every_kind()
    {
        var (across, planned, refused) = (0, 0, 0);
        var samples = FitArbitraries.Timed().Generator.Sample(200).Zip(FitGenerators.Singers.Sample(200));
        foreach (var (drill, singer) in samples.Select(s => (s.First.Drill, s.Second)).Where(s => s.Drill.Tempo.Rounds > 1))
        {
            var score = drill.ToScore();
            across += BreathSpan.Of(score, singer.ShortestBreathSeconds).Any(s => score.Sections[0].Lines[s.First.Line - 1].Round < score.Sections[0].Lines[s.Last.Line - 1].Round) ? 1 : 0;
            foreach (var capacity in Capacities(score, singer))
            {
                var isPossible = BreathPlan.TryMake(score, new BreathNeed(capacity, singer.ShortestBreathSeconds), out var plan, out _);
                planned += isPossible && !plan!.Breaths.IsEmpty ? 1 : 0;
                refused += isPossible ? 0 : 1;
            }
        }

        Assert.True(across > 10 && planned > 10 && refused > 10, $"{across} with a span over several tempi, {planned} with planned breaths, {refused} without a plan");
    }

    // Some spans fit and some are too long.
    private static IEnumerable<Rational> Capacities(Score score, Singer singer) =>
        ((Rational[])[singer.BreathSeconds, score.Seconds / 4, score.Seconds / 2]).Select(c => Rational.Min(120, Rational.Max(c, new Rational(1, 10))));

    private static IEnumerable<(long Start, Rational Seconds, Rational StepsASecond)> Stretches(StepClock clock) =>
        Enumerable.Range(0, clock.Count).Select(s => (clock.StartOf(s), clock.SecondsAt(clock.StartOf(s), s), clock.PerSecond(s)));

    private static IEnumerable<(int Line, double Excess)> Worst(IEnumerable<(int Line, double Excess)> faults) =>
        faults.GroupBy(f => f.Line).Select(g => (g.Key, Math.Round(g.Max(f => f.Excess), 9))).Order();
}
