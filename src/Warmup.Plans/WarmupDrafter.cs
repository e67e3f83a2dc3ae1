namespace Warmup.Plans;

/// <summary>Draws the days' warm-ups, one after the other.</summary>
internal sealed class WarmupDrafter
{
    /// <summary>The most drills of a warm-up (the project's own setting).</summary>
    private const int MostDrills = 8;

    /// <summary>
    /// The drills of a warm-up that fills the time with them (the project's own setting): before each drill the beat alone is given, so that few
    /// drills, sung more often, leave more time to sing.
    /// </summary>
    private const int UsualDrills = 5;

    /// <summary>How many beginnings from one group are tried until a warm-up fills the time well enough (the project's own setting).</summary>
    private const int MostTries = 6;

    /// <summary>How many beginnings are tried at least, so that the one with the most singing is taken (the project's own setting).</summary>
    private const int LeastTries = 8;

    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly DrillPool _pool;
    private readonly SeededSource _source;
    private readonly int[] _last;
    private readonly int[] _weeks;
    private readonly int _scales;
    private readonly int _wait;
    private readonly List<int>[][] _drills;
    private readonly int[] _unfit;
    private readonly HashSet<int> _again;
    private readonly GroupRotation _turns;
    private readonly SungSets[] _sungSets;

    /// <summary>A drafter before the first day.</summary>
    /// <param name="request">The request.</param>
    /// <param name="level">The level.</param>
    /// <param name="pool">The drills.</param>
    /// <param name="source">Where choices come from.</param>
    /// <param name="last">For each drill that fits, the day of singing on which it was last sung; the drafter keeps it up to date.</param>
    /// <param name="weeks">For each day of singing, its week of the level.</param>
    /// <param name="scales">After how many days of singing a scale comes back.</param>
    /// <param name="again">The drills that get their turn before others.</param>
    public WarmupDrafter(PlanRequest request, Level level, DrillPool pool, SeededSource source, int[] last, int[] weeks, int scales, IEnumerable<int> again)
    {
        _again = [.. again];
        (_request, _level, _pool, _source, _last, _weeks, _scales) = (request, level, pool, source, last, weeks, scales);
        _wait = request.NoRepeatDays / scales;
        _drills = [.. Enumerable.Range(0, request.Scales.Count).Select(_ => new List<int>[] { [], [], [] })];
        foreach (var i in Enumerable.Range(0, pool.Fit.Count).OrderBy(i => (pool.Fit[i].Drill.Grade, pool.Fit[i].Drill.SpanSemitones, i)))
        {
            _drills[pool.Fit[i].Scale][(int)pool.Fit[i].Drill.Role].Add(i);
        }

        _unfit = [.. Enumerable.Range(0, request.Scales.Count).Select(s => pool.All.Count(c => c.Scale == s && c.Role == DrillRole.Middle) - _drills[s][(int)DrillRole.Middle].Count)];
        _turns = new GroupRotation(pool, source, request.Scales.Count);
        _sungSets = [.. Enumerable.Range(0, request.Scales.Count).Select(_ => new SungSets())];
    }

    /// <summary>Keeps a set of middle drills, by their names, from being a warm-up of a scale, while there are others.</summary>
    public void Avoid(int scale, IReadOnlySet<string> names)
    {
        var drills = _drills[scale][(int)DrillRole.Middle].FindAll(i => names.Contains(_pool.Fit[i].Drill.ExerciseName));
        if (drills.Count == names.Count)
        {
            _sungSets[scale].Add(drills.Aggregate(0UL, DayDraft.KeyWith));
        }
    }

