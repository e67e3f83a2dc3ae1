namespace Warmup.Voices;

/// <summary>The times of a changed drill, as the checks find them; the words are left out, and no score is made unless somebody needs it.</summary>
internal sealed class TrialTimes
{
    private readonly StepTimes _steps;
    private readonly StepClock _clock;
    private readonly Func<Score> _score;
    private readonly int _lineCount;
    private readonly CancellationToken _cancellation;

    private TrialTimes(StepTimes steps, StepClock clock, Func<Score> score, int lineCount, CancellationToken cancellation) =>
        (_steps, _clock, _score, _lineCount, _cancellation) = (steps, clock, score, lineCount, cancellation);

    /// <summary>What one look at the times takes: the lines. The notes of a score were counted when it was made.</summary>
    public int Cost => _steps.Section.Lines.Count;

    /// <summary>The times of a drill in steps that it shares with other tempi; nothing where it cannot be put in time so.</summary>
    public static TrialTimes? InSteps(Drill drill, TempoTimes times, CancellationToken cancellation)
    {
        if (times.At(drill.Tempo) is not { } steps)
        {
            return null;
        }

        Score Score() => times.ScoreAt(drill.Tempo);
        var clock = drill.Tempo.Rounds > 1 ? StepClock.Of(Score().Sections[0]) : new StepClock(drill.Tempo.Start, steps.Section.Resolution);
        return new TrialTimes(steps, clock, Score, drill.Expand(cancellation).Lines.Count, cancellation);
    }

    /// <summary>The times of a drill's score.</summary>
    public static TrialTimes Of(Drill drill, Score score, CancellationToken cancellation) => Of(score, drill.Expand(cancellation).Lines.Count, cancellation);

    /// <summary>The times with the breaths of a plan; the same where there is none.</summary>
    public TrialTimes WithBreaths(BreathNeed need) => Of(new PlannedBreaths(need).Apply(_score(), _cancellation), _lineCount, _cancellation);

    /// <summary>Whether there is a breath plan.</summary>
    public bool CanBreathe(BreathNeed need) => BreathReach.IsPossible(_steps.Section, _clock, need);

    /// <summary>Where notes follow each other too quickly for a level.</summary>
    public IEnumerable<LineFault> TooFast(Experience level) => _steps.TooFast(level, _clock);

    /// <summary>The lines in which spans begin that are longer than a capacity, and their seconds.</summary>
    public IEnumerable<(int Line, Rational Seconds)> TooLong(Rational shortestBreath, Rational capacity) => _steps.TooLong(shortestBreath, capacity, _clock);

    private static TrialTimes Of(Score score, int lineCount, CancellationToken cancellation)
    {
        var section = score.Sections[0];
        return new(new StepTimes(section, lineCount), StepClock.Of(section), () => score, lineCount, cancellation);
    }
}
