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

    private readonly CandidateList _candidates;
    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly int[] _weeks;
    private readonly int[] _releases;
    private readonly List<int>[] _ofScale;

    /// <summary>The rules.</summary>
    /// <param name="candidates">The drills.</param>
    /// <param name="request">The request.</param>
    /// <param name="level">The level.</param>
    /// <param name="weeks">For each day of singing, its week of the level.</param>
    /// <param name="releases">For each candidate, the first day of singing on which the log no longer keeps it back.</param>
    public PlanRules(CandidateList candidates, PlanRequest request, Level level, int[] weeks, int[] releases)
    {
        (_candidates, _request, _level, _weeks, _releases) = (candidates, request, level, weeks, releases);
        Placings = new Placings(request, candidates);
        _ofScale = [.. Enumerable.Range(0, request.Scales.Count).Select(_ => new List<int>())];
        for (var i = 0; i < candidates.All.Count; i++)
        {
            _ofScale[candidates.All[i].Scale].Add(i);
        }

        All =
        [
            new(PlanRuleKind.Ceiling, -1), new(PlanRuleKind.NoRepeat, -1), new(PlanRuleKind.Budget, -1), new(PlanRuleKind.Fill, -1), new(PlanRuleKind.Log, -1),
            .. Enumerable.Range(0, request.Singers.Count).SelectMany(s => (Rule[])[new(PlanRuleKind.Range, s), new(PlanRuleKind.Breath, s), new(PlanRuleKind.Agility, s)]),
        ];
    }

    /// <summary>All rules, including those that refuse nothing.</summary>
    public List<Rule> All { get; }

    /// <summary>The tonics and octaves on which the rules are tried.</summary>
    public Placings Placings { get; }

    /// <summary>The seconds that a role may take: a fifth of the minutes to begin, a fifth to end, the rest for at least one middle drill.</summary>
    public static Rational Share(PlanRequest request, DrillRole role) => new Rational(request.Minutes * 60L, 5) * (role == DrillRole.Middle ? 3 : 1);

    /// <summary>Whether the rules can be met on any tonic.</summary>
    public bool CanMeet(IEnumerable<Rule> rules)
    {
        HashSet<Rule> set = [.. rules];
        return Placings.All.Exists(place => PlaceScales(new Limits(_request, place, set)).Scales > 0);
    }

    /// <summary>
    /// Where all rules can be met: the first placing in which all the scales have a place, or else the first of those with the most scales; nothing
    /// if no placing has a place for any.
    /// </summary>
    public (Placing Place, int Scales, List<int> First)? Best()
    {
        HashSet<Rule> all = [.. All];
        (Placing Place, int Scales, List<int> First)? best = null;
        var most = Math.Min(_request.Scales.Count, _weeks.Length);
        foreach (var place in Placings.All)
        {
            var (scales, first) = PlaceScales(new Limits(_request, place, all));
            if (scales > (best?.Scales ?? 0))
            {
                best = (place, scales, first);
            }

            if (scales == most)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>The greatest number of scales in an order, 0 if there is no plan; and each scale's first possible place, or that number if it has none.</summary>
    public (int Scales, List<int> First) PlaceScales(Limits limits)
    {
        var stocks = Enumerable.Range(0, _request.Scales.Count).Select(s => StockOf(s, limits)).ToList();
        for (var scales = Math.Min(stocks.Count, _weeks.Length); scales > 0; scales--)
        {
            var places = stocks.ConvertAll(s => FirstPlace(s, scales, limits));
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
    public Stock StockOf(int scale, Limits limits)
    {
        var releases = new List<int>[] { [], [], [] };
        var ranked = new List<(int Grade, int Span, int Index)>();
        var shortest = new Rational[Roles.Length];
        var allowed = new List<Candidate>();
        foreach (var i in _ofScale[scale])
        {
            var candidate = _candidates.All[i];
            if (candidate.First(limits) is not { } way)
            {
                continue;
            }

            allowed.Add(candidate);
            AddSeconds(shortest, candidate, candidate.Rendering(way).Seconds);
            if (candidate.Role == DrillRole.Middle)
            {
                ranked.Add((candidate.Rendering(way).Drill.Grade, candidate.Rendering(way).Drill.SpanSemitones, i));
            }
            else
            {
                releases[(int)candidate.Role].Add(limits.HasLog ? _releases[i] : 0);
            }
        }

        ranked.Sort();
        releases[(int)DrillRole.Middle].AddRange(ranked.Select(r => limits.HasLog ? _releases[r.Index] : 0));

        // Eased ways are mostly longer; they are measured only if the others are not enough.
        var longest = new Lazy<(Rational, Rational)>(() =>
        {
            var seconds = new Rational[Roles.Length];
            foreach (var candidate in allowed)
            {
                AddSeconds(seconds, candidate, candidate.Longest(limits));
            }

            return Filled(seconds, limits.HasBudget);
        });
        return new Stock(releases, Filled(shortest, limits.HasBudget), longest);
    }

    private static void AddSeconds(Rational[] seconds, Candidate candidate, Rational drill)
    {
        var (role, times) = (candidate.Role, drill * candidate.MostTimes);
        seconds[(int)role] = role == DrillRole.Middle ? seconds[(int)role] + times : Rational.Max(seconds[(int)role], times);
    }

    private (Rational Ends, Rational Middle) Filled(Rational[] seconds, bool hasBudget)
    {
        var (opening, descent) = (seconds[(int)DrillRole.Opening], seconds[(int)DrillRole.Descent]);
        return (hasBudget ? Rational.Min(opening, Share(_request, DrillRole.Opening)) + Rational.Min(descent, Share(_request, DrillRole.Descent)) : opening + descent, seconds[(int)DrillRole.Middle]);
    }

    /// <summary>The number of turns on which a drill is missing after it was sung.</summary>
    public int Wait(int scales, Limits limits) => limits.HasWait ? _request.NoRepeatDays / scales : 0;

    /// <summary>The role of which a scale at a place has too few drills, with how many it has and needs; nothing if it has enough.</summary>
    public (DrillRole Role, int Has, int Needs, int Day)? Lacks(Stock stock, int place, int scales, Limits limits)
    {
        var wait = Wait(scales, limits);
        for (var (turn, day) = (0, place); day < _weeks.Length; (turn, day) = (turn + 1, day + scales))
        {
            foreach (var role in Roles)
            {
                var releases = stock.Releases[(int)role];
                var open = role == DrillRole.Middle && limits.HasCeiling ? _level.OpenOf(releases.Count, _weeks[day]) : releases.Count;
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

            if (turn >= wait && day > _request.NoRepeatDays && (!limits.HasCeiling || _level.CeilingOf(_weeks[day]) == _level.CeilingOf(int.MaxValue)))
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
    public Rational LongestMean(Stock stock, int place, int scales, Limits limits) => Mean(stock.Longest.Value, place, scales, limits);

    private Rational Mean((Rational Ends, Rational Middle) filled, int place, int scales, Limits limits)
    {
        var turns = (_weeks.Length - place + scales - 1) / scales;
        return filled.Ends + (filled.Middle / (Math.Min(Wait(scales, limits), turns - 1) + 1));
    }

    public Rational LeastSeconds => new(_request.Minutes * 60L * _request.LeastFillPercent, 100);

    private bool Fits(Stock stock, int place, int scales, Limits limits) =>
        Lacks(stock, place, scales, limits) is null
        && (!limits.HasFill
            || Mean(stock.Shortest, place, scales, limits) >= LeastSeconds
            || LongestMean(stock, place, scales, limits) >= LeastSeconds);

    private int FirstPlace(Stock stock, int scales, Limits limits)
    {
        var (low, high) = (0, scales);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Fits(stock, middle, scales, limits) ? (low, middle) : (middle + 1, high);
        }

        return low;
    }
}

/// <summary>What a scale has under some rules.</summary>
/// <param name="Releases">For each role the drills' first days; the middle drills from the easiest to the hardest.</param>
/// <param name="Shortest">In seconds: the longest opening and descent together, and all middle drills; each in its first way that the rules allow, as often as it may be sung.</param>
/// <param name="Longest">The same in the longest of the ways.</param>
internal sealed record Stock(List<int>[] Releases, (Rational Ends, Rational Middle) Shortest, Lazy<(Rational Ends, Rational Middle)> Longest);
