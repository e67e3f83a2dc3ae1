using System.Globalization;

namespace Warmup.Plans;

/// <summary>Draws a plan: first the order of the scales, then what is sung day by day.</summary>
/// <remarks>
/// <see cref="PlanRules"/> has proved by counting that there are enough drills. So every choice among the open drills is free, and no day is drawn
/// twice. For each day a few numbers are kept, whatever the plan's length; the days themselves are drawn each time they are asked for.
/// </remarks>
internal sealed class Planner
{
    private const int Never = int.MinValue / 2;
    private const int DaysAWeek = 7;

    // In a plan for all parents or for a large class, all names would fill a screen.
    private const int MostNames = 12;

    private readonly PlanRequest _request;
    private readonly Level _level;
    private readonly CandidateList _candidates;
    private readonly PlanRules _rules;
    private readonly List<DateOnly> _dates;
    private readonly int[] _weeks;
    private readonly SungBefore _log;
    private readonly (Placing Place, int Scales, List<int> First)? _best;

    private Planner(PlanRequest request, CancellationToken cancellation)
    {
        _request = request;
        _level = request.Level ?? Level.Of(request.Singers);
        _dates = SingingDays(request);
        _candidates = new CandidateList(request, _level, cancellation);
        _log = new SungBefore(request, _level);
        _weeks = [.. _dates.Select(d => _log.Steps + ((d.DayNumber - request.Start.DayNumber) / DaysAWeek))];
        _rules = new PlanRules(_candidates, request, _level, _weeks, [.. _candidates.All.Select(c => _log.ReleaseOf(c.Rendering(0).Drill))]);
        _best = _rules.Best();
    }

    /// <summary>A plan whose days are drawn when they are asked for.</summary>
    /// <param name="request">The request.</param>
    /// <param name="sungSets">The names of middle drills that are sung together on other days in the request's first scale: no day has the same set while others are open.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="PlanImpossibleException">The rules clash.</exception>
    public static PlanDraw Draw(PlanRequest request, IReadOnlyList<IReadOnlySet<string>> sungSets, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(request);
        var planner = new Planner(request, cancellation);
        return planner._best is { } best
            ? planner.Draw(best, sungSets, cancellation)
            : throw new PlanRefusals(planner._rules, planner._candidates, request).Refusal(PlanChanges.Smallest(request, cancellation));
    }

    /// <summary>Whether there is a plan.</summary>
    public static bool IsPossible(PlanRequest request, CancellationToken cancellation) => new Planner(request, cancellation)._best is not null;

