using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: the rules as docs/plans.md states them, each computed anew here from the plan's days and scores.</summary>
public class RuleTests
{
    [Property(MaxTest = 6)]
    public Property Every_plan_of_a_random_class_meets_every_rule() => Prop.ForAll(Requests.Random.ToArbitrary(), request =>
    {
        PlanResult made;
        try
        {
            made = WarmupPlan.Make(request);
        }
        catch (PlanImpossibleException impossible)
        {
            return (!string.IsNullOrEmpty(impossible.Message)).Classify(true, "impossible");
        }

        DaysFollowAndRestsAreKept(request, made.Plan);
        TheTimeIsExactAndHolds(request, made.Plan);
        EveryoneCanSingEveryDay(request, made);
        TheOrderWidensAndRises(request, made.Plan);
        NoDrillComesBackTooSoon(request, made.Plan);
        DifficultyKeepsToItsBounds(request, made.Plan);
        ShortDaysSayWhy(request, made.Plan);
        ScalesTakeTurns(made.Plan);
        NoSetOfMiddleDrillsComesBackWhileAnotherIsOpen(request, made.Plan);
        return true.Classify(true, "possible");
    });

    private static List<PlanDay> Sung(WarmupPlan plan) => plan.Days.Where(d => !d.IsRest).ToList();

    private static void DaysFollowAndRestsAreKept(PlanRequest request, WarmupPlan plan)
    {
        Assert.Equal(request.Days, plan.Days.Count);
        for (var d = 0; d < plan.Days.Count; d++)
        {
            Assert.Equal(request.Start.AddDays(d), plan.Days[d].Date);
            Assert.Equal(request.RestDays.Contains(plan.Days[d].Date.DayOfWeek), plan.Days[d].IsRest);
        }
    }

    private static void TheTimeIsExactAndHolds(PlanRequest request, WarmupPlan plan)
    {
        foreach (var day in Sung(plan))
        {
            var sum = Rational.Zero;
            foreach (var section in plan.ToScore(day).Sections)
            {
                // A constant tempo: aksharas times sixty over aksharas a minute.
                Assert.True(section.TempoChanges.IsEmpty);
                sum += new Rational(section.LengthSteps, section.Resolution) * 60 / section.Tempo;

                // The rest before the drill is a count-in.
                Assert.True(section.CountIn * 60 / section.Tempo >= PlanDrill.RestSeconds);
            }

            Assert.Equal(sum, day.Seconds);
            Assert.True(sum <= request.Minutes * 60, $"{sum} s of {request.Minutes} minutes");
            foreach (var left in day.LeftOut)
            {
                Assert.DoesNotContain(day.Drills, d => d.Drill == left);
                var (from, to) = Tempi(request.Level!);
                var longest = Enumerable.Range(from, to - from + 1)
                    .Max(tempo => left.ToDrill(plan.Tonic, plan.Tuning, tempo).ToScore().Seconds);
                Assert.True(sum + longest > request.Minutes * 60, "it would have fitted");
            }
        }
    }

    private static void EveryoneCanSingEveryDay(PlanRequest request, PlanResult made)
    {
        foreach (var day in Sung(made.Plan))
        {
            for (var s = 0; s < request.Singers.Count; s++)
            {
                // Most breathe together; whoever needs more breaths takes them at places of their own.
                var score = made.Plan.ToScore(day, made.Plan.Tonic.Transposed(12 * made.Octaves[s])).AsSungBy(request.Singers[s]);
                var findings = score.Check(request.Singers[s]);
                Assert.True(score.Fits(request.Singers[s]), $"{day.Date}: {string.Join("; ", findings)}");
            }
        }
    }

