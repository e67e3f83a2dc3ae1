namespace Warmup.Plans;

/// <summary>
/// Every drill that a request could draw on, whoever can sing it. What a drill asks of singers moves with its tonic, so it is measured once and
/// serves for all tonics.
/// </summary>
internal sealed class CandidateList
{
    // Any tonic would do; all notes of all drills lie on the keyboard around this one.
    private const int MiddleC = 60;

    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly Tonic _tonic;
    private readonly BreathNeed _need;
    private readonly ValueList<BreathNeed> _breaths;
    private readonly ValueList<Rational> _shortestBreaths;
    private readonly ValueList<Experience> _experiences;
    private readonly CancellationToken _cancellation;

    // The last drill that was made from its pattern: it is measured at one tempo after the other, and in one way after the other.
    private CarriedDrill? _carried;

    public CandidateList(PlanRequest request, Level level, CancellationToken cancellation)
    {
        (_request, _level, _cancellation) = (request, level, cancellation);
        _tonic = PlanReading.Settled(request.Tonic) is { } typed ? typed.Transposed(12 * (int)Math.Round((MiddleC - typed.Midi) / 12.0)) : Tonic.FromMidi(MiddleC);
        _need = BreathNeed.OfMost(request.Singers);
        _breaths = request.Singers.Select(BreathNeed.Of).Distinct().ToValueList();
        _shortestBreaths = request.Singers.Select(s => s.ShortestBreathSeconds).Distinct().ToValueList();
        _experiences = request.Singers.Select(s => s.Experience).Distinct().ToValueList();
        for (var s = 0; s < request.Scales.Count; s++)
        {
            Add(s);
        }
    }

    /// <summary>The drills, scale after scale.</summary>
    public List<Candidate> All { get; } = [];

    /// <summary>For each scale the drills that it refuses by itself, and why.</summary>
    public Dictionary<(int Scale, string Exercise), string> Refusals { get; } = [];

    /// <summary>A drill at a tempo: its time, how much of it the class sings, and what it asks of the class.</summary>
    public (Rational Seconds, Rational Sung, ScoreNeeds Needs) Measure(PlanDrill drill, int tempo, int times)
    {
        var score = ToScore(drill, _tonic, tempo, times);
        return (score.Seconds, SungTime.Of(score).SungSeconds, Needs(score));
    }

    /// <summary>A drill's score at the level's start tempo on a tonic, as the class sings it.</summary>
    public Score ToScore(PlanDrill drill, Tonic tonic) => ToScore(drill, tonic, _level.StartTempo, 1);

    private Score ToScore(PlanDrill drill, Tonic tonic, int tempo, int times)
    {
        if (drill.ClimbSemitones > 0)
        {
            return drill.ToScore(tonic, _request.Tuning, tempo, times, _need, _cancellation);
        }

        var sung = drill.ToDrill(tonic, _request.Tuning, tempo, times);
        if (!ReferenceEquals(_carried?.Drill.Scale, sung.Scale) || !ReferenceEquals(_carried.Drill.Pattern, sung.Pattern))
        {
            _carried = new CarriedDrill(sung, _cancellation);
        }

        return PlanDrill.WithBreaths(_carried.ToScore(sung, _cancellation), _need, _cancellation);
    }

    private void Add(int scale)
    {
        for (var i = 0; i < FramingExercises.Openings.Count; i++)
        {
            Add(scale, FramingExercises.Openings[i], DrillRole.Opening, At(NarrowExercises.Openings, i));
        }

        foreach (var exercise in (Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir, .. NarrowExercises.Middle])
        {
            if (_level.Groups.Contains(exercise.Group))
            {
                Add(scale, exercise, DrillRole.Middle, null);
            }
        }

        foreach (var exercise in _request.Added)
        {
            if (!All.Exists(c => c.Scale == scale && c.ExerciseName == exercise.Name))
            {
                Add(scale, exercise, DrillRole.Middle, null);
            }
        }

        foreach (var exercise in _request.Climb > 0 ? ClimbingExercises.All : [])
        {
            Add(scale, exercise, DrillRole.Middle, null);
        }

        for (var i = 0; i < FramingExercises.Descents.Count; i++)
        {
            Add(scale, FramingExercises.Descents[i], DrillRole.Descent, At(NarrowExercises.Descents, i));
        }
    }

    private static Exercise? At(ValueList<Exercise> exercises, int index) => index < exercises.Count ? exercises[index] : null;