    /// <summary>The tonic of the plan, if there is one.</summary>
    public static Tonic? BestTonic(PlanRequest request, CancellationToken cancellation) => new Planner(request, cancellation)._best?.Place.Tonic;

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
            : throw new PlanImpossibleException(
                [new PlanRule(PlanRuleKind.Rest, null, $"rest on {string.Join(", ", request.RestDays)}")],
                [],
                new PlanRefusal(string.Empty, "every day of the plan is a day of rest; plan more days, or rest on fewer", [], null));
    }

    private PlanDraw Draw((Placing Place, int Scales, List<int> First) best, IReadOnlyList<IReadOnlySet<string>> sungSets, CancellationToken cancellation)
    {
        var pool = new DrillPool(_request, _level, _candidates, best.Place, _rules);
        var order = Order(new SeededSource(_request.Seed), best.Scales, best.First);
        var refusals = new PlanRefusals(_rules, _candidates, _request);
        var outline = new WarmupPlan(best.Place.Tonic, _request.Tuning, BreathNeed.OfMost(_request.Singers))
        {
            Seed = _request.Seed,
            LevelName = _level.Name,
            Minutes = _request.Minutes,
            NoRepeatDays = _request.NoRepeatDays,
            RestDays = _request.RestDays.Distinct().Order().ToValueList(),
            Drills = pool.Fit.Select(f => f.Drill).ToValueList(),
        };
        var result = new PlanResult(outline)
        {
            LeftOut = LeftOut(refusals, best.Place, order, best.Scales, best.First).ToValueList(),
            Octaves = best.Place.Octaves,
            Reached = _log.Reached,
            Again = _log.Again.Where(e => pool.Fit.Exists(f => SungBefore.IsOf(e, f.Drill))).ToValueList(),
            Limits = Limits(refusals, pool).ToValueList(),
        };
        return new PlanDraw(result, () => Days(pool, best.Scales, best.First, sungSets, cancellation));
    }

    /// <summary>The days one after the other, the same ones each time.</summary>
    private IEnumerable<PlanDay> Days(DrillPool pool, int scales, List<int> first, IReadOnlyList<IReadOnlySet<string>> sungSets, CancellationToken cancellation)
    {
        var source = new SeededSource(_request.Seed);
        var order = Order(source, scales, first);
        int[] last = [.. pool.Fit.Select(f => _log.LastOf(f.Drill) ?? Never)];
        var again = Enumerable.Range(0, pool.Fit.Count).Where(i => _log.Again.Any(e => SungBefore.IsOf(e, pool.Fit[i].Drill)));
        var warmups = new WarmupDrafter(_request, _level, pool, source, last, _weeks, scales, again);
        foreach (var set in sungSets)
        {
            warmups.Avoid(0, set);
        }

        var day = 0;
        for (var d = 0; d < _request.Days; d++)
        {
            cancellation.ThrowIfCancellationRequested();
            var date = _request.Start.AddDays(d);
            yield return day < _dates.Count && _dates[day] == date
                ? warmups.Draw(date, day, order[day++ % scales])
                : new PlanDay(date);
        }
    }

    /// <summary>Draws the order of the scales: whichever scale takes a place that it may have, those that remain can fill the rest.</summary>
    private static int[] Order(SeededSource source, int scales, List<int> first)
    {
        var order = new int[scales];
        var waiting = Enumerable.Range(0, first.Count).Where(s => first[s] < scales).ToList();
        for (var place = 0; place < scales; place++)
        {
            var can = waiting.FindAll(s => first[s] <= place);
            order[place] = can[source.Below(can.Count)];
            waiting.Remove(order[place]);
        }

        return order;
    }

    private IEnumerable<string> LeftOut(PlanRefusals refusals, Placing place, int[] order, int scales, List<int> first)
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
                yield return refusals.Missing(scale, scales, scales - 1, place);
            }
        }

        if (late.Count > 0)
        {
            var names = string.Join(", ", late.Take(MostNames)) + (late.Count > MostNames ? ", ..." : string.Empty);
            yield return string.Create(CultureInfo.InvariantCulture, $"{late.Count} of {first.Count} scales, since there are only {_dates.Count} days of singing, one for each: {names}");
        }
    }

    private IEnumerable<string> Limits(PlanRefusals refusals, DrillPool pool)
    {
        var middle = pool.All.FindAll(c => c.Role == DrillRole.Middle);
        var kept = refusals.KeptOut(pool.Place, middle).ToList();
        foreach (var (rule, drills) in kept.Take(MostNames))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{refusals.Whose(rule)} keeps out {drills} of {middle.Count} middle drills");
        }

        if (kept.Count > MostNames)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{kept.Count - MostNames} more limits of singers keep out as many or fewer");
        }

        var eased = pool.Fit.Count(f => f.Eased > 0 && f.Drill.Role == DrillRole.Middle);
        if (eased > 0)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{eased} of {pool.Fit.Count(f => f.Drill.Role == DrillRole.Middle)} middle drills are eased for this class (line by line, in the first speed alone, or climbing less far), since they do not fit in the level's own form");
        }

        var narrowed = pool.Fit.Count(f => f.Eased > 0 && f.Drill.Role != DrillRole.Middle);
        if (narrowed > 0)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{narrowed} of {pool.Fit.Count(f => f.Drill.Role != DrillRole.Middle)} openings and descents keep to the lowest three or four notes, since their own form does not fit the class's range");
        }

        foreach (var exercise in _request.Added)
        {
            if (Without(f => f.Drill.ExerciseName == exercise.Name) is { } without)
            {
                yield return $"{exercise.Name}, an added drill ({exercise.Title}), is not sung in {without.Names}: {refusals.MissingDrill(without.First, exercise.Name, pool.Place)}";
            }
        }

        if (_request.Climb > 0 && Without(f => f.Drill.ClimbSemitones > 0) is { } still)
        {
            yield return $"no drill climbs in {still.Names}: {refusals.MissingDrill(still.First, ClimbingExercises.All[0].Name, pool.Place)}";
        }

        (string Names, int First)? Without(Predicate<Fitting> isWanted)
        {
            var without = Enumerable.Range(0, _request.Scales.Count).Where(s => !pool.Fit.Exists(f => f.Scale == s && isWanted(f))).ToList();
            return without.Count == 0
                ? null
                : (string.Join(", ", without.Take(MostNames).Select(s => _request.Scales[s].Name)) + (without.Count > MostNames ? ", ..." : string.Empty), without[0]);
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
            _last.TryAdd((Known(entry.ScaleName), entry.ExerciseName), day);
        }

        // The last entry of each drill decides; of one day, the one that was added last.
        var newest = before.GroupBy(e => (Known(e.ScaleName), e.ExerciseName)).Select(g => g.TakeWhile(e => e.Date == g.First().Date).Last());
        Again = request.HasRetries ? newest.Where(e => !e.IsTicked && !e.OffLines.IsEmpty).OrderBy(e => e.Date).ToValueList() : [];
        Reached = request.Singers.ConvertAll(s => before.Where(e => e.IsTicked).Max(e => e.TempoOf(s.Alias)));
        var ticked = Reached.Min(r => r ?? 0);
        while (ticked >= level.TempoOf(Steps) && level.TempoOf(Steps) < level.Tempo.Ceiling)
        {
            Steps++;
        }
    }

    /// <summary>The entries whose drills get their turn again, since lines stayed off; the earliest first.</summary>
    public ValueList<LogEntry> Again { get; }

    /// <summary>For each singer of the class: the fastest tempo that they sang and the teacher ticked; <see langword="null"/> for none.</summary>
    public ValueList<int?> Reached { get; }

    /// <summary>The steps of the level's tempo that are done: those whose tempo every singer of the class has reached, with the teacher's tick.</summary>
    public int Steps { get; }

    /// <summary>When a drill was last sung: -1 is the last day of singing before the plan, -2 the one before it, and so on.</summary>
    public int? LastOf(PlanDrill drill) => _last.TryGetValue((Known(drill.Scale.Name), drill.ExerciseName), out var day) ? day : null;

    /// <summary>The plan's first day of singing, counted from 0, on which a drill may come back.</summary>
    public int ReleaseOf(PlanDrill drill) => Math.Max(0, (LastOf(drill) ?? -_noRepeatDays - 1) + _noRepeatDays + 1);

    /// <summary>Whether an entry is of a drill.</summary>
    public static bool IsOf(LogEntry entry, PlanDrill drill) => entry.ExerciseName == drill.ExerciseName && Known(entry.ScaleName) == Known(drill.Scale.Name);

    /// <summary>One name for all spellings of a scale: a log goes on however the scale was typed.</summary>
    private static string Known(string name) => Catalogue.Default.Find(name)?.Scale.Name ?? name;
}