    private static void TheOrderWidensAndRises(PlanRequest request, WarmupPlan plan)
    {
        foreach (var (day, place) in Sung(plan).Select((d, i) => (d, i)))
        {
            var drills = day.Drills.ConvertAll(d => d.Drill);
            var score = plan.ToScore(day);
            Assert.True(drills.Count >= 3);
            Assert.Equal(DrillRole.Opening, drills[0].Role);
            Assert.Equal(DrillRole.Descent, drills[^1].Role);

            // The opening is easier than all that follows, unless each opening that would be has to wait.
            var waiting = Sung(plan).Take(place).TakeLast(request.NoRepeatDays).Select(d => d.Drills[0].Drill.ExerciseName).Concat(request.Log.Select(e => e.ExerciseName)).ToHashSet();
            Assert.All(drills.Skip(1).Where(d => d.Grade <= drills[0].Grade), d => Assert.DoesNotContain(
                plan.Drills, o => o.Role == DrillRole.Opening && o.Scale == d.Scale && o.Grade < d.Grade && !waiting.Contains(o.ExerciseName)));
            Assert.Equal(day.Drills.Count, score.Sections.Count);

            // The opening is slow, and lies inside the octave, below the upper tonic; for narrow voices it begins on the tonic.
            var (low, high) = Ends([score.Sections[0]]);
            Assert.True(plan.Tonic.Midi <= low && high < plan.Tonic.Midi + 12);
            Assert.All(score.Sections[0].Lines, l => Assert.Equal(Speed.First, l.Speed));
            for (var i = 1; i < drills.Count - 1; i++)
            {
                Assert.Equal(DrillRole.Middle, drills[i].Role);
                Assert.True(drills[i - 1].SpanSemitones <= drills[i].SpanSemitones, "it narrows");
                Assert.True(i == 1 || drills[i - 1].Grade <= drills[i].Grade, "it grows easier");
                var (from, to) = Ends([score.Sections[i]]);
                Assert.Equal(to - from, drills[i].SpanSemitones);
            }

            var last = score.Sections[^1];
            foreach (var line in last.Lines)
            {
                var notes = last.Notes.Skip(line.FirstNote).Take(line.NoteCount).Select(n => last.PitchOf(n).Midi).ToList();
                Assert.True(notes[^1] < notes[0]);
                Assert.Equal(plan.Tonic.Midi, notes[^1]);
            }
        }
    }

    private static (int Low, int High) Ends(ValueList<Section> sections)
    {
        var notes = sections.SelectMany(s => s.Notes.Select(n => s.PitchOf(n).Midi)).ToList();
        return (notes.Min(), notes.Max());
    }

    private static void NoDrillComesBackTooSoon(PlanRequest request, WarmupPlan plan)
    {
        var last = new Dictionary<(Scale, string), (int Place, DateOnly Date)>();
        foreach (var (day, place) in Sung(plan).Select((d, i) => (d, i)))
        {
            foreach (var planned in day.Drills)
            {
                var drill = planned.Drill;
                if (last.TryGetValue((drill.Scale, drill.ExerciseName), out var before))
                {
                    Assert.True(place - before.Place > request.NoRepeatDays, $"{drill.ExerciseName} on {before.Date} and {day.Date}");
                    Assert.True(day.Date.DayNumber - before.Date.DayNumber > request.NoRepeatDays);
                }

                last[(drill.Scale, drill.ExerciseName)] = (place, day.Date);
            }
        }
    }

    private static (int Start, int Top) Tempi(Level level) => ((int)level.Tempo.Start.Numerator, (int)level.Tempo.Ceiling.Numerator);

    /// <summary>docs/plans.md: floor and ceiling are places among the scale's middle drills, the easiest first; shares are rounded up.</summary>
    private static (int Floor, int Open, int Band) Bounds(Level level, int drills, int week, int wait)
    {
        static int Share(int of, int percent) => (int)Math.Ceiling(of * percent / 100m);

        var open = Math.Max(1, Share(drills, Math.Min(100, level.StartCeiling + (week * level.CeilingStep))));
        var band = Math.Max(wait + 1, Share(drills, level.Band));
        return (Math.Max(0, open - band), open, band);
    }

