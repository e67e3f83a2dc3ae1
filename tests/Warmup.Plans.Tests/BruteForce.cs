namespace Warmup.Plans.Tests;

/// <summary>
/// Whether a small request can be planned, by trying every tonic, every octave for each singer, every order of every choice of the scales and every
/// choice of drills. It shares no code with the planner: what may be sung is found with the core's drills and checks, as docs/plans.md says it.
/// </summary>
internal sealed class BruteForce
{
    private static readonly DrillRole[] Roles = [DrillRole.Opening, DrillRole.Middle, DrillRole.Descent];

    private readonly PlanRequest _request;
    private readonly List<Choice> _choices = [];
    private readonly List<int[]> _tonics;

    public BruteForce(PlanRequest request)
    {
        _request = request;
        _tonics = [.. Enumerable.Range(0, 12).Where(t => request.Tonic is null || request.Tonic.Midi % 12 == t).SelectMany(Tuples)];
        foreach (var scale in request.Scales)
        {
            foreach (var role in Roles)
            {
                foreach (var (exercise, narrow) in ExercisesOf(role))
                {
                    _choices.Add(new Choice(scale, role, exercise.Name, [.. WaysOf(scale, role, exercise, narrow)]));
                }
            }
        }
    }

    public static (PlanRuleKind Kind, string? Singer)[] All(PlanRequest request) =>
    [
        (PlanRuleKind.Ceiling, null), (PlanRuleKind.NoRepeat, null), (PlanRuleKind.Budget, null), (PlanRuleKind.Log, null),
        .. request.Singers.SelectMany(s => ((PlanRuleKind, string?)[])[(PlanRuleKind.Range, s.Alias), (PlanRuleKind.Breath, s.Alias), (PlanRuleKind.Agility, s.Alias)]),
    ];

    public bool CanMeet(IEnumerable<(PlanRuleKind Kind, string? Singer)> rules)
    {
        var set = rules.ToHashSet();
        var scales = _request.Scales.ToList();
        var orders = Orders(scales, [], Math.Min(scales.Count, _request.Days)).ToList();
        return _tonics.Exists(tonics => orders.Exists(order => CanMeet(order, tonics, set)));
    }

    /// <summary>For each singer a tonic of a pitch class: every one near the voice. On others nothing lies within it, whatever is sung.</summary>
    private IEnumerable<int[]> Tuples(int pitchClass)
    {
        IEnumerable<int[]> tuples = [[]];
        foreach (var singer in _request.Singers)
        {
            tuples = tuples.SelectMany(t => Near(singer).Where(midi => midi % 12 == pitchClass).Select(midi => (int[])[.. t, midi])).ToList();
        }

        return tuples;
    }

    private static IEnumerable<int> Near(Singer singer) => Enumerable.Range(singer.Low.Midi - 12, singer.High.Midi - singer.Low.Midi + 13);

    private static IEnumerable<List<Scale>> Orders(List<Scale> scales, List<Scale> begun, int most)
    {
        if (begun.Count > 0)
        {
            yield return begun;
        }

        foreach (var scale in begun.Count == most ? [] : scales.Except(begun))
        {
            foreach (var order in Orders(scales, [.. begun, scale], most))
            {
                yield return order;
            }
        }
    }

    private bool CanMeet(List<Scale> order, int[] tonics, HashSet<(PlanRuleKind Kind, string? Singer)> rules) =>
        order.Select((scale, place) => (scale, place)).All(x => Roles.All(role =>
        {
            var open = _choices
                .Where(c => c.Scale == x.scale && c.Role == role)
                .Select(c => (c.Exercise, Rendering: c.Renderings.Find(w => IsAllowed(w, tonics, rules))))
                .Where(c => c.Rendering is not null)
                .OrderBy(c => (c.Rendering!.Grade, c.Rendering.Span))
                .Select(c => (c.Exercise, Last: LastOf(x.scale, c.Exercise)))
                .ToList();
            return CanSing(open, x.place, order.Count, role, rules.Select(r => r.Kind).ToHashSet(), []);
        }));

    private bool IsAllowed(Rendering way, int[] tonics, HashSet<(PlanRuleKind Kind, string? Singer)> rules) =>
        !way.Against.Overlaps(rules)
        && Enumerable.Range(0, tonics.Length).All(s => !rules.Contains((PlanRuleKind.Range, _request.Singers[s].Alias)) || way.InRange.Contains((s, tonics[s])));