    public PlanDay Draw(DateOnly date, int day, int scale)
    {
        var week = _weeks[day];
        var descent = Pick(_drills[scale][(int)DrillRole.Descent], day);
        var middle = _drills[scale][(int)DrillRole.Middle];

        // What is open, and what of it may be the day's hardest.
        var (open, floor) = (_level.OpenOf(middle.Count, week), _level.FloorOf(middle.Count, week, _wait + 1));
        var free = middle.Take(open).Where(i => IsFree(i, day)).ToList();
        var opening = PickOpening(scale, day, free.Append(descent).Min(i => _pool.Fit[i].Drill.Grade));
        var band = middle.Take(open).Skip(floor).Where(i => IsFree(i, day)).ToHashSet();
        if (band.Count == 0)
        {
            // Only the log can keep back the whole band; then the hardest drill that it leaves lies lower.
            band.Add(free[^1]);
        }

        // The scale's next turns keep their share of the drills.
        var shares = new Shares(Math.Min(Spare(middle, day), Math.Max(1, open / (_wait + 1))), Math.Max(1, (open - floor) / (_wait + 1)));
        DayDraft? best = null;
        var (tries, frame) = (0, Begin());
        foreach (var first in Beginnings(scale, free, band, (soft, hard) => shares.All > 1 && frame.HoldsBoth(soft, hard)))
        {
            var draft = Begin();
            Fill(draft, scale, first, free, band, shares);
            best = best is null || (IsNew(draft), Again(draft), draft.Climbs, draft.SungSeconds).CompareTo((IsNew(best), Again(best), best.Climbs, best.SungSeconds)) > 0 ? draft : best;
            if (++tries >= LeastTries && best.IsFull && IsNew(best))
            {
                break;
            }
        }

        if (!IsNew(best!) && NewSet(scale, free, band, shares, frame) is { } others)
        {
            best = Begin();
            others.ForEach(best.Add);
            best.Repeat();
        }

        if (!best!.IsFull)
        {
            best.RepeatFurther();
        }

        _sungSets[scale].Add(best.Key);
        (_last[opening], _last[descent]) = (day, day);
        _again.ExceptWith([opening, descent, .. best.Middle]);
        foreach (var drill in best!.Middle)
        {
            _last[drill] = day;
            _turns.Sing(scale, drill, day);
        }

        var waiting = open - best.Middle.Count - best.LeftOut.Count - best.Unordered;
        return best.ToDay(date, new Shortfall { Unfit = _unfit[scale], AboveCeiling = middle.Count - open, Waiting = waiting, OutOfOrder = best.Unordered });

        int Again(DayDraft draft) => draft.Middle.Count(_again.Contains);

        bool IsNew(DayDraft draft) => !_sungSets[scale].Contains(draft.Key);

        DayDraft Begin() => new(_pool, _request.Minutes, opening, descent, _level.StartTempo, _level.TempoOf(week));
    }

    /// <summary>Adds to the first drills what the time and the rules allow, one group after the other, and then repeats drills.</summary>
    private void Fill(DayDraft draft, int scale, List<int> first, List<int> free, HashSet<int> band, Shares shares)
    {
        first.ForEach(Take);
        var open = free.Except(first).ToList();
        foreach (var drill in open.FindAll(_again.Contains))
        {
            open.Remove(drill);
            if (draft.Count < MostDrills && IsOpen(drill))
            {
                Take(drill);
            }
        }

        AddUpTo(UsualDrills);
        if (!draft.IsFull)
        {
            AddUpTo(MostDrills);
        }

        void AddUpTo(int most)
        {
            while (open.Count > 0 && draft.Count < most)
            {
                var next = _turns.Any(scale, open, draft.Middle, _source);
                open.Remove(next);
                if (IsOpen(next))
                {
                    Take(next);
                }
            }

            draft.Repeat();
        }

        bool IsOpen(int drill) => shares.All > 0 && (shares.Band > 0 || !band.Contains(drill)) && draft.Takes(drill);

        void Take(int drill)
        {
            draft.Add(drill);
            shares = shares.Less(band.Contains(drill));
        }
    }

    /// <summary>
    /// A warm-up of middle drills that were not sung together before; none if there is no such set today. A set may be sung if it has a drill that may
    /// be the day's hardest, keeps to the shares, has an order and fits the time; so may each smaller set with that drill, and the search never
    /// goes on from a set in vain.
    /// </summary>
    private List<int>? NewSet(int scale, List<int> free, HashSet<int> band, Shares shares, DayDraft frame)
    {
        var set = new List<int>();
        foreach (var hardest in free.Where(band.Contains).Reverse())
        {
            if (Search(free.IndexOf(hardest), 0, Rational.Zero, shares))
            {
                return set;
            }
        }

        return null;

        // Tries the sets that go on from the one so far with this drill, whose others are easier.
        bool Search(int at, ulong key, Rational seconds, Shares left)
        {
            var drill = free[at];
            if (!frame.Holds(set, seconds, drill))
            {
                return false;
            }

            set.Add(drill);
            key = DayDraft.KeyWith(key, drill);
            if (!_sungSets[scale].Contains(key))
            {
                return true;
            }

            (seconds, left) = (seconds + frame.SecondsOf(drill), left.Less(band.Contains(drill)));
            for (var next = at - 1; next >= 0 && left.All > 0 && set.Count < MostDrills - 2; next--)
            {
                if ((left.Band > 0 || !band.Contains(free[next])) && Search(next, key, seconds, left))
                {
                    return true;
                }
            }

            set.RemoveAt(set.Count - 1);
            return false;
        }
    }