    private static void DifficultyKeepsToItsBounds(PlanRequest request, WarmupPlan plan)
    {
        var level = request.Level!;
        var drills = plan.Drills.Where(d => d.Role == DrillRole.Middle).ToLookup(d => d.Scale);
        var wait = request.NoRepeatDays / Sung(plan).Select(d => d.Scale!).Distinct().Count();
        (decimal Place, decimal Bound)? before = null;
        foreach (var day in Sung(plan))
        {
            var week = (day.Date.DayNumber - request.Start.DayNumber) / 7;
            var (start, top) = Tempi(level);
            Assert.All(day.Drills, d => Assert.InRange(d.Tempo, start, Math.Min(top, start + (week * (int)level.Tempo.Step.Numerator))));

            var ranked = drills[day.Scale!].OrderBy(d => d.Grade).ThenBy(d => d.SpanSemitones).ToList();
            var (floor, open, band) = Bounds(level, ranked.Count, week, wait);
            var places = day.Drills.Where(d => d.Drill.Role == DrillRole.Middle).Select(d => ranked.IndexOf(d.Drill)).ToList();
            Assert.All(places, p => Assert.True(p < open, $"place {p} of {ranked.Count} in week {week}, {open} are open"));
            Assert.True(places.Max() >= floor, $"the hardest is place {places.Max()} of {ranked.Count} in week {week}, the floor is {floor}");
            Assert.All(day.Drills, d => Assert.True(d.Drill.Role != DrillRole.Middle || level.Groups.Contains(d.Drill.Group)));

            // From day to day no further than the band, a week's step and one drill.
            var (place, bound) = (100m * (places.Max() + 1) / ranked.Count, (100m * (band + 1) / ranked.Count) + level.CeilingStep);
            Assert.True(before is null || Math.Abs(place - before.Value.Place) <= Math.Max(bound, before.Value.Bound), $"from {before?.Place} to {place} per cent on {day.Date}");
            before = (place, bound);
        }
    }

    /// <summary>Tries every set of open drills, on days whose middle drills were sung together before.</summary>
    private static void NoSetOfMiddleDrillsComesBackWhileAnotherIsOpen(PlanRequest request, WarmupPlan plan)
    {
        var sung = Sung(plan);
        var wait = request.NoRepeatDays / sung.Select(d => d.Scale!).Distinct().Count();
        var (last, sets) = (new Dictionary<PlanDrill, int>(), new HashSet<string>());
        foreach (var (day, place) in sung.Select((d, i) => (d, i)))
        {
            var ranked = plan.Drills.Where(d => d.Role == DrillRole.Middle && d.Scale == day.Scale).OrderBy(d => d.Grade).ThenBy(d => d.SpanSemitones).ToList();
            var today = day.Drills.Where(d => d.Drill.Role == DrillRole.Middle).Select(d => d.Drill).ToList();
            if (!sets.Add(Key(today)))
            {
                var (floor, open, _) = Bounds(request.Level!, ranked.Count, (day.Date.DayNumber - request.Start.DayNumber) / 7, wait);
                bool IsFree(PlanDrill d) => !last.TryGetValue(d, out var before) || place - before > request.NoRepeatDays;
                var free = ranked.Take(open).Where(IsFree).ToList();
                var hard = ranked.Take(open).Skip(floor).Where(IsFree).DefaultIfEmpty(free[^1]).ToList();
                foreach (var set in Sets(free, today.Count).Where(s => s.Intersect(hard).Any() && s.Intersect(hard).Count() <= today.Intersect(hard).Count()))
                {
                    var rises = set.OrderBy(d => d.SpanSemitones).ThenBy(d => d.Grade).ToList() is var order && order.Zip(order.Skip(1)).All(p => p.First.Grade <= p.Second.Grade);
                    var frame = day.Drills.Where(d => d.Drill.Role != DrillRole.Middle).Aggregate(Rational.Zero, (sum, d) => sum + AtTheStart(d.Drill));
                    var time = set.Aggregate(frame, (sum, d) => sum + AtTheStart(d));
                    Assert.True(sets.Contains(Key(set)) || !rises || time > request.Minutes * 60, $"{day.Date} sings {Key(today)} again; {Key(set)} was open");
                }
            }

            today.ForEach(d => last[d] = place);
        }

        // The longest that a drill sung once can take.
        Rational AtTheStart(PlanDrill drill) => drill.ToDrill(plan.Tonic, plan.Tuning, Tempi(request.Level!).Start).ToScore().Seconds;

        static string Key(IEnumerable<PlanDrill> drills) => string.Join(' ', drills.Select(d => d.ToString()).Order(StringComparer.Ordinal));

        static IEnumerable<List<PlanDrill>> Sets(List<PlanDrill> of, int most) => most == 0
            ? [[]]
            : Sets(of, most - 1).SelectMany(s => of.Skip(s.Count == 0 ? 0 : of.IndexOf(s[^1]) + 1).Select(d => (List<PlanDrill>)[.. s, d]).Prepend(s)).DistinctBy(Key);
    }

