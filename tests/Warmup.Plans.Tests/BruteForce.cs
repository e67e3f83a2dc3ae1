namespace Warmup.Plans.Tests;

/// <summary>
/// Whether a small request for one singer can be planned, by trying every order of every choice of its scales and every choice of drills.
/// It shares no code with the planner: what may be sung is found with the core's drills and checks, as docs/plans.md says it.
/// </summary>
internal sealed class BruteForce
{
    private static readonly DrillRole[] Roles = [DrillRole.Opening, DrillRole.Middle, DrillRole.Descent];

    private readonly PlanRequest _request;
    private readonly List<Choice> _choices = [];

    public BruteForce(PlanRequest request)
    {
        _request = request;
        var singer = request.Singers[0];
        var octave = OctaveOf(request);
        foreach (var scale in request.Scales)
        {
            foreach (var role in Roles)
            {
                foreach (var exercise in ExercisesOf(role))
                {
                    _choices.Add(new Choice(scale, role, exercise.Name, [.. WaysOf(scale, role, exercise, singer, octave)]));
                }
            }
        }
    }

    public static (PlanRuleKind Kind, string? Singer)[] All(PlanRequest request) =>
    [
        (PlanRuleKind.Ceiling, null), (PlanRuleKind.NoRepeat, null), (PlanRuleKind.Budget, null), (PlanRuleKind.Log, null),
        (PlanRuleKind.Range, request.Singers[0].Alias), (PlanRuleKind.Breath, request.Singers[0].Alias), (PlanRuleKind.Agility, request.Singers[0].Alias),
    ];

    public bool CanMeet(IEnumerable<(PlanRuleKind Kind, string? Singer)> rules)
    {
        var kinds = rules.Select(r => r.Kind).ToHashSet();
        var scales = _request.Scales.ToList();
        return Orders(scales, [], Math.Min(scales.Count, _request.Days)).Any(order => CanMeet(order, kinds));
    }

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

    private bool CanMeet(List<Scale> order, HashSet<PlanRuleKind> rules) =>
        order.Select((scale, place) => (scale, place)).All(x => Roles.All(role =>
        {
            var open = _choices
                .Where(c => c.Scale == x.scale && c.Role == role)
                .Select(c => (c.Exercise, Rendering: c.Renderings.Find(w => !w.Against.Overlaps(rules))))
                .Where(c => c.Rendering is not null)
                .OrderBy(c => (c.Rendering!.Grade, c.Rendering.Span))
                .Select(c => (c.Exercise, Last: LastOf(x.scale, c.Exercise)))
                .ToList();
            return CanSing(open, x.place, order.Count, role, rules, []);
        }));

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

    private IEnumerable<Exercise> ExercisesOf(DrillRole role) => role switch
    {
        DrillRole.Opening => FramingExercises.Openings,
        DrillRole.Descent => FramingExercises.Descents,
        _ => ((Exercise[])[.. Repertoire.Traditional, .. Repertoire.Choir]).Where(e => _request.Level!.Groups.Contains(e.Group)),
    };

    private static int OctaveOf(PlanRequest request)
    {
        foreach (var scale in request.Scales)
        {
            var run = new Drill { Scale = scale, Pattern = Pattern.Run, Tonic = request.Tonic!, Tuning = request.Tuning };
            var fit = run.ToScore().RankTonics(request.Singers).First(f => (f.Tonic.Midi - request.Tonic!.Midi) % 12 == 0);
            return (fit.Singers[0].Tonic.Midi - request.Tonic!.Midi) / 12;
        }

        throw new InvalidOperationException("no scale");
    }

    private IEnumerable<Rendering> WaysOf(Scale scale, DrillRole role, Exercise exercise, Singer singer, int octave)
    {
        var level = _request.Level!;
        var words = exercise.Tala.Split(' ');
        var meter = words.Length > 1 && Meter.TryParse($"{words[0]} {words[1]}", out var own, out _) ? own! : Meter.Adi;
        (Delivery Delivery, ValueList<Speed> Speeds)[] ways = role != DrillRole.Middle
            ? [(Delivery.LineByLine, [Speed.First])]
            : [(level.Delivery, level.Speeds), (Delivery.LineByLine, level.Speeds), (Delivery.LineByLine, [level.Speeds[0]])];
        foreach (var (delivery, speeds) in ways)
        {
            var drill = new Drill
            {
                Scale = scale,
                Pattern = exercise.Pattern,
                Tonic = _request.Tonic!.Transposed(12 * octave),
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

            if (BreathPlan.TryMake(score!, BreathNeed.Of(_request.Singers), out var plan, out _))
            {
                score = score!.WithBreaths(plan!);
            }

            var difficulty = Difficulty.Of(score!);
            if (role == DrillRole.Middle && _choices.Exists(c => c.Scale == scale && c.Role == DrillRole.Opening && c.Renderings.Exists(w => w.Span > difficulty.SpanSemitones)))
            {
                yield break;
            }

            var against = score!.Check(singer).Where(f => f.Severity == Severity.Error).Select(f => f.Code switch
            {
                VoiceFindingCode.AboveRange or VoiceFindingCode.BelowRange => PlanRuleKind.Range,
                VoiceFindingCode.TooFast => PlanRuleKind.Agility,
                _ => PlanRuleKind.Breath,
            }).ToHashSet();
            if (score!.Seconds > new Rational(_request.Minutes * 60 * (role == DrillRole.Middle ? 3 : 1), 5))
            {
                against.Add(PlanRuleKind.Budget);
            }

            yield return new Rendering(against, difficulty.Score(), difficulty.SpanSemitones);
        }
    }

    private sealed record Choice(Scale Scale, DrillRole Role, string Exercise, List<Rendering> Renderings);

    private sealed record Rendering(HashSet<PlanRuleKind> Against, int Grade, int Span);
}
