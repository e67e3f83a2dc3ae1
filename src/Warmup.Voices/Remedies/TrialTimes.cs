namespace Warmup.Voices;

/// <summary>The times of a changed drill, as the checks find them; the words are left out.</summary>
internal sealed class TrialTimes
{
    private readonly StepTimes _steps;
    private readonly StepClock _clock;
    private readonly int _lineCount;

    private TrialTimes(StepTimes steps, StepClock clock, int lineCount) => (_steps, _clock, _lineCount) = (steps, clock, lineCount);

    /// <summary>What one look at the times takes: the lines. The notes of a score were counted when it was made.</summary>
    public int Cost => _steps.Section.Lines.Count;

    /// <summary>What is sung on one breath.</summary>
    public TrialSpans Spans => new(_steps.Spans, _clock);

    /// <summary>The times of a drill in steps that it shares with other tempi; nothing where it cannot be put in time so.</summary>
    public static TrialTimes? InSteps(Drill drill, TempoTimes times, CancellationToken cancellation) =>
        times.At(drill.Tempo) is { } steps ? new TrialTimes(steps, StepClock.Of(steps.Section, drill.Tempo), drill.Expand(cancellation).Lines.Count) : null;

    /// <summary>The times of a drill's score.</summary>
    public static TrialTimes Of(Drill drill, Score score, CancellationToken cancellation)
    {
        var (section, lineCount) = (score.Sections[0], drill.Expand(cancellation).Lines.Count);
        return new(new StepTimes(section, lineCount), StepClock.Of(section), lineCount);
    }

    /// <summary>Whether there is a breath plan.</summary>
    public bool CanBreathe(BreathNeed need) => BreathReach.IsPossible(_steps.Section, _clock, need);

    /// <summary>Where notes follow each other too quickly for a level.</summary>
    public IEnumerable<LineFault> TooFast(Experience level) => _steps.TooFast(level, _clock);

    /// <summary>What is sung on one breath with the breaths of a plan; the same where there is none.</summary>
    public TrialSpans SpansWithBreaths(BreathNeed need, CancellationToken cancellation) =>
        BreathPlanner.FindSteps(_steps.Section, _clock, need, cancellation) is var (factor, breaths)
            ? new(new StepSpans(_steps.Section, _lineCount, factor, breaths), _clock.Finer(factor))
            : Spans;
}

/// <summary>What is sung on one breath in a changed drill.</summary>
/// <param name="Steps">The notes that touch each other.</param>
/// <param name="Clock">When their steps come.</param>
internal readonly record struct TrialSpans(StepSpans Steps, StepClock Clock)
{
    /// <summary>The lines in which spans begin that are longer than a capacity, and their seconds.</summary>
    public IEnumerable<(int Line, Rational Seconds)> TooLong(Rational shortestBreath, Rational capacity) => Steps.TooLong(shortestBreath, capacity, Clock);
}