    private static void ShortDaysSayWhy(PlanRequest request, WarmupPlan plan)
    {
        foreach (var day in Sung(plan))
        {
            Assert.Equal(day.Seconds * 100 < (Rational)(request.Minutes * 60 * 75), day.Shortfall is not null);
            if (day.Shortfall is not { } why)
            {
                continue;
            }

            var scale = day.Scale!;
            var fit = plan.Drills.Count(d => d.Role == DrillRole.Middle && d.Scale == scale);
            var wait = request.NoRepeatDays / Sung(plan).Select(d => d.Scale!).Distinct().Count();
            var (_, open, _) = Bounds(request.Level!, fit, (day.Date.DayNumber - request.Start.DayNumber) / 7, wait);
            Assert.Equal(fit - open, why.AboveCeiling);
            Assert.Equal(open, why.Waiting + why.OutOfOrder + day.Drills.Count - 2 + day.LeftOut.Count);
            Assert.True(why.Unfit >= 0 && why.Waiting >= 0 && why.OutOfOrder >= 0);

            // What is sung is sung as often as it may be: one more time does not fit, or is not held by the time.
            foreach (var planned in day.Drills)
            {
                if (planned.Times < DayDrill.MostTimes && planned.Drill.Role == DrillRole.Middle)
                {
                    var longer = day.Seconds - ScoreOf(plan, planned, planned.Times, 0).Seconds + ScoreOf(plan, planned, planned.Times + 1, 0).Seconds;
                    Assert.True(longer > request.Minutes * 60 || !request.Singers.All(s => FitsOnceMore(plan, planned, s)));
                }
            }
        }
    }

    private static bool FitsOnceMore(WarmupPlan plan, DayDrill planned, Singer singer) =>
        Enumerable.Range(-2, 4).Any(o => ScoreOf(plan, planned, planned.Times + 1, o).AsSungBy(singer).Fits(singer));

    private static Score ScoreOf(WarmupPlan plan, DayDrill planned, int times, int octave)
    {
        var score = planned.Drill.ToDrill(plan.Tonic.Transposed(12 * octave), plan.Tuning, planned.Tempo, times).ToScore();
        return BreathPlan.TryMake(score, plan.BreathNeed, out var breaths, out _) ? score.WithBreaths(breaths!) : score;
    }

