namespace Warmup.Plans;

/// <summary>The drills of a plan: those that everyone can sing on its tonic, each in the first of its ways that all rules allow.</summary>
internal sealed class DrillPool
{
    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly CandidateList _candidates;
    private readonly Limits _limits;
    private readonly Dictionary<(int Drill, int Tempo, int Times), (Rational Seconds, Rational Sung, bool Fits)> _known = [];

    public DrillPool(PlanRequest request, Level level, CandidateList candidates, Placing place, PlanRules rules)
    {
        (_request, _level, _candidates, Place) = (request, level, candidates, place);
        _limits = new Limits(request, place, [.. rules.All]);
        for (var i = 0; i < All.Count; i++)
        {
            if (All[i].First(_limits) is { } way)
            {
                Fit.Add(new Fitting(All[i].Scale, i, All[i].Rendering(way).Drill, All[i].Rendering(way).Seconds, way));
            }
        }
    }

    /// <summary>The tonic and each singer's octave.</summary>
    public Placing Place { get; }

    /// <summary>All drills that the level and the scales give, whether or not anyone can sing them.</summary>
    public List<Candidate> All => _candidates.All;

    /// <summary>The plan's drills: the candidates that meet every rule, each in the first of its ways that does.</summary>
    public List<Fitting> Fit { get; } = [];

    /// <summary>The seconds that a role may take: a fifth of the minutes to begin, a fifth to end, the rest for at least one middle drill.</summary>
    public Rational Share(DrillRole role) => PlanRules.Share(_request, role);

    /// <summary>The fastest tempo, not above a wish, that fits everyone; the level's start tempo always fits.</summary>
    public (int Tempo, Rational Seconds) Fastest(int index, int wish)
    {
        var drill = Fit[index].Drill;
        for (var tempo = wish; tempo > _level.StartTempo; tempo -= (int)_level.Tempo.Step.Numerator)
        {
            var (seconds, _, fits) = Try(index, tempo, 1);
            if (fits && seconds <= Share(drill.Role))
            {
                return (tempo, seconds);
            }
        }

        return (_level.StartTempo, Fit[index].Seconds);
    }

    /// <summary>The time that a drill takes at a tempo, how much of it the class sings, and whether it fits everyone at that tempo.</summary>
    public (Rational Seconds, Rational Sung, bool Fits) Try(int index, int tempo, int times)
    {
        if (!_known.TryGetValue((index, tempo, times), out var result))
        {
            var (seconds, sung, needs) = _candidates.Measure(Fit[index].Drill, tempo, times);
            _known.Add((index, tempo, times), result = (seconds, sung, _limits.IsSungBy(needs)));
        }

        return result;
    }

    /// <summary>Whether a drill is at most as wide and as hard as another, so that it can stand before it.</summary>
    public bool IsBelow(int drill, int other)
    {
        var (a, b) = (Fit[drill].Drill, Fit[other].Drill);
        return a.SpanSemitones <= b.SpanSemitones && a.Grade <= b.Grade;
    }
}
