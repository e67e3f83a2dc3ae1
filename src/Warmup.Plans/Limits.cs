namespace Warmup.Plans;

/// <summary>A rule by its kind and the index of its singer, or -1.</summary>
internal readonly record struct Rule(PlanRuleKind Kind, int Singer);

/// <summary>
/// Some of a request's rules, with each singer in an octave, as the few numbers that a drill is held against: of all the singers whose limit
/// counts, only the tightest matters. So a class of hundreds is checked as quickly as one singer.
/// </summary>
internal sealed class Limits
{
    private readonly Dictionary<DrillRole, Rational>? _shares;
    private readonly List<(Rational Shortest, Rational Capacity)> _breaths = [];
    private readonly HashSet<Experience> _levels = [];
    private int _low = int.MinValue;
    private int _high = int.MaxValue;

    /// <summary>The limits under a set of rules.</summary>
    /// <param name="request">The request.</param>
    /// <param name="place">The tonic and each singer's octave.</param>
    /// <param name="rules">The rules that count.</param>
    public Limits(PlanRequest request, Placing place, HashSet<Rule> rules)
    {
        HasCeiling = rules.Contains(new Rule(PlanRuleKind.Ceiling, -1));
        HasWait = rules.Contains(new Rule(PlanRuleKind.NoRepeat, -1));
        HasLog = HasWait && rules.Contains(new Rule(PlanRuleKind.Log, -1));
        HasFill = rules.Contains(new Rule(PlanRuleKind.Fill, -1));
        _shares = rules.Contains(new Rule(PlanRuleKind.Budget, -1)) ? PlanRules.Roles.ToDictionary(r => r, r => PlanRules.Share(request, r)) : null;
        var breaths = new Dictionary<Rational, Rational>();
        for (var s = 0; s < request.Singers.Count; s++)
        {
            var singer = request.Singers[s];
            if (rules.Contains(new Rule(PlanRuleKind.Range, s)))
            {
                _low = Math.Max(_low, singer.Low.Midi - place.TonicOf(s));
                _high = Math.Min(_high, singer.High.Midi - place.TonicOf(s));
            }

            if (rules.Contains(new Rule(PlanRuleKind.Breath, s)))
            {
                breaths[singer.ShortestBreathSeconds] = breaths.TryGetValue(singer.ShortestBreathSeconds, out var least) ? Rational.Min(least, singer.BreathSeconds) : singer.BreathSeconds;
            }

            if (rules.Contains(new Rule(PlanRuleKind.Agility, s)))
            {
                _levels.Add(singer.Experience);
            }
        }

        _breaths.AddRange(breaths.Select(b => (b.Key, b.Value)));
    }

    /// <summary>Whether the ceiling of difficulty counts.</summary>
    public bool HasCeiling { get; }

    /// <summary>Whether a drill is kept from coming back.</summary>
    public bool HasWait { get; }

    /// <summary>Whether what was sung before keeps drills back.</summary>
    public bool HasLog { get; }

    /// <summary>Whether enough of the time must be filled.</summary>
    public bool HasFill { get; }

    /// <summary>Whether the time of each role counts.</summary>
    public bool HasBudget => _shares is not null;

    /// <summary>Whether a way of singing a drill meets the rules that do not look at other days.</summary>
    public bool Allows(Rendering way, DrillRole role) =>
        HasRangeFor(way) && IsSungBy(way.Needs) && (_shares is null || way.Seconds <= _shares[role]);

    /// <summary>Whether it lies within everyone's range.</summary>
    public bool HasRangeFor(Rendering way) => way.Needs.Low >= _low && way.Needs.High <= _high;

    /// <summary>Whether breath and agility are enough.</summary>
    public bool IsSungBy(ScoreNeeds needs)
    {
        foreach (var level in needs.TooFastFor)
        {
            if (_levels.Contains(level))
            {
                return false;
            }
        }

        foreach (var (shortest, capacity) in _breaths)
        {
            for (var i = 0; i < needs.ShortestBreaths.Count; i++)
            {
                if (needs.ShortestBreaths[i] == shortest && needs.LongestSpans[i] > capacity)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
