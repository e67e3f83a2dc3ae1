namespace Warmup.Plans;

/// <summary>Looks at each day of a plan with the class as it is now, and plans anew the days that no longer fit.</summary>
/// <remarks>
/// A day that fits stays exactly as it is. Otherwise its drills are kept, with the breaths that the class needs now, if that is enough. Otherwise
/// the day is planned like a plan of one day, in the same scale, on the same tonic, at the tempo and the ceiling that its week had, without the
/// drills of the days around it, as long as these are within the wait, and with other middle drills than any other day, while such are open.
/// </remarks>
internal sealed class PlanRenewer
{
    private readonly WarmupPlan _plan;
    private readonly ValueList<Singer> _singers;
    private readonly Level _level;
    private readonly BreathNeed _need;
    private readonly CancellationToken _cancellation;
    private readonly PlanDay[] _days;
    private readonly List<PlanDrill> _drills;
    private readonly Dictionary<PlanDrill, PlanDrill> _known = [];

    private PlanRenewer(WarmupPlan plan, ValueList<Singer> singers, Level level, CancellationToken cancellation)
    {
        (_plan, _singers, _level, _cancellation) = (plan, singers, level, cancellation);
        _need = BreathNeed.OfMost(singers);
        _days = [.. plan.Days];
        _drills = [.. plan.Drills];
        _drills.ForEach(d => _known.TryAdd(d, d));
        Octaves = Place();
    }

    private ValueList<int> Octaves { get; }

    /// <summary>The farthest that a drill of the plan climbs, in semitones.</summary>
    private int Climb => _plan.Drills.Max(d => d.ClimbSemitones);

    public static PlanRenewal Renew(WarmupPlan plan, ValueList<Singer> singers, DateOnly from, Level level, CancellationToken cancellation) =>
        new PlanRenewer(plan, singers, level, cancellation).Renew(from);

    /// <summary>For each singer the octave in which most days of the plan fit them; of several, the one nearest the tonic of the files, the lower first.</summary>
    private ValueList<int> Place()
    {
        var days = _days.Where(d => !d.IsRest).ToList();
        var most = Enumerable.Repeat(-1, _singers.Count).ToArray();
        var octaves = new int[_singers.Count];
        foreach (var octave in (int[])[0, -1, 1, -2, 2, -3, 3])
        {
            var midi = _plan.Tonic.Midi + (12 * octave);
            if (midi < Tonic.LowestMidi || midi + Climb > Tonic.HighestMidi)
            {
                continue;
            }

            // A drill that comes again at the same tempo and as often fits as before.
            var fits = new Dictionary<(PlanDrill Drill, int Tempo, int Times, BreathNeed? Need), bool[]>();
            var fitting = new int[_singers.Count];
            foreach (var day in days)
            {
                _cancellation.ThrowIfCancellationRequested();
                var drills = day.Drills.ConvertAll(Fits);
                for (var s = 0; s < fitting.Length; s++)
                {
                    fitting[s] += drills.All(d => d[s]) ? 1 : 0;
                }

                bool[] Fits(DayDrill planned)
                {
                    var key = (planned.Drill, planned.Tempo, planned.Times, day.BreathNeed);
                    if (fits.TryGetValue(key, out var known))
                    {
                        return known;
                    }

                    var score = _plan.ToScore(planned, day.BreathNeed, _plan.Tonic.Transposed(12 * octave), _cancellation);
                    known = [.. _singers.Select(s => Misfit(score, s) is null)];
                    fits.Add(key, known);
                    return known;
                }
            }

            for (var s = 0; s < fitting.Length; s++)
            {
                (most[s], octaves[s]) = fitting[s] > most[s] ? (fitting[s], octave) : (most[s], octaves[s]);
            }
        }

        return octaves.ToValueList();
    }

    private PlanRenewal Renew(DateOnly from)
    {
        var changed = new List<RenewedDay>();
        for (var d = 0; d < _days.Length; d++)
        {
            _cancellation.ThrowIfCancellationRequested();
            if (_days[d].IsRest || _days[d].Date < from || Misfits(_days[d]) is not { Count: > 0 } why)
            {
                continue;
            }

            var before = _days[d];
            var (now, refusal) = Anew(d);
            _days[d] = now;
            changed.Add(new RenewedDay(before, now, why.ToValueList(), refusal));
        }

        return new PlanRenewal(_plan with { Origin = changed.Exists(c => c.Refusal is null) ? PlanFile.Fingerprint(_plan, _plan.Days) : _plan.Origin, Drills = _drills.ToValueList(), Days = _days.ToValueList() }, changed.ToValueList(), Octaves);
    }

    /// <summary>For each singer whom a day does not fit, the first finding.</summary>
    private List<Finding> Misfits(PlanDay day)
    {
        var misfits = new List<Finding>();
        foreach (var group in Enumerable.Range(0, _singers.Count).GroupBy(s => Octaves[s]))
        {
            var score = _plan.ToScore(day, _plan.Tonic.Transposed(12 * group.Key), _cancellation);
            misfits.AddRange(group.Select(s => Misfit(score, _singers[s])).OfType<Finding>());
        }

        return misfits;
    }

