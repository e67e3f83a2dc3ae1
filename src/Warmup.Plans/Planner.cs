using System.Globalization;

namespace Warmup.Plans;

/// <summary>Draws a plan: first each day's opening, one middle drill and the descent, then what else the time holds.</summary>
/// <remarks>
/// <see cref="PlanRules"/> has counted that there are drills enough, so every choice among those that are open can be drawn freely. Further
/// drills are added once the needed ones of all days stand, and never take one that a day nearby needs. What is kept for a day is a few
/// numbers, whatever the plan's length.
/// </remarks>
internal sealed class Planner
{
    /// <summary>The most drills of a warm-up (the project's own setting).</summary>
    private const int MostDrills = 8;

    private const int Never = int.MinValue / 2;

    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly DrillPool _pool;
    private readonly PlanRules _rules;
    private readonly SeededSource _source;
    private readonly List<DateOnly> _dates;
    private readonly int[] _order;
    private readonly List<int>[][] _drills;
    private readonly int[] _last;
    private readonly int _steps;

    private Planner(PlanRequest request, CancellationToken cancellation)
    {
        _request = request;
        _level = request.Level ?? Level.Of(request.Singers);
        _level.Require();
        _dates = SingingDays(request);
        _pool = new DrillPool(request, _level, cancellation);
        _rules = new PlanRules(_pool, request, _level, _dates.Count);
        _source = new SeededSource(request.Seed);
        var usable = _rules.UsableScales();
        _order = [.. _source.Shuffled(usable.Count).Select(i => usable[i])];
        _drills = [.. Enumerable.Range(0, request.Scales.Count).Select(s => ByRole(s))];
        _last = new int[_pool.All.Count];
        Array.Fill(_last, Never);
        _steps = Remember();
    }

    public static PlanResult Make(PlanRequest request, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(request);
        var planner = new Planner(request, cancellation);
        var plan = planner.Draw(cancellation);
        var left = Enumerable.Range(0, request.Scales.Count).Except(planner._order).Select(planner._rules.Missing).ToValueList();
        return new PlanResult(plan, left, planner._pool.Octaves);
    }

    private static List<DateOnly> SingingDays(PlanRequest request)
    {
        if (request.Days - 1 > DateOnly.MaxValue.DayNumber - request.Start.DayNumber)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{request.Days} days from {request.Start:yyyy-MM-dd} on go beyond the year 9999; take fewer"));
        }

