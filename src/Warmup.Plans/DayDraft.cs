namespace Warmup.Plans;

/// <summary>A warm-up that is being put together. It keeps to the time.</summary>
internal sealed class DayDraft
{
    /// <summary>How often a drill is sung on a day that is long enough (the project's own setting).</summary>
    private const int UsualTimes = 6;

    private readonly DrillPool _pool;
    private readonly Rational _most;
    private readonly int _opening;
    private readonly int _descent;
    private readonly int _wish;
    private readonly Dictionary<int, int> _tempi = [];
    private readonly Dictionary<int, int> _times = [];

    /// <summary>A warm-up of an opening and a descent.</summary>
    /// <param name="pool">The drills.</param>
    /// <param name="minutes">The time in minutes.</param>
    /// <param name="opening">The opening.</param>
    /// <param name="descent">The descent.</param>
    /// <param name="start">The tempo of both.</param>
    /// <param name="wish">The tempo of the middle drills, if it fits everyone.</param>
    public DayDraft(DrillPool pool, int minutes, int opening, int descent, int start, int wish)
    {
        (_pool, _most, _opening, _descent, _wish) = (pool, 60 * minutes, opening, descent, wish);
        Put(opening, start);
        Put(descent, start);
    }

    /// <summary>The number of drills.</summary>
    public int Count => _times.Count;

    /// <summary>The exact length.</summary>
    public Rational Seconds { get; private set; }

    /// <summary>The seconds in which the class sings.</summary>
    public Rational SungSeconds
    {
        get
        {
            var sung = Rational.Zero;
            foreach (var (drill, times) in _times)
            {
                sung += _pool.Try(drill, _tempi[drill], times).Sung;
            }

            return sung;
        }
    }

    /// <summary>Which drills are between opening and descent, whatever their order: two warm-ups of a scale with the same drills have the same key.</summary>
    public ulong Key { get; private set; }

    /// <summary>Whether one of them climbs.</summary>
    public bool Climbs => Middle.Exists(m => _pool.Fit[m].Drill.ClimbSemitones > 0);

    /// <summary>Whether enough of the time is filled.</summary>
    public bool IsFull => 100 * Seconds >= PlanDay.FullPercent * _most;

    /// <summary>The drills between opening and descent, as they were added.</summary>
    public List<int> Middle { get; } = [];

    /// <summary>The drills that the time had no room for.</summary>
    public List<int> LeftOut { get; } = [];

    /// <summary>The number of drills that had no place in the rising order.</summary>
    public int Unordered { get; private set; }

    /// <summary>The key of a set of drills with one more.</summary>
    public static ulong KeyWith(ulong key, int drill) => key ^ new SeededSource((ulong)drill).Next();

    /// <summary>Whether the time has room for a drill, and the drill has a place among the others, each at least as wide and as hard as the one before.</summary>
    public bool Takes(int drill)
    {
        if (!Middle.TrueForAll(m => _pool.IsBelow(m, drill) || _pool.IsBelow(drill, m)))
        {
            Unordered++;
            return false;
        }

        if (Seconds + _pool.Fastest(drill, _wish).Seconds > _most)
        {
            LeftOut.Add(drill);
            return false;
        }

        return true;
    }

    /// <summary>Whether the time has room for a drill beside others that take some seconds, sung once each, and the drill has a place among them.</summary>
    public bool Holds(List<int> others, Rational seconds, int drill) =>
        Seconds + seconds + _pool.Fastest(drill, _wish).Seconds <= _most && others.TrueForAll(m => _pool.IsBelow(m, drill) || _pool.IsBelow(drill, m));

    /// <summary>The seconds that a drill takes, sung once.</summary>
    public Rational SecondsOf(int drill) => _pool.Fastest(drill, _wish).Seconds;

    /// <summary>Whether the time has room for a drill and a harder one after it.</summary>
    public bool HoldsBoth(int drill, int harder) =>
        _pool.IsBelow(drill, harder) && Seconds + _pool.Fastest(drill, _wish).Seconds + _pool.Fastest(harder, _wish).Seconds <= _most;

    /// <summary>Adds a drill.</summary>
    public void Add(int drill)
    {
        Middle.Add(drill);
        Key = KeyWith(Key, drill);
        Put(drill, _wish);
    }

    /// <summary>Repeats the middle drills in turn while there is time, then the descent and the opening within their fifths.</summary>
    public void Repeat() => Repeat(UsualTimes, 1);

    /// <summary>For a day that would be short: repeats all of them up to the most times, the descent and the opening up to twice their fifths.</summary>
    public void RepeatFurther() => Repeat(DayDrill.MostTimes, 2);

    public PlanDay ToDay(DateOnly date, Shortfall shortfall)
    {
        var drills = Middle
            .OrderBy(i => (_pool.Fit[i].Drill.SpanSemitones, _pool.Fit[i].Drill.Grade, i))
            .Prepend(_opening)
            .Append(_descent)
            .Select(i => new DayDrill(_pool.Fit[i].Drill, _tempi[i], _times[i]))
            .ToValueList();
        return new PlanDay(date, drills, Seconds, LeftOut.Order().Select(i => _pool.Fit[i].Drill).ToValueList()) { Shortfall = IsFull ? null : shortfall };
    }

    private void Put(int drill, int wish)
    {
        var (tempo, seconds) = _pool.Fastest(drill, wish);
        (_tempi[drill], _times[drill]) = (tempo, 1);
        Seconds += seconds;
    }

    private void Repeat(int mostTimes, int shares)
    {
        Repeat(Middle, mostTimes, _most);
        Repeat([_descent], mostTimes, shares * _pool.Share(DrillRole.Descent));
        Repeat([_opening], mostTimes, shares * _pool.Share(DrillRole.Opening));
    }

    private void Repeat(List<int> drills, int mostTimes, Rational most)
    {
        for (var times = 2; times <= mostTimes; times++)
        {
            foreach (var drill in drills.Where(d => _times[d] == times - 1 && times <= _pool.Fit[d].Drill.MostTimes))
            {
                var (longer, _, fits) = _pool.Try(drill, _tempi[drill], times);
                var sum = Seconds - _pool.Try(drill, _tempi[drill], times - 1).Seconds + longer;
                if (fits && longer <= most && sum <= _most)
                {
                    (Seconds, _times[drill]) = (sum, times);
                }
            }
        }
    }
}
