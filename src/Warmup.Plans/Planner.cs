using System.Globalization;

namespace Warmup.Plans;

/// <summary>Draws a plan: first the order of the scales, then what is sung day by day.</summary>
/// <remarks>
/// <see cref="PlanRules"/> has proved by counting that there are enough drills. So every choice among the open drills is free, and no day is drawn
/// twice. For each day a few numbers are kept, whatever the plan's length.
/// </remarks>
internal sealed class Planner
{
    private const int Never = int.MinValue / 2;
    private const int DaysAWeek = 7;

    // In a plan for all parents, those that a week cannot hold would fill a screen.
    private const int MostNames = 12;

    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly DrillPool _pool;
    private readonly PlanRules _rules;
    private readonly PlanRefusals _refusals;
    private readonly SeededSource _source;
    private readonly List<DateOnly> _dates;
    private readonly int[] _last;
    private readonly int[] _weeks;

    private Planner(PlanRequest request, CancellationToken cancellation)
    {
        _request = request;
        _level = request.Level ?? Level.Of(request.Singers);
        _dates = SingingDays(request);
        _pool = new DrillPool(request, _level, cancellation);
        _source = new SeededSource(request.Seed);
        var log = new SungBefore(request, _level);
        _weeks = [.. _dates.Select(d => log.Steps + ((d.DayNumber - request.Start.DayNumber) / DaysAWeek))];
        _rules = new PlanRules(_pool, request, _level, _weeks, [.. _pool.All.Select(c => log.ReleaseOf(c.Rendering(0).Drill))]);
        _refusals = new PlanRefusals(_rules, _pool, request);
        _last = [.. _pool.Fit.Select(f => log.LastOf(f.Drill) ?? Never)];
    }

    public static PlanResult Make(PlanRequest request, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(request);
        return new Planner(request, cancellation).Make(cancellation);
    }

    private static List<DateOnly> SingingDays(PlanRequest request)
    {
        if (request.Days - 1 > DateOnly.MaxValue.DayNumber - request.Start.DayNumber)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{request.Days} days from {request.Start:yyyy-MM-dd} go beyond the year 9999; plan fewer"));
        }

        var days = Enumerable.Range(0, request.Days)
            .Select(request.Start.AddDays)
            .Where(d => !request.RestDays.Contains(d.DayOfWeek))
            .ToList();
        return days.Count > 0
            ? days
            : throw new PlanImpossibleException([new PlanRule(PlanRuleKind.Rest, null, $"rest on {string.Join(", ", request.RestDays)}")], [], "every day of the plan is a day of rest");
    }

    private PlanResult Make(CancellationToken cancellation)
    {
        var (scales, first) = _rules.PlaceScales([.. _rules.All]);
        if (scales == 0)
        {
            throw _refusals.Refusal();
        }

        var order = Order(scales, first);
        var days = new PlanDay[_request.Days];
        var warmups = new WarmupDrafter(_request, _level, _pool, _source, _last, _weeks, scales);
        var day = 0;
        for (var d = 0; d < days.Length; d++)
        {
            cancellation.ThrowIfCancellationRequested();
            var date = _request.Start.AddDays(d);
            days[d] = day < _dates.Count && _dates[day] == date
                ? warmups.Draw(date, day, order[day++ % scales])
                : new PlanDay(date);
        }

        var plan = new WarmupPlan(_pool.Tonic, _request.Tuning, BreathNeed.Of(_request.Singers))
        {
            Seed = _request.Seed,
            LevelName = _level.Name,
            Minutes = _request.Minutes,
            NoRepeatDays = _request.NoRepeatDays,
            RestDays = _request.RestDays.Distinct().Order().ToValueList(),
            Drills = _pool.Fit.Select(f => f.Drill).ToValueList(),
            Days = days.ToValueList(),
        };
        return new PlanResult(plan) { LeftOut = LeftOut(order, scales, first).ToValueList(), Octaves = _pool.Octaves, Limits = Limits().ToValueList() };
    }

    /// <summary>Draws the order of the scales: whichever scale takes a place that it may have, those that remain can fill the rest.</summary>
    private int[] Order(int scales, List<int> first)
    {
        var order = new int[scales];
        var waiting = Enumerable.Range(0, first.Count).Where(s => first[s] < scales).ToList();
        for (var place = 0; place < scales; place++)
        {
            var can = waiting.FindAll(s => first[s] <= place);
            order[place] = can[_source.Below(can.Count)];
            waiting.Remove(order[place]);
        }

        return order;
    }

    private IEnumerable<string> LeftOut(int[] order, int scales, List<int> first)
    {
        var late = new List<string>();
        foreach (var scale in Enumerable.Range(0, first.Count).Except(order))
        {
            if (first[scale] < scales)
            {
                late.Add(_request.Scales[scale].Name);
            }
            else
            {
                yield return _refusals.Missing(scale, scales, scales - 1);
            }
        }

        if (late.Count > 0)
        {
            var names = string.Join(", ", late.Take(MostNames)) + (late.Count > MostNames ? ", ..." : string.Empty);
            yield return string.Create(CultureInfo.InvariantCulture, $"{late.Count} of {first.Count} scales, since there are only {_dates.Count} days of singing, one for each: {names}");
        }
    }

    private IEnumerable<string> Limits()
    {
        foreach (var (rule, drills, of) in _refusals.KeptOut())
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{_refusals.Whose(rule)} keeps out {drills} of {of} middle drills");
        }

        var eased = _pool.Fit.Count(f => f.Eased > 0);
        if (eased > 0)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{eased} of {_pool.Fit.Count(f => f.Drill.Role == DrillRole.Middle)} middle drills are eased for this class (line by line, or in the first speed alone), since they do not fit in the level's own form");
        }
    }
}

/// <summary>What the log says was sung before the plan.</summary>
internal sealed class SungBefore
{
    private readonly Dictionary<(string Scale, string Exercise), int> _last = [];
    private readonly int _noRepeatDays;

    public SungBefore(PlanRequest request, Level level)
    {
        _noRepeatDays = request.NoRepeatDays;
        var before = request.Log.Where(e => e.Date < request.Start).OrderByDescending(e => e.Date).ToList();
        var (day, date) = (0, DateOnly.MaxValue);
        foreach (var entry in before)
        {
            (day, date) = entry.Date == date ? (day, date) : (day - 1, entry.Date);
            _last.TryAdd((entry.ScaleName, entry.ExerciseName), day);
        }

        var ticked = before.Where(e => e.IsTicked).Select(e => e.Tempo).DefaultIfEmpty().Max();
        while (ticked >= level.TempoOf(Steps) && level.TempoOf(Steps) < level.Tempo.Ceiling)
        {
            Steps++;
        }
    }

    /// <summary>The steps of the level's tempo that are done: those whose tempo was reached and ticked.</summary>
    public int Steps { get; }

    /// <summary>When a drill was last sung: -1 is the last day of singing before the plan, -2 the one before it, and so on.</summary>
    public int? LastOf(PlanDrill drill) => _last.TryGetValue((drill.Scale.Name, drill.ExerciseName), out var day) ? day : null;

    /// <summary>The plan's first day of singing, counted from 0, on which a drill may come back.</summary>
    public int ReleaseOf(PlanDrill drill) => Math.Max(0, (LastOf(drill) ?? -_noRepeatDays - 1) + _noRepeatDays + 1);
}