    private bool CanSing(List<(string Exercise, int? Last)> drills, int day, int scales, DrillRole role, HashSet<PlanRuleKind> rules, Dictionary<string, int> sung)
    {
        if (day >= _request.Days)
        {
            return true;
        }

        var level = _request.Level!;
        var percent = Math.Min(100, level.StartCeiling + (day / 7 * level.CeilingStep));
        var open = role == DrillRole.Middle && rules.Contains(PlanRuleKind.Ceiling) ? Math.Max(1, (int)Math.Ceiling(drills.Count * percent / 100m)) : drills.Count;
        foreach (var (exercise, last) in drills.Take(open))
        {
            var before = sung.TryGetValue(exercise, out var at) ? at : rules.Contains(PlanRuleKind.Log) ? last : null;
            if (rules.Contains(PlanRuleKind.NoRepeat) && before is { } b && day - b <= _request.NoRepeatDays)
            {
                continue;
            }

            if (CanSing(drills, day + scales, scales, role, rules, new Dictionary<string, int>(sung) { [exercise] = day }))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The log's days are counted backwards from the plan's first day: -1 is the last day of singing before it.</summary>
    private int? LastOf(Scale scale, string exercise)
    {
        var days = _request.Log.Select(e => e.Date).Distinct().OrderDescending().ToList();
        var sung = _request.Log.Where(e => e.ScaleName == scale.Name && e.ExerciseName == exercise).Select(e => -1 - days.IndexOf(e.Date)).ToList();
        return sung.Count == 0 ? null : sung.Max();
    }

    /// <summary>The drills of a role, and on which fewer notes an opening or a descent may be sung instead.</summary>
    private IEnumerable<(Exercise Exercise, Exercise? Narrow)> ExercisesOf(DrillRole role) => role switch
    {
        DrillRole.Opening => FramingExercises.Openings.Zip(NarrowExercises.Openings, (e, n) => (e, (Exercise?)n)),
        DrillRole.Descent => FramingExercises.Descents.Zip(NarrowExercises.Descents, (e, n) => (e, (Exercise?)n)),
        _ => ((Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir, .. NarrowExercises.Middle])
            .Where(e => _request.Level!.Groups.Contains(e.Group))
            .Concat(_request.Added)
            .Select(e => (e, (Exercise?)null)),
    };

    private IEnumerable<Rendering> WaysOf(Scale scale, DrillRole role, Exercise exercise, Exercise? narrow)
    {
        var level = _request.Level!;
        var words = exercise.Tala.Split(' ');
        var meter = words.Length > 1 && Meter.TryParse($"{words[0]} {words[1]}", out var own, out _) ? own! : Meter.TryParse(words[0], out own, out _) ? own! : Meter.Adi;
        var lineByLine = Delivery.LineByLine with { Fill = Fill.Anga, FillBy = FillBy.Hold, BreathSeconds = new Rational(4, 5) };
        (Exercise Exercise, Delivery Delivery, ValueList<Speed> Speeds)[] ways = role != DrillRole.Middle
            ? [(exercise, lineByLine, [Speed.First]), (narrow!, lineByLine, [Speed.First])]
            : [(exercise, level.Delivery, Own(level.Speeds)), (exercise, lineByLine, Own(level.Speeds)), (exercise, lineByLine, Own([level.Speeds[0]]))];

        // What choirs sing has a speed of its own.
        ValueList<Speed> Own(ValueList<Speed> usual) => exercise.Speed == Speed.First ? usual : [exercise.Speed];
        if (role == DrillRole.Opening && (!exercise.Pattern.TryExpand(scale, out var lines, out _) || lines!.Lines.Any(l => l.Notes.Any(n => n.Tone.Octave != 0))))
        {
            yield break;
        }

        HashSet<(int Singer, int Tonic)>? inRange = null;
        foreach (var (sung, delivery, speeds) in ways)
        {
            var drill = new Drill
            {
                Scale = scale,
                Pattern = sung.Pattern,
                Tonic = Tonic.FromMidi(60),
                Tuning = _request.Tuning,
                Meter = meter,
                Delivery = delivery,
                Speeds = speeds,
                Repetitions = role == DrillRole.Opening ? 2 : 1,
                Tempo = level.Tempo.Start,

                // Whole avartanas of at least six seconds.
                CountIn = (int)(6 * level.Tempo.Start / (60 * meter.Beats)).Ceiling(),
            };
            if (!drill.TryToScore(out var score, out _))
            {
                yield break;
            }

            if (BreathPlan.TryMake(score!, BreathNeed.OfMost(_request.Singers), out var plan, out _))
            {
                score = score!.WithBreaths(plan!);
            }

            var difficulty = Difficulty.Of(score!);
            if (role == DrillRole.Middle && _choices.Exists(c => c.Scale == scale && c.Role == DrillRole.Opening && c.Renderings.Exists(w => w.Span > difficulty.SpanSemitones)))
            {
                yield break;
            }

            var against = _request.Singers.SelectMany(singer => Errors(score!.AsSungBy(singer), singer).Where(k => k != PlanRuleKind.Range).Select(k => (k, (string?)singer.Alias))).ToHashSet();
            if (score!.Seconds > new Rational(_request.Minutes * 60 * (role == DrillRole.Middle ? 3 : 1), 5))
            {
                against.Add((PlanRuleKind.Budget, null));
            }

            // The same notes lie as high however they are sung.
            if (inRange is null || sung != exercise)
            {
                inRange = InRange(drill);
            }

            yield return new Rendering(against, inRange, difficulty.Score(), difficulty.SpanSemitones);
        }
    }

    /// <summary>The singers and the tonics near their voices on which a drill lies within the range.</summary>
    private HashSet<(int Singer, int Tonic)> InRange(Drill drill) => _request.Singers
        .SelectMany((singer, s) => Near(singer)
            .Where(t => !Errors((drill with { Tonic = Tonic.FromMidi(t) }).ToScore(), singer).Contains(PlanRuleKind.Range))
            .Select(t => (s, t)))
        .ToHashSet();

    private static HashSet<PlanRuleKind> Errors(Score score, Singer singer) => score.Check(singer).Where(f => f.Severity == Severity.Error).Select(f => f.Code switch
    {
        VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange => PlanRuleKind.Range,
        VoiceFindingCode.TooFast => PlanRuleKind.Agility,
        _ => PlanRuleKind.Breath,
    }).ToHashSet();

    private sealed record Choice(Scale Scale, DrillRole Role, string Exercise, List<Rendering> Renderings);

    private sealed record Rendering(HashSet<(PlanRuleKind Kind, string? Singer)> Against, HashSet<(int Singer, int Tonic)> InRange, int Grade, int Span);
}
