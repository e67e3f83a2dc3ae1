using System.Globalization;

namespace Warmup.Plans;

/// <summary>Every drill that a request could draw on, with its time, and with the singers whom it does not fit and why.</summary>
internal sealed class DrillPool
{
    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly BreathNeed _need;
    private readonly List<(int Octave, List<int> Singers)> _groups;
    private readonly Dictionary<(int Drill, int Tempo, int Times), (Rational Seconds, bool Fits)> _known = [];
    private readonly CancellationToken _cancellation;

    public DrillPool(PlanRequest request, Level level, CancellationToken cancellation)
    {
        (_request, _level, _cancellation) = (request, level, cancellation);
        _need = BreathNeed.Of(request.Singers);
        (Tonic, Octaves) = Place(request with { Tonic = PlanReading.Settled(request.Tonic) });
        _groups = Enumerable.Range(0, request.Singers.Count)
            .GroupBy(s => Octaves[s])
            .OrderBy(g => g.Key)
            .Select(g => (g.Key, g.ToList()))
            .ToList();
        for (var s = 0; s < request.Scales.Count; s++)
        {
            Add(s);
        }
    }

    public Tonic Tonic { get; }

    public ValueList<int> Octaves { get; }

    /// <summary>All drills that the level and the scales give, whether or not anyone can sing them.</summary>
    public List<Candidate> All { get; } = [];

    /// <summary>The plan's drills: the candidates that meet every rule, each in the first of its ways that does.</summary>
    public List<Fitting> Fit { get; } = [];

    /// <summary>For a scale that refuses drills by itself, the first one and why.</summary>
    public Dictionary<int, string> Refusals { get; } = [];

    /// <summary>The seconds that a role may take: a fifth of the minutes to begin, a fifth to end, the rest for at least one middle drill.</summary>
    public Rational Share(DrillRole role) => new Rational(_request.Minutes * 60L, 5) * (role == DrillRole.Middle ? 3 : 1);

    /// <summary>The fastest tempo, not above a wish, that fits everyone; the level's start tempo always fits.</summary>
    public (int Tempo, Rational Seconds) Fastest(int index, int wish)
    {
        var drill = Fit[index].Drill;
        for (var tempo = wish; tempo > _level.StartTempo; tempo -= (int)_level.Tempo.Step.Numerator)
        {
            var (seconds, fits) = Try(index, tempo, 1);
            if (fits && seconds <= Share(drill.Role))
            {
                return (tempo, seconds);
            }
        }

        return (_level.StartTempo, Fit[index].Seconds);
    }

    /// <summary>The time that a drill takes at a tempo, and whether it fits everyone at that tempo.</summary>
    public (Rational Seconds, bool Fits) Try(int index, int tempo, int times)
    {
        if (!_known.TryGetValue((index, tempo, times), out var result))
        {
            result = (Rational.Zero, true);
            foreach (var (octave, singers) in _groups)
            {
                var score = Fit[index].Drill.ToScore(Tonic.Transposed(12 * octave), _request.Tuning, tempo, times, _need, _cancellation);
                result = (score.Seconds, result.Fits && singers.TrueForAll(s => score.Fits(_request.Singers[s])));
            }

            _known.Add((index, tempo, times), result);
        }

        return result;
    }

    /// <summary>Whether a drill is at most as wide and as hard as another, so that it can stand before it.</summary>
    public bool IsBelow(int drill, int other)
    {
        var (a, b) = (Fit[drill].Drill, Fit[other].Drill);
        return a.SpanSemitones <= b.SpanSemitones && a.Grade <= b.Grade;
    }

    private void Add(int scale)
    {
        foreach (var exercise in FramingExercises.Openings)
        {
            Add(scale, exercise, DrillRole.Opening);
        }

        foreach (var exercise in (Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir])
        {
            if (_level.Groups.Contains(exercise.Group))
            {
                Add(scale, exercise, DrillRole.Middle);
            }
        }

        foreach (var exercise in FramingExercises.Descents)
        {
            Add(scale, exercise, DrillRole.Descent);
        }
    }

