namespace Warmup.Plans;

/// <summary>Proves by counting which scales can be planned under a set of rules, and at which places of the order.</summary>
/// <remarks>
/// With n scales, each comes back after n days of singing. A drill that is kept back for d days is missing on the next d / n (rounded down) turns
/// of its scale. The drills that are open on a turn (below the ceiling, and no longer kept back by the log) stay open on all later turns. So on
/// turn t of a scale, counted from 0, each role needs min(t, d / n) + 1 open drills: this turn and the ones before it within the wait all take
/// different drills, and all of these are open now. If that holds for every turn, one drill is always left, whichever free drills are taken. A
/// scale that can stand at a place of the order can stand at every later place. So an order exists exactly if, for each place, there are enough
/// scales that can stand there or earlier.
/// </remarks>
internal sealed class PlanRules
{
    public static readonly DrillRole[] Roles = [DrillRole.Opening, DrillRole.Middle, DrillRole.Descent];

    private readonly DrillPool _pool;
    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly int[] _weeks;
    private readonly int[] _releases;
    private readonly List<int>[] _candidates;

    /// <summary>The rules.</summary>
    /// <param name="pool">The drills.</param>
    /// <param name="request">The request.</param>
    /// <param name="level">The level.</param>
    /// <param name="weeks">For each day of singing, its week of the level.</param>
    /// <param name="releases">For each candidate, the first day of singing on which the log no longer keeps it back.</param>
    public PlanRules(DrillPool pool, PlanRequest request, Level level, int[] weeks, int[] releases)
    {
        (_pool, _request, _level, _weeks, _releases) = (pool, request, level, weeks, releases);
        _candidates = [.. Enumerable.Range(0, request.Scales.Count).Select(_ => new List<int>())];
        for (var i = 0; i < pool.All.Count; i++)
        {
            _candidates[pool.All[i].Scale].Add(i);
        }

        All =
        [
            new(PlanRuleKind.Ceiling, -1), new(PlanRuleKind.NoRepeat, -1), new(PlanRuleKind.Budget, -1), new(PlanRuleKind.Fill, -1), new(PlanRuleKind.Log, -1),
            .. Enumerable.Range(0, request.Singers.Count).SelectMany(s => (Rule[])[new(PlanRuleKind.Range, s), new(PlanRuleKind.Breath, s), new(PlanRuleKind.Agility, s)]),
        ];
    }

    /// <summary>All rules, including those that refuse nothing.</summary>
    public List<Rule> All { get; }

    /// <summary>Whether a way of singing a drill meets the rules that do not look at other days.</summary>
    public bool Allows(Rendering way, DrillRole role, HashSet<Rule> rules) =>
        way.Misfits.TrueForAll(m => !rules.Contains(new Rule(m.Kind, m.Singer)))
        && (!rules.Contains(new Rule(PlanRuleKind.Budget, -1)) || way.Seconds <= _pool.Share(role));

    public bool CanMeet(IEnumerable<Rule> rules) => PlaceScales([.. rules]).Scales > 0;

    /// <summary>The greatest number of scales in an order, 0 if there is no plan; and each scale's first possible place, or that number if it has none.</summary>
    public (int Scales, List<int> First) PlaceScales(HashSet<Rule> rules)
    {
        var stocks = Enumerable.Range(0, _request.Scales.Count).Select(s => StockOf(s, rules)).ToList();
        for (var scales = Math.Min(stocks.Count, _weeks.Length); scales > 0; scales--)
        {
            var places = stocks.ConvertAll(s => FirstPlace(s, scales, rules));
            var standing = new int[scales];
            foreach (var place in places.Where(p => p < scales))
            {
                standing[place]++;
            }

            var (sum, enough) = (0, true);
            for (var place = 0; place < scales && enough; place++)
            {
                sum += standing[place];
                enough = sum > place;
            }

            if (enough)
            {
                return (scales, places);
            }
        }

        return (0, []);
    }

    /// <summary>What a scale has under the rules.</summary>
    public Stock StockOf(int scale, HashSet<Rule> rules)
    {
        var log = rules.Contains(new Rule(PlanRuleKind.Log, -1)) && rules.Contains(new Rule(PlanRuleKind.NoRepeat, -1));
        var releases = new List<int>[] { [], [], [] };
        var ranked = new List<(int Grade, int Span, int Index)>();
        var shortest = new Rational[Roles.Length];
        var allowed = new List<Candidate>();
        foreach (var i in _candidates[scale])
        {
            var candidate = _pool.All[i];
            if (candidate.First(w => Allows(w, candidate.Role, rules)) is not { } way)
            {
                continue;
            }

            allowed.Add(candidate);
            AddSeconds(shortest, candidate.Role, candidate.Rendering(way).Seconds);
            if (candidate.Role == DrillRole.Middle)
            {
                ranked.Add((candidate.Rendering(way).Drill.Grade, candidate.Rendering(way).Drill.SpanSemitones, i));
            }
            else
            {
                releases[(int)candidate.Role].Add(log ? _releases[i] : 0);
            }
        }

        ranked.Sort();
        releases[(int)DrillRole.Middle].AddRange(ranked.Select(r => log ? _releases[r.Index] : 0));

        // Eased ways are mostly longer; they are measured only if the others are not enough.
        var hasBudget = rules.Contains(new Rule(PlanRuleKind.Budget, -1));
        var longest = new Lazy<(Rational, Rational)>(() =>
        {
            var seconds = new Rational[Roles.Length];
            foreach (var candidate in allowed)
            {
                AddSeconds(seconds, candidate.Role, candidate.Longest(w => Allows(w, candidate.Role, rules)));
            }

            return Filled(seconds, hasBudget);
        });
        return new Stock(releases, Filled(shortest, hasBudget), longest);
    }