    /// <summary>Adds a drill with every way in which it may be sung.</summary>
    private void Add(int scale, Exercise exercise, DrillRole role, Exercise? narrow)
    {
        _cancellation.ThrowIfCancellationRequested();
        var drill = new PlanDrill(_request.Scales[scale], role, exercise.Name)
        {
            Title = exercise.Title,
            Pattern = exercise.Pattern,
            Meter = exercise.Meter,
            Repetitions = role == DrillRole.Opening ? FramingExercises.OpeningTimes : 1,
        };
        try
        {
            drill = role == DrillRole.Descent ? Held(drill) : drill;
            if (role == DrillRole.Opening && drill.Pattern.Expand(drill.Scale, _cancellation).Lines.Any(l => l.Notes.Any(n => n.Tone.Octave != 0)))
            {
                Refusals.TryAdd((scale, exercise.Name), $"{exercise.Name}: {drill.Scale.Name} has too few notes in the octave");
                return;
            }

            var candidate = new Candidate(scale, role == DrillRole.Middle ? Renderings(drill, exercise) : [drill], Measured);
            var span = candidate.Rendering(0).Drill.SpanSemitones;
            if (role == DrillRole.Middle && All.Exists(c => c.Scale == scale && c.Role == DrillRole.Opening && c.Reaches.Any(w => w.Drill.SpanSemitones > span)))
            {
                Refusals.TryAdd((scale, exercise.Name), $"{exercise.Name}: narrower than the openings in {drill.Scale.Name}");
                return;
            }

            All.Add(narrow is null ? candidate : Narrowed(candidate, drill, narrow));
        }
        catch (PatternException refused)
        {
            Refusals.TryAdd((scale, exercise.Name), $"{exercise.Name}: {refused.Message}");
        }
    }

    // What choirs sing has a speed of its own, and is sung line by line at every level.
    // A climb goes as far as it may, or less where it does not fit.
    private ValueList<PlanDrill> Renderings(PlanDrill drill, Exercise exercise) => exercise.Group == ClimbingExercises.Group
        ? [.. Enumerable.Range(1, _request.Climb).Reverse().Select(n => drill with { ClimbSemitones = n, Title = ClimbingExercises.TitleOf(exercise, n), Delivery = ClimbingExercises.LineByLine, Speeds = [exercise.Speed] })]
        : ChoirFigures.Has(exercise) ? [drill with { Pattern = ChoirFigures.LinesOf(drill.Pattern), Speeds = [exercise.Speed] }]
        : [.. _level.Renderings.Select(w => drill with { Delivery = w.Delivery, Speeds = exercise.Speed == Speed.First ? w.Speeds : [exercise.Speed] }).Distinct()];

    /// <summary>
    /// A descent is the end: its last notes are held to the end of the avartana, where more of the time is sung so. Where the class's breath does not
    /// last, the note is let go, and the hold to the end of the anga is as good.
    /// </summary>
    private PlanDrill Held(PlanDrill descent)
    {
        var longer = descent with { Delivery = descent.Delivery with { Fill = Fill.Avartana } };
        return Share(longer) > Share(descent) ? longer : descent;

        Rational Share(PlanDrill drill) => SungTime.Of(ToScore(drill, _tonic)).Share;
    }

    /// <summary>The drill with a second way of singing it, on fewer notes; without one where the scale has no such notes.</summary>
    private Candidate Narrowed(Candidate candidate, PlanDrill drill, Exercise narrow)
    {
        try
        {
            var fewer = drill with { Title = narrow.Title, Pattern = narrow.Pattern };
            var both = new Candidate(candidate.Scale, [drill, drill.Role == DrillRole.Descent ? Held(fewer) : fewer], Measured);
            _ = both.Rendering(1);
            return both;
        }
        catch (PatternException)
        {
            return candidate;
        }
    }

    private Rendering Measured(PlanDrill drill)
    {
        var score = ToScore(drill, _tonic);

        // A climb is as hard as its figure: nobody leaps from one tonic to the next.
        var difficulty = Difficulty.Of(drill.ClimbSemitones == 0 ? score : ToScore(drill with { ClimbSemitones = 0 }, _tonic));
        return new Rendering(
            drill with { Grade = difficulty.Score(), SpanSemitones = difficulty.SpanSemitones }, score.Seconds, Needs(score));
    }

    /// <summary>What a score asks of the class, in which a short breath may have places of its own.</summary>
    private ScoreNeeds Needs(Score score) => ScoreNeeds.Of(score, _shortestBreaths, _experiences).WithOwnBreaths(score, _breaths, _cancellation);
}