        var days = Enumerable.Range(0, request.Days)
            .Select(request.Start.AddDays)
            .Where(d => !((IEnumerable<DayOfWeek>)request.RestDays).Contains(d.DayOfWeek))
            .ToList();
        return days.Count > 0
            ? days
            : throw new PlanImpossibleException([new PlanRule(PlanRuleKind.Rest, null, $"rest on {string.Join(", ", request.RestDays)}")], "every day of the plan is a day of rest");
    }

    private List<int>[] ByRole(int scale)
    {
        var roles = new List<int>[] { [], [], [] };
        for (var i = 0; i < _pool.All.Count; i++)
        {
            var candidate = _pool.All[i];
            if (candidate.Scale == scale && _rules.Allows(candidate))
            {
                roles[(int)candidate.Drill.Role].Add(i);
            }
        }

        return roles;
    }

    /// <summary>What the log says: when each drill was sung last, in days of singing before the plan; and how far the ramp has got.</summary>
    /// <returns>The ramp's steps that are done with: those whose tempo was reached and ticked.</returns>
    private int Remember()
    {
        var before = ((IEnumerable<LogEntry>)_request.Log).Where(e => e.Date < _request.Start).ToList();
        var days = before.Select(e => e.Date).Distinct().OrderDescending().ToList();
        for (var i = 0; i < _pool.All.Count; i++)
        {
            var drill = _pool.All[i].Drill;
            foreach (var entry in before.Where(e => e.Exercise == drill.Exercise && e.Scale == drill.Scale.Name))
            {
                _last[i] = Math.Max(_last[i], -1 - days.IndexOf(entry.Date));
            }
        }

        var ticked = before.Where(e => e.IsTicked).Select(e => e.Tempo).DefaultIfEmpty().Max();
        var steps = 0;
        while (_level.TempoStep > 0 && ticked >= _level.TempoOf(steps) && _level.TempoOf(steps) < _level.TopTempo)
        {
            steps++;
        }

        return steps;
    }

    private WarmupPlan Draw(CancellationToken cancellation)
    {
        var needed = DrawNeeded(cancellation);
        var days = DrawDays(needed, cancellation);
        return new WarmupPlan
        {
            Generator = SeededSource.Name,
            Seed = _request.Seed,
            Level = _level.Name,
            Minutes = _request.Minutes,
            NoRepeatDays = _request.NoRepeatDays,
            RestDays = ((IEnumerable<DayOfWeek>)_request.RestDays).Distinct().Order().ToValueList(),
            Tonic = _pool.Tonic,
            Tuning = _request.Tuning,
            Need = BreathNeed.Of(_request.Singers),
            Drills = _pool.All.Select(c => c.Drill).ToValueList(),
            Days = days,
        };
    }

    private int StepOf(DateOnly date) => _steps + ((date.DayNumber - _request.Start.DayNumber) / 7);

    private int CeilingOf(DateOnly date) => _rules.Ceiling(_level.CeilingOf(StepOf(date)));

    private (int Opening, int Middle, int Descent)[] DrawNeeded(CancellationToken cancellation)
    {
        var needed = new (int Opening, int Middle, int Descent)[_dates.Count];
        var turns = new Turns(_request.Scales.Count, _source, _pool);
        for (var day = 0; day < needed.Length; day++)
        {
            cancellation.ThrowIfCancellationRequested();
            var scale = _order[day % _order.Length];
            var ceiling = CeilingOf(_dates[day]);
            var opening = Pick(day, _drills[scale][(int)Role.Opening]);
            var open = _drills[scale][(int)Role.Middle].Where(i => IsFree(i, day) && _pool.All[i].Drill.Grade <= ceiling).ToList();
            var middle = Pick(day, turns.Next(scale, open));
            needed[day] = (opening, middle, Pick(day, _drills[scale][(int)Role.Descent]));
            turns.Sing(scale, middle, day);
        }

        return needed;
    }

    private bool IsFree(int drill, int day) => day - _last[drill] > _request.NoRepeatDays;

    private int Pick(int day, IReadOnlyList<int> drills)
    {
        var free = drills.Where(i => IsFree(i, day)).ToList();
        if (free.Count == 0)
        {
            // Counting has shown that without the log this cannot be.
            throw new PlanImpossibleException(
                [
                    new PlanRule(PlanRuleKind.NoRepeat, null, string.Create(CultureInfo.InvariantCulture, $"no drill again within {_request.NoRepeatDays} days of singing")),
                    new PlanRule(PlanRuleKind.Log, null, "what the log says was sung before"),
                ],
                string.Create(CultureInfo.InvariantCulture, $"on {_dates[day]:yyyy-MM-dd} no drill is left"));
        }

        var drill = free[_source.Below(free.Count)];
        _last[drill] = day;
        return drill;
    }

    private ValueList<PlanDay> DrawDays((int Opening, int Middle, int Descent)[] needed, CancellationToken cancellation)
    {
        // Begun anew: a drill is now also kept free for the days after.
        Array.Fill(_last, Never);
        Remember();
        var turns = new Turns(_request.Scales.Count, _source, _pool);
        var days = new PlanDay[_request.Days];
        var day = 0;
        for (var d = 0; d < days.Length; d++)
        {
            cancellation.ThrowIfCancellationRequested();
            var date = _request.Start.AddDays(d);
            days[d] = day < _dates.Count && _dates[day] == date ? DrawDay(needed, day++, turns) : new PlanDay(date, [], Rational.Zero, []);
        }

        return days.ToValueList();
    }

    private PlanDay DrawDay((int Opening, int Middle, int Descent)[] needed, int day, Turns turns)
    {
        var (opening, first, descent) = needed[day];
        var scale = _order[day % _order.Length];
        var date = _dates[day];
        var wish = _level.TempoOf(StepOf(date));
        var (begin, middle, end) = (_pool.Fastest(opening, _level.StartTempo), _pool.Fastest(first, wish), _pool.Fastest(descent, _level.StartTempo));
        var seconds = begin.Seconds + middle.Seconds + end.Seconds;
        var chosen = new List<(int Drill, int Tempo)> { (first, middle.Tempo) };
        turns.Sing(scale, first, day);
        (_last[opening], _last[first], _last[descent]) = (day, day, day);

        var ceiling = CeilingOf(date);
        var soon = needed.Skip(day + 1).Take(_request.NoRepeatDays).Select(n => n.Middle).ToHashSet();
        var open = _drills[scale][(int)Role.Middle].Where(i => IsFree(i, day) && !soon.Contains(i) && _pool.All[i].Drill.Grade <= ceiling).ToList();
        var left = new List<int>();
        while (open.Count > 0 && chosen.Count < MostDrills - 2)
        {
            var turn = turns.Next(scale, open);
            var next = turn[_source.Below(turn.Count)];
            open.Remove(next);
            if (!chosen.TrueForAll(c => IsStep(_pool.All[c.Drill].Drill, _pool.All[next].Drill)))
            {
                continue;
            }

            var more = _pool.Fastest(next, wish);
            if (seconds + more.Seconds > 60 * _request.Minutes)
            {
                left.Add(next);
                continue;
            }

            seconds += more.Seconds;
            chosen.Add((next, more.Tempo));
            turns.Sing(scale, next, day);
            _last[next] = day;
        }

        var times = Repeat(chosen, ref seconds);
        var drills = chosen
            .OrderBy(c => _pool.All[c.Drill].Drill.Span)
            .ThenBy(c => _pool.All[c.Drill].Drill.Grade)
            .ThenBy(c => c.Drill)
            .Select(c => new PlannedDrill(c.Drill, c.Tempo, times[c.Drill]))
            .Prepend(new PlannedDrill(opening, begin.Tempo, 1))
            .Append(new PlannedDrill(descent, end.Tempo, 1))
            .ToValueList();
        return new PlanDay(date, drills, seconds, left.Order().ToValueList());
    }

    /// <summary>Sings the middle drills more often, one after the other in turn, as long as the time holds it.</summary>
    private Dictionary<int, int> Repeat(List<(int Drill, int Tempo)> chosen, ref Rational seconds)
    {
        var times = chosen.ToDictionary(c => c.Drill, _ => 1);
        for (var more = 2; more <= PlannedDrill.MostTimes; more++)
        {
            foreach (var (drill, tempo) in chosen.Where(c => times[c.Drill] == more - 1))
            {
                var (longer, fits) = _pool.Try(drill, tempo, more);
                var sum = seconds - _pool.Try(drill, tempo, more - 1).Seconds + longer;
                if (fits && sum <= 60 * _request.Minutes)
                {
                    (seconds, times[drill]) = (sum, more);
                }
            }
        }

        return times;
    }

    /// <summary>Whether one of two drills is at least as wide and at least as hard as the other, so that they can stand in a rising order.</summary>
    private static bool IsStep(PlanDrill a, PlanDrill b) => (a.Span <= b.Span && a.Grade <= b.Grade) || (b.Span <= a.Span && b.Grade <= a.Grade);

    /// <summary>Whose turn it is among the families of a scale: the one that has waited longest, by the seed's order at first.</summary>
    private sealed class Turns
    {
        private readonly DrillPool _pool;
        private readonly Dictionary<string, int> _order = [];
        private readonly Dictionary<string, int>[] _sung;

        public Turns(int scales, SeededSource source, DrillPool pool)
        {
            _pool = pool;
            var families = pool.All.Where(c => c.Drill.Role == Role.Middle).Select(c => c.Drill.Family).Distinct().ToList();
            foreach (var (family, place) in families.Zip(source.Shuffled(families.Count)))
            {
                _order.Add(family, place);
            }

            _sung = [.. Enumerable.Range(0, scales).Select(_ => new Dictionary<string, int>())];
        }

        /// <summary>The open drills of the family whose turn it is.</summary>
        public List<int> Next(int scale, List<int> open)
        {
            if (open.Count == 0)
            {
                return open;
            }

            var family = open
                .Select(i => _pool.All[i].Drill.Family)
                .Distinct()
                .MinBy(f => (_sung[scale].GetValueOrDefault(f, -1), _order[f]));
            return open.FindAll(i => _pool.All[i].Drill.Family == family);
        }

        public void Sing(int scale, int drill, int day) => _sung[scale][_pool.All[drill].Drill.Family] = day;
    }
}