    private static void AddSeconds(Rational[] seconds, DrillRole role, Rational drill)
    {
        var times = drill * DayDrill.MostTimes;
        seconds[(int)role] = role == DrillRole.Middle ? seconds[(int)role] + times : Rational.Max(seconds[(int)role], times);
    }

    private (Rational Ends, Rational Middle) Filled(Rational[] seconds, bool hasBudget)
    {
        var (opening, descent) = (seconds[(int)DrillRole.Opening], seconds[(int)DrillRole.Descent]);
        return (hasBudget ? Rational.Min(opening, _pool.Share(DrillRole.Opening)) + Rational.Min(descent, _pool.Share(DrillRole.Descent)) : opening + descent, seconds[(int)DrillRole.Middle]);
    }

    /// <summary>The number of turns on which a drill is missing after it was sung.</summary>
    public int Wait(int scales, HashSet<Rule> rules) => rules.Contains(new Rule(PlanRuleKind.NoRepeat, -1)) ? _request.NoRepeatDays / scales : 0;

    /// <summary>The role of which a scale at a place has too few drills, with how many it has and needs; nothing if it has enough.</summary>
    public (DrillRole Role, int Has, int Needs, int Day)? Lacks(Stock stock, int place, int scales, HashSet<Rule> rules)
    {
        var wait = Wait(scales, rules);
        var ceiling = rules.Contains(new Rule(PlanRuleKind.Ceiling, -1));
        for (var (turn, day) = (0, place); day < _weeks.Length; (turn, day) = (turn + 1, day + scales))
        {
            foreach (var role in Roles)
            {
                var releases = stock.Releases[(int)role];
                var open = role == DrillRole.Middle && ceiling ? _level.OpenOf(releases.Count, _weeks[day]) : releases.Count;
                var (has, needs) = (0, Math.Min(turn, wait) + 1);
                for (var i = 0; i < open; i++)
                {
                    has += releases[i] <= day ? 1 : 0;
                }

                if (has < needs)
                {
                    return (role, has, needs, day);
                }
            }

            if (turn >= wait && day > _request.NoRepeatDays && (!ceiling || _level.CeilingOf(_weeks[day]) == _level.CeilingOf(int.MaxValue)))
            {
                break;
            }
        }

        return null;
    }

    /// <summary>
    /// The longest average length of a scale's warm-ups, at the level's start tempo and with every drill as often as it may be sung: over the turns of
    /// a wait, each middle drill comes once.
    /// </summary>
    public Rational LongestMean(Stock stock, int place, int scales, HashSet<Rule> rules) => Mean(stock.Longest.Value, place, scales, rules);

    private Rational Mean((Rational Ends, Rational Middle) filled, int place, int scales, HashSet<Rule> rules)
    {
        var turns = (_weeks.Length - place + scales - 1) / scales;
        return filled.Ends + (filled.Middle / (Math.Min(Wait(scales, rules), turns - 1) + 1));
    }

    public Rational LeastSeconds => new(_request.Minutes * 60L * _request.LeastFillPercent, 100);

    private bool Fits(Stock stock, int place, int scales, HashSet<Rule> rules) =>
        Lacks(stock, place, scales, rules) is null
        && (!rules.Contains(new Rule(PlanRuleKind.Fill, -1))
            || Mean(stock.Shortest, place, scales, rules) >= LeastSeconds
            || LongestMean(stock, place, scales, rules) >= LeastSeconds);

    private int FirstPlace(Stock stock, int scales, HashSet<Rule> rules)
    {
        var (low, high) = (0, scales);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Fits(stock, middle, scales, rules) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }
}

/// <summary>A rule by its kind and the index of its singer, or -1.</summary>
internal readonly record struct Rule(PlanRuleKind Kind, int Singer);

/// <summary>What a scale has under some rules.</summary>
/// <param name="Releases">For each role the drills' first days; the middle drills from the easiest to the hardest.</param>
/// <param name="Shortest">In seconds: the longest opening and descent together, and all middle drills; each in its first way that the rules allow, as often as it may be sung.</param>
/// <param name="Longest">The same in the longest of the ways.</param>
internal sealed record Stock(List<int>[] Releases, (Rational Ends, Rational Middle) Shortest, Lazy<(Rational Ends, Rational Middle)> Longest);