    /// <summary>Adds a drill with every way in which it may be sung, and takes the first way that all rules allow.</summary>
    private void Add(int scale, Exercise exercise, DrillRole role)
    {
        _cancellation.ThrowIfCancellationRequested();
        var middle = role == DrillRole.Middle;
        var drill = new PlanDrill(_request.Scales[scale], role, exercise.Name)
        {
            Title = exercise.Title,
            Pattern = exercise.Pattern,
            Meter = exercise.Meter,
            Repetitions = role == DrillRole.Opening ? FramingExercises.OpeningTimes : 1,
        };
        try
        {
            var ways = (middle ? _level.Renderings : [(drill.Delivery, drill.Speeds)]).Select(w => drill with { Delivery = w.Delivery, Speeds = w.Speeds }).ToList();
            var candidate = new Candidate(scale, role, ways.Count, i => Measured(ways[i]));
            var span = candidate.Rendering(0).Drill.SpanSemitones;
            if (middle && All.Exists(c => c.Scale == scale && c.Role == DrillRole.Opening && c.Rendering(0).Drill.SpanSemitones > span))
            {
                Refusals.TryAdd(scale, $"{exercise.Name}: narrower than the openings in {drill.Scale.Name}");
                return;
            }

            All.Add(candidate);
            if (candidate.First(w => w.Misfits.Count == 0 && w.Seconds <= Share(role)) is { } way)
            {
                Fit.Add(new Fitting(scale, All.Count - 1, candidate.Rendering(way).Drill, candidate.Rendering(way).Seconds, way));
            }
        }
        catch (PatternException refused)
        {
            Refusals.TryAdd(scale, $"{exercise.Name}: {refused.Message}");
        }
    }

    private Rendering Measured(PlanDrill drill)
    {
        var misfits = new List<Misfit>();
        Score? score = null;
        foreach (var (octave, singers) in _groups)
        {
            score = drill.ToScore(Tonic.Transposed(12 * octave), _request.Tuning, _level.StartTempo, 1, _need, _cancellation);
            foreach (var singer in singers)
            {
                misfits.AddRange(score.Check(_request.Singers[singer])
                    .Where(f => f.Severity == Severity.Error)
                    .GroupBy(f => KindOf(f.Code))
                    .Select(g => new Misfit(g.Key, singer, g.First())));
            }
        }

        var difficulty = Difficulty.Of(score!);
        return new Rendering(drill with { Grade = difficulty.Score(), SpanSemitones = difficulty.SpanSemitones }, score!.Seconds, misfits);
    }

    private static PlanRuleKind KindOf(string code) => code switch
    {
        VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange => PlanRuleKind.Range,
        VoiceFindingCode.TooFast => PlanRuleKind.Agility,
        _ => PlanRuleKind.Breath,
    };

    /// <summary>The tonic of the files and each singer's octave: those that suit the run of the first scale best.</summary>
    private static (Tonic Tonic, ValueList<int> Octaves) Place(PlanRequest request)
    {
        foreach (var scale in request.Scales)
        {
            var drill = new Drill { Scale = scale, Pattern = Pattern.Run, Tonic = request.Tonic ?? Tonic.FromMidi(60), Tuning = request.Tuning };
            if (!drill.TryToScore(out var score, out _))
            {
                continue;
            }

            var fits = score!.RankTonics(request.Singers);
            var best = request.Tonic is { } wanted ? fits.FirstOrDefault(f => (f.Tonic.Midi - wanted.Midi) % 12 == 0) : fits.IsEmpty ? null : fits[0];
            if (best is null)
            {
                continue;
            }

            var tonic = request.Tonic ?? Tonic.FromMidi(best.Octaves[^1].Midi);
            return (tonic, best.Singers.ConvertAll(s => (s.Tonic.Midi - tonic.Midi) / 12));
        }

        throw new PlanImpossibleException([], [], string.Create(CultureInfo.InvariantCulture, $"none of the {request.Scales.Count} scales has a run that these singers can sing on any tonic"));
    }
}
