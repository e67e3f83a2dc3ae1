namespace Warmup.Plans;

/// <summary>A drill that could be planned, in one or more ways: in the level's own form, and eased.</summary>
/// <remarks>An eased way is measured only when it is needed: most drills fit as they are.</remarks>
internal sealed class Candidate
{
    private readonly IReadOnlyList<PlanDrill> _ways;
    private readonly Rendering?[] _measured;
    private readonly Func<PlanDrill, Rendering> _measure;

    public Candidate(int scale, IReadOnlyList<PlanDrill> ways, Func<PlanDrill, Rendering> measure)
    {
        (Scale, _ways, _measure) = (scale, ways, measure);
        _measured = new Rendering?[ways.Count];
    }

    /// <summary>The index of its scale in the request.</summary>
    public int Scale { get; }

    public DrillRole Role => _ways[0].Role;

    /// <summary>The exercise's name, which all ways share.</summary>
    public string ExerciseName => _ways[0].ExerciseName;

    /// <summary>The greatest number of times that a day sings it.</summary>
    public int MostTimes => _ways[0].MostTimes;

    /// <summary>All ways, measured.</summary>
    public IEnumerable<Rendering> Renderings => Enumerable.Range(0, _ways.Count).Select(Rendering);

    /// <summary>The ways with different notes, measured: all that matters for a range.</summary>
    public IEnumerable<Rendering> Reaches => Enumerable.Range(0, _ways.Count).Where(w => w == 0 || !_ways[w].HasNotesOf(_ways[0])).Select(Rendering);

    /// <summary>A way by its number; 0 is the level's own form.</summary>
    public Rendering Rendering(int number) => _measured[number] ??= _measure(_ways[number]);

    /// <summary>The first way that meets all limits, or nothing.</summary>
    public int? First(Limits limits)
    {
        for (var i = 0; i < _ways.Count; i++)
        {
            // The same notes lie as high in every way of singing them.
            var isOut = i > 0 && _ways[i].HasNotesOf(_ways[0]) && !limits.HasRangeFor(Rendering(0));
            if (!isOut && limits.Allows(Rendering(i), Role))
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>The length of the longest way that meets all limits; 0 if none does.</summary>
    public Rational Longest(Limits limits)
    {
        var longest = Rational.Zero;
        foreach (var way in Renderings.Where(w => limits.Allows(w, Role)))
        {
            longest = Rational.Max(longest, way.Seconds);
        }

        return longest;
    }
}

/// <summary>A way of singing a drill.</summary>
/// <param name="Drill">The drill.</param>
/// <param name="Seconds">Its exact length at the level's start tempo, rest counted.</param>
/// <param name="Needs">What it asks of singers.</param>
internal sealed record Rendering(PlanDrill Drill, Rational Seconds, ScoreNeeds Needs);

/// <summary>A drill that meets every rule.</summary>
/// <param name="Scale">The index of its scale in the request.</param>
/// <param name="Candidate">The index of its candidate.</param>
/// <param name="Drill">The drill, in the first way that fits.</param>
/// <param name="Seconds">Its exact length at the level's start tempo, rest counted.</param>
/// <param name="Eased">How far it was eased; 0 is not at all.</param>
internal sealed record Fitting(int Scale, int Candidate, PlanDrill Drill, Rational Seconds, int Eased);