    private bool IsFree(int drill, int day) => day - _last[drill] > _request.NoRepeatDays;

    private int Any(List<int> drills) => drills[_source.Below(drills.Count)];

    /// <summary>An opening that is easier than all that may follow it; where none of those is free, the easiest.</summary>
    private int PickOpening(int scale, int day, int bound)
    {
        var free = _drills[scale][(int)DrillRole.Opening].FindAll(i => IsFree(i, day));
        var easy = free.FindAll(i => _pool.Fit[i].Drill.Grade < bound);
        return easy.Count > 0 ? First(easy) : free[0];
    }

    private int Pick(List<int> drills, int day) => First(drills.FindAll(i => IsFree(i, day)));

    /// <summary>Any of some drills; of those that come again where there are such.</summary>
    private int First(List<int> drills) => drills.FindAll(_again.Contains) is { Count: > 0 } again ? Any(again) : Any(drills);

    /// <summary>How many middle drills a day can take so that each of the scale's next turns within the wait still finds one.</summary>
    private int Spare(List<int> middle, int day)
    {
        var spare = int.MaxValue;
        for (var turn = 1; turn <= _wait && day + (turn * _scales) < _weeks.Length; turn++)
        {
            var then = day + (turn * _scales);
            var open = _level.OpenOf(middle.Count, _weeks[then]);
            var free = 0;
            for (var i = 0; i < open; i++)
            {
                free += IsFree(middle[i], then) ? 1 : 0;
            }

            spare = Math.Min(spare, free - turn);
        }

        return spare;
    }

    /// <summary>
    /// What a warm-up may begin with: first the drills that come again, each with a harder one where it lies below the floor; then a drill above the floor from the group whose turn it is. If the group has none, a drill from it and a harder
    /// one from another group. If no harder drill can follow it, or the time is not filled, the next group is tried, and the first keeps its turn.
    /// </summary>
    private IEnumerable<List<int>> Beginnings(int scale, List<int> free, HashSet<int> band, Func<int, int, bool> holdsBoth)
    {
        foreach (var again in free.FindAll(_again.Contains))
        {
            if (band.Contains(again))
            {
                yield return [again];
            }
            else if (band.Where(h => holdsBoth(again, h)).Order().ToList() is { Count: > 0 } harder)
            {
                yield return [_turns.Next(scale, harder, []) is { Count: > 0 } turn ? Any(turn) : Any(harder), again];
            }
        }

        var others = free;
        while (others.Count > 0)
        {
            var group = _turns.Next(scale, others, []);
            var hard = group.FindAll(band.Contains);
            var soft = group.FindAll(d => !band.Contains(d) && band.Any(h => holdsBoth(d, h)));
            foreach (var i in _source.Shuffled(hard.Count).Take(MostTries))
            {
                yield return [hard[i]];
            }

            foreach (var i in _source.Shuffled(soft.Count).Take(MostTries))
            {
                yield return [Any(_turns.Next(scale, band.Where(h => holdsBoth(soft[i], h)).Order().ToList(), [])), soft[i]];
            }

            others = others.Except(group).ToList();
        }
    }

    /// <summary>How many drills a day may take: in all, and of those above the floor.</summary>
    private readonly record struct Shares(int All, int Band)
    {
        public Shares Less(bool isOfBand) => new(All - 1, Band - (isOfBand ? 1 : 0));
    }
}

/// <summary>The sets of middle drills with which a scale was sung: the last 1,000 (the project's own setting), so that memory does not grow with the days.</summary>
internal sealed class SungSets
{
    private const int Most = 1_000;

    private readonly HashSet<ulong> _keys = [];
    private readonly Queue<ulong> _order = new();

    public bool Contains(ulong key) => _keys.Contains(key);

    public void Add(ulong key)
    {
        if (!_keys.Add(key))
        {
            return;
        }

        _order.Enqueue(key);
        if (_order.Count > Most)
        {
            _keys.Remove(_order.Dequeue());
        }
    }
}