    /// <summary>The first thing that keeps a singer from singing a score, with breaths of their own where the class's are too few.</summary>
    private Finding? Misfit(Score score, Singer singer) => score.AsSungBy(singer, _cancellation).Check(singer).FirstOrDefault(f => f.Severity == Severity.Error);

    private (PlanDay Day, string? Refusal) Anew(int index)
    {
        var day = _days[index];
        var breathing = day with { BreathNeed = _need };
        if (_plan.ToScore(breathing, cancellationToken: _cancellation).Seconds == day.Seconds && Misfits(breathing).Count == 0)
        {
            return (breathing, null);
        }

        try
        {
            var made = Planner.Draw(Request(index), OtherSets(index), _cancellation).DrawDays().First();
            var now = new PlanDay(
                made.Date,
                made.Drills.ConvertAll(p => new DayDrill(Known(p.Drill), p.Tempo, p.Times)),
                made.Seconds,
                made.LeftOut.ConvertAll(Known))
            {
                Shortfall = made.Shortfall,
                BreathNeed = _need,
            };
            return Misfits(now) is [var misfit, ..] ? (day, misfit.Describe()) : (now, null);
        }
        catch (PlanImpossibleException impossible)
        {
            return (day, impossible.Message);
        }
    }

    /// <summary>The plan's own drill that equals one, so that each stands in the file once.</summary>
    private PlanDrill Known(PlanDrill drill)
    {
        if (_known.TryAdd(drill, drill))
        {
            _drills.Add(drill);
        }

        return _known[drill];
    }

    /// <summary>The middle drills of the other days in a day's scale, those of the nearest days last.</summary>
    private List<IReadOnlySet<string>> OtherSets(int index) =>
    [
        .. Enumerable.Range(0, _days.Length)
            .Where(d => d != index && !_days[d].IsRest && _days[d].Scale == _days[index].Scale)
            .OrderByDescending(d => Math.Abs(d - index))
            .Select(d => _days[d].Drills.Where(p => p.Drill.Role == DrillRole.Middle).Select(p => p.Drill.ExerciseName).ToHashSet()),
    ];

    /// <summary>What a plan of this one day must be like.</summary>
    private PlanRequest Request(int index)
    {
        var day = _days[index];
        var (start, wish) = (_days.SelectMany(d => d.Drills).Min(p => p.Tempo), _days.Take(index + 1).SelectMany(d => d.Drills).Max(p => p.Tempo));
        var step = _level.Tempo.Step;
        var weeks = (day.Date.DayNumber - _plan.Days[0].Date.DayNumber) / 7;

        // A plan that went on from a log began at a later step: the tempi that were planned until now show how far it is.
        var steps = step.Sign == 0 ? weeks : Math.Max(weeks, (int)((wish - start) / step).Floor());
        return new PlanRequest
        {
            Scales = [day.Scale!],
            Singers = _singers,
            Start = day.Date,
            Days = 1,
            Minutes = _plan.Minutes,
            Seed = unchecked(_plan.Seed + (ulong)day.Date.DayNumber),
            NoRepeatDays = _plan.NoRepeatDays,
            LeastFillPercent = 0,
            RestDays = [],
            Level = _level with
            {
                StartCeiling = _level.CeilingOf(steps),
                CeilingStep = 0,
                Tempo = step.Sign == 0 || wish == start ? TempoRamp.Constant(start) : new TempoRamp(start, step, wish),
            },
            Tonic = _plan.Tonic,
            Climb = Climb,
            Tuning = _plan.Tuning,
            Log = Around(index, wish).ToValueList(),
        };
    }

    /// <summary>
    /// The days around one, as if all of them had been sung before it: their drills wait as they would in the plan. The last entry takes the tempo to
    /// where the plan is.
    /// </summary>
    private IEnumerable<LogEntry> Around(int index, int wish)
    {
        var date = _days[index].Date;
        if (date == DateOnly.MinValue)
        {
            return [];
        }

        var before = _days.Take(index).Where(d => !d.IsRest).TakeLast(_plan.NoRepeatDays).ToList();
        var after = _days.Skip(index + 1).Where(d => !d.IsRest).Take(_plan.NoRepeatDays);
        var last = before.Count > 0 ? before[^1].Date : date.AddDays(-1);
        return
        [
            .. before.SelectMany(d => Entries(d, d.Date)),
            .. after.SelectMany(d => Entries(d, last)),
            new LogEntry { Date = last, ScaleName = _days[index].Scale!.Name, ExerciseName = "-", Tempo = Math.Max(wish - 1, Tempo.Slowest), IsTicked = true },
        ];
    }

    private static IEnumerable<LogEntry> Entries(PlanDay day, DateOnly date) => day.Drills.Select(p => new LogEntry
    {
        Date = date,
        ScaleName = p.Drill.Scale.Name,
        ExerciseName = p.Drill.ExerciseName,
        Tempo = p.Tempo,
    });
}
