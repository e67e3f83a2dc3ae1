namespace Warmup.Voices;

/// <summary>The times of a changed drill, as the checks find them; the words are left out.</summary>
internal sealed class TrialTimes
{
    private readonly Drill _drill;
    private readonly StepTimes? _steps;
    private readonly CancellationToken _cancellation;
    private Score? _score;

    private TrialTimes(Drill drill, StepTimes? steps, Score? score, CancellationToken cancellation) =>
        (_drill, _steps, _score, _cancellation) = (drill, steps, score, cancellation);

    /// <summary>What one look at the times takes: the lines where they are in steps; the notes of a score were counted when it was made.</summary>
    public int Cost => _steps?.Section.Lines.Count ?? 0;

    private int LineCount => _drill.Expand(_cancellation).Lines.Count;

    /// <summary>The times of a drill with one tempo, in steps; no score is made unless somebody needs it.</summary>
    public static TrialTimes InSteps(Drill drill, StepTimes steps, CancellationToken cancellation) => new(drill, steps, null, cancellation);

    /// <summary>The times of a drill's score.</summary>
    public static TrialTimes Of(Drill drill, Score score, CancellationToken cancellation) =>
        new(drill, score.Sections[0].TempoChanges.IsEmpty ? new StepTimes(score.Sections[0], drill.Expand(cancellation).Lines.Count) : null, score, cancellation);

    /// <summary>The times with the breaths of a plan; the same where there is none.</summary>
    public TrialTimes WithBreaths(BreathNeed need) =>
        new(_drill, null, new PlannedBreaths(need).Apply(_score ??= _drill.ToScore(_cancellation), _cancellation), _cancellation);

    /// <summary>Whether there is a breath plan.</summary>
    public bool CanBreathe(BreathNeed need) => _steps is null
        ? BreathPlan.TryMake(_score!, need, out _, out _, _cancellation)
        : BreathReach.IsPossible(_steps.Section, _drill.Tempo.Start, need);

    /// <summary>Where notes follow each other too quickly for a level.</summary>
    public IEnumerable<LineFault> TooFast(Experience level) => _steps is null
        ? AgilityCheck.WorstOfEachLine(_score!, AgilityLimits.Of(level)).Select(h => new LineFault(h.Note.LineIndex % LineCount, h.Needed.ToDouble() - h.Available.ToDouble()))
        : _steps.TooFast(level, _drill.Tempo.Start);

    /// <summary>The lines in which spans begin that are longer than a capacity, and their seconds.</summary>
    public IEnumerable<(int Line, Rational Seconds)> TooLong(Rational shortestBreath, Rational capacity) => _steps is null
        ? BreathSpan.Of(_score!, shortestBreath).Where(s => s.Seconds > capacity).Select(s => ((s.First.Line - 1) % LineCount, s.Seconds))
        : _steps.TooLong(shortestBreath, capacity, _drill.Tempo.Start);
}
