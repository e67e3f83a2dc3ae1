namespace Warmup.Plans;

/// <summary>A drill that could be planned, in one or more ways: in the level's own form, and eased.</summary>
/// <remarks>An eased way is measured only when it is needed: most drills fit as they are.</remarks>
internal sealed class Candidate
{
    private readonly Rendering?[] _ways;
    private readonly Func<int, Rendering> _measure;

    public Candidate(int scale, DrillRole role, int ways, Func<int, Rendering> measure)
    {
        (Scale, Role, _measure) = (scale, role, measure);
        _ways = new Rendering?[ways];
    }

    /// <summary>The index of its scale in the request.</summary>
    public int Scale { get; }

    public DrillRole Role { get; }

    /// <summary>A way by its number; 0 is the level's own form.</summary>
    public Rendering Rendering(int number) => _ways[number] ??= _measure(number);

    /// <summary>All ways, measured.</summary>
    public IEnumerable<Rendering> Renderings => Enumerable.Range(0, _ways.Length).Select(Rendering);

    /// <summary>The first way that meets a condition.</summary>
    public int? First(Predicate<Rendering> condition)
    {
        for (var i = 0; i < _ways.Length; i++)
        {
            if (condition(Rendering(i)))
            {
                return i;
            }
        }

        return null;
    }

    /// <summary>The length of the longest way that meets a condition; 0 if none does.</summary>
    public Rational Longest(Predicate<Rendering> condition)
    {
        var longest = Rational.Zero;
        foreach (var way in Renderings.Where(w => condition(w)))
        {
            longest = Rational.Max(longest, way.Seconds);
        }

        return longest;
    }
}

/// <summary>A way of singing a drill.</summary>
/// <param name="Drill">The drill.</param>
/// <param name="Seconds">Its exact length at the level's start tempo, rest counted.</param>
/// <param name="Misfits">The singers whom it does not fit.</param>
internal sealed record Rendering(PlanDrill Drill, Rational Seconds, List<Misfit> Misfits);

/// <summary>A drill that meets every rule.</summary>
/// <param name="Scale">The index of its scale in the request.</param>
/// <param name="Candidate">The index of its candidate.</param>
/// <param name="Drill">The drill, in the first way that fits.</param>
/// <param name="Seconds">Its exact length at the level's start tempo, rest counted.</param>
/// <param name="Eased">How far it was eased; 0 is not at all.</param>
internal sealed record Fitting(int Scale, int Candidate, PlanDrill Drill, Rational Seconds, int Eased);

/// <summary>A singer whom a drill does not fit.</summary>
internal readonly record struct Misfit(PlanRuleKind Kind, int Singer, Finding Finding);