    [Property(MaxTest = 500)]
    public Property Floor_and_ceiling_never_fall_and_the_floor_lies_below_the_ceiling() => Prop.ForAll(
        (from drills in Gen.Choose(1, 200)
         from start in Gen.Choose(0, 100)
         from step in Gen.Choose(0, 100)
         from band in Gen.Choose(1, 100)
         from wait in Gen.Choose(0, 10)
         select (drills, start, step, band, wait)).ToArbitrary(),
        x =>
        {
            var level = Level.Beginner with { StartCeiling = x.start, CeilingStep = x.step, Band = x.band };
            for (var week = 0; week < 30; week++)
            {
                var (floor, open) = (level.FloorOf(x.drills, week, x.wait + 1), level.OpenOf(x.drills, week));
                Assert.Equal(Bounds(level, x.drills, week, x.wait), (floor, open, Bounds(level, x.drills, week, x.wait).Band));
                Assert.True(floor >= 0 && floor < open && open <= x.drills);
                Assert.True(week == 0 || (floor >= level.FloorOf(x.drills, week - 1, x.wait + 1) && open >= level.OpenOf(x.drills, week - 1)));
            }
        });

    private static void ScalesTakeTurns(WarmupPlan plan)
    {
        var scales = Sung(plan).Select(d => d.Drills.ConvertAll(p => p.Drill.Scale)).ToList();
        Assert.All(scales, s => Assert.Single(s.Distinct()));
        var order = scales.Select(s => s[0]).ToList();
        var count = order.Distinct().Count();
        for (var i = count; i < order.Count; i++)
        {
            Assert.Equal(order[i - count], order[i]);
        }

        Assert.Equal(count, order.Take(count).Distinct().Count());
    }

    [Fact]
    [Trait("Run", "whole")]
    public void Random_classes_are_mostly_possible_so_that_the_rules_are_tested()
    {
        var possible = Requests.Random.Sample(30, 8).Count(r =>
        {
            try
            {
                return WarmupPlan.Make(r) is not null;
            }
            catch (PlanImpossibleException)
            {
                return false;
            }
        });
        Assert.True(possible >= 2, $"{possible} of 8");
    }

    [Fact]
    public void Every_group_gets_its_turn()
    {
        var plan = WarmupPlan.Make(Requests.Usual with
        {
            Singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced)],
            Level = Level.Intermediate with { StartCeiling = 100 },
            NoRepeatDays = 0,
            Days = 60,
        }).Plan;
        foreach (var scale in Sung(plan).GroupBy(d => d.Scale!))
        {
            var visits = scale.Select(d => d.Drills.Select(p => p.Drill.Group).ToHashSet()).ToList();
            var groups = new[] { "sarali", "choir", "neighbours", "janta", "datu", "alankara" };

            // Six groups, at least one a day: nobody waits longer than six of the scale's days.
            for (var v = 0; v + groups.Length <= visits.Count; v++)
            {
                var seen = visits.Skip(v).Take(groups.Length).SelectMany(f => f).ToHashSet();
                Assert.All(groups, f => Assert.Contains(f, seen));
            }
        }
    }

    [Fact]
    public void The_tempo_and_the_ceiling_rise_week_by_week()
    {
        var plan = WarmupPlan.Make(Requests.Usual with { Singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced)], Level = Level.Beginner, Days = 49 }).Plan;
        var fastest = Sung(plan).GroupBy(d => (d.Date.DayNumber - Requests.Start.DayNumber) / 7).Select(w => w.SelectMany(d => d.Drills).Max(d => d.Tempo));
        Assert.Equal([60, 62, 64, 66, 68, 70, 72], fastest);
    }

    [Fact]
    public void The_same_seed_gives_the_same_plan_and_another_seed_another()
    {
        var (one, two) = (WarmupPlan.Make(Requests.Usual), WarmupPlan.Make(Requests.Usual));
        Assert.Equal(one.Plan, two.Plan);
        Assert.Equal(one.Plan.GetHashCode(), two.Plan.GetHashCode());
        Assert.NotEqual(one.Plan, WarmupPlan.Make(Requests.Usual with { Seed = 8 }).Plan);
    }

    [Fact]
    public void The_cautions_stand_with_every_plan() => Assert.Equal([.. Cautions.All, Cautions.HalfClosed], WarmupPlan.Make(Requests.Usual with { Days = 1 }).Cautions);
}
