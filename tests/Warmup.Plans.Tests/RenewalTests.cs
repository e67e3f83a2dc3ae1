using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: the promises of docs/plans.md on a plan whose class has changed, checked with the checks of Warmup.Voices alone.</summary>
public class RenewalTests
{
    private static readonly WarmupPlan Usual = WarmupPlan.Make(Requests.Usual with { Days = 20 }).Plan;

    // Wren loses the top of her range, and sings as long as before.
    private static readonly ValueList<Singer> Lower = [Requests.Singer("Wren", 55, 70, 18), .. Requests.Class.Skip(1)];

    private static readonly ValueList<Singer> Lowest = [Requests.Singer("Wren", 55, 68, 18), .. Requests.Class.Skip(1)];

    // Nobody's range changes; Wren has less breath.
    private static readonly ValueList<Singer> Shorter = [Requests.Singer("Wren", 55, 76, 11), .. Requests.Class.Skip(1)];

    /// <summary>Whether a day can be sung by everybody, each in the octave that the plan gives them.</summary>
    private static bool Fits(PlanRenewal renewal, PlanDay day, ValueList<Singer> singers) => Enumerable.Range(0, singers.Count).All(s =>
        renewal.Plan.ToScore(day, renewal.Plan.Tonic.Transposed(12 * renewal.Octaves[s])).AsSungBy(singers[s]).Fits(singers[s]));

    private static void KeepsItsPromises(WarmupPlan plan, ValueList<Singer> singers, PlanRenewal renewal, DateOnly from)
    {
        var unfit = renewal.Days.ToDictionary(d => d.Before.Date);
        Assert.Equal(plan.Days.Select(d => d.Date), renewal.Plan.Days.Select(d => d.Date));
        foreach (var (before, now) in plan.Days.Zip(renewal.Plan.Days).Where(d => !d.First.IsRest))
        {
            var did = Fits(renewal, before, singers);
            Assert.Equal(!did && before.Date >= from, unfit.ContainsKey(before.Date));
            if (!unfit.TryGetValue(before.Date, out var day) || day.Refusal is not null)
            {
                Assert.Equal(before, now);
                continue;
            }

            Assert.NotEmpty(day.Why);
            Assert.True(Fits(renewal, now, singers), $"{day}");
            Assert.Equal(before.Scale, now.Scale);
            Assert.Equal(now.Seconds, renewal.Plan.ToScore(now).Seconds);
            Assert.True(now.Seconds <= 60 * plan.Minutes);
        }

        // No drill of a renewed day is sung within the wait before or after it.
        var sung = renewal.Plan.Days.Where(d => !d.IsRest).ToList();
        foreach (var (day, at) in sung.Select((d, at) => (d, at)).Where(d => unfit.TryGetValue(d.d.Date, out var u) && u is { Refusal: null, HasOnlyMoreBreaths: false }))
        {
            var around = sung.Where((_, other) => other != at && Math.Abs(other - at) <= plan.NoRepeatDays).SelectMany(d => d.Drills.ConvertAll(Name)).ToHashSet();
            Assert.DoesNotContain(day.Drills, d => around.Contains(Name(d)));
        }

        static (string, string) Name(DayDrill planned) => (planned.Drill.Scale.Name, planned.Drill.ExerciseName);
    }

    [Fact]
    public void A_plan_that_still_fits_is_equal()
    {
        var renewal = Usual.Renew(Requests.Class);
        Assert.Equal(Usual, renewal.Plan);
        Assert.Empty(renewal.Days);
        Assert.True(renewal.IsFitForAll);
    }

    [Fact]
    public void Days_that_are_too_high_are_planned_anew_and_no_others()
    {
        var renewal = Usual.Renew(Lower);
        Assert.Contains(renewal.Days, d => d.Refusal is null && !d.HasOnlyMoreBreaths);
        KeepsItsPromises(Usual, Lower, renewal, DateOnly.MinValue);
        Assert.All(renewal.Days, d => Assert.All(d.Why, f => Assert.Equal("Wren", f.Singer)));
    }

    [Fact]
    public void Where_only_breath_is_shorter_the_singer_takes_breaths_of_their_own_as_in_a_new_plan()
    {
        var renewal = Usual.Renew(Shorter);
        KeepsItsPromises(Usual, Shorter, renewal, DateOnly.MinValue);
    }

    [Fact]
    public void Days_before_the_first_day_that_is_asked_for_stay_as_they_are()
    {
        var from = Usual.Days[9].Date;
        var renewal = Usual.Renew(Lower, from);
        Assert.All(renewal.Days, d => Assert.True(d.Before.Date >= from));
        KeepsItsPromises(Usual, Lower, renewal, from);
    }

    /// <summary>A plan in one scale without a wait, so that only the middle drills keep the days apart.</summary>
    [Fact]
    public void A_day_that_is_planned_anew_has_other_middle_drills_than_every_other_day()
    {
        var plan = WarmupPlan.Make(Requests.Usual with { Scales = Requests.Scales("mayamalavagowla"), Days = 90, NoRepeatDays = 0 }).Plan;
        var renewal = plan.Renew(Lower);
        var anew = renewal.Days.Where(d => d.Refusal is null && !d.HasOnlyMoreBreaths).Select(d => d.Now).ToList();
        Assert.True(anew.Count > 10, $"{anew.Count}");
        var days = renewal.Plan.Days.Where(d => !d.IsRest).ToList();
        Assert.All(anew, day => Assert.Single(days, d => Middle(d).SetEquals(Middle(day))));

        static HashSet<string> Middle(PlanDay day) => day.Drills.Where(p => p.Drill.Role == DrillRole.Middle).Select(p => p.Drill.ExerciseName).ToHashSet();
    }

    [Fact]
    public void The_same_class_gives_the_same_plan_and_a_renewed_plan_needs_nothing_more()
    {
        var renewal = Usual.Renew(Lower);
        Assert.Equal(renewal, Usual.Renew(Lower));
        Assert.All(renewal.Plan.Renew(Lower).Days, d => Assert.NotNull(d.Refusal));
    }

    [Fact]
    public void A_renewed_plan_is_read_back_from_its_file()
    {
        foreach (var singers in (ValueList<Singer>[])[Lower, Lowest])
        {
            var plan = Usual.Renew(singers).Plan;
            Assert.Contains(plan.Days, d => d.BreathNeed is not null);
            using var stream = new MemoryStream();
            PlanFile.Write(plan, stream);
            Assert.Equal(plan, PlanFile.Read(stream.ToArray()));
        }
    }

    [Fact]
    public void A_renewed_plan_keeps_the_fingerprint_of_the_first_and_another_plan_has_another()
    {
        var once = Usual.Renew(Lower).Plan;
        var twice = once.Renew(Lowest).Plan;
        Assert.NotEqual(once, twice);
        Assert.Equal(PlanFile.Fingerprint(Usual, Usual.Days), PlanFile.Fingerprint(once, once.Days));
        Assert.Equal(PlanFile.Fingerprint(Usual, Usual.Days), PlanFile.Fingerprint(twice, twice.Days));
        var other = WarmupPlan.Make(Requests.Usual with { Days = 20, Seed = 8 }).Plan;
        Assert.NotEqual(PlanFile.Fingerprint(Usual, Usual.Days), PlanFile.Fingerprint(other, other.Days));
    }

    [Fact]
    public void A_class_that_nothing_fits_is_told_so_and_the_plan_stays()
    {
        ValueList<Singer> narrow = [Requests.Singer("Wren", 60, 61, 18)];
        var plan = WarmupPlan.Make(Requests.Usual with { Days = 4 }).Plan;
        var renewal = plan.Renew(narrow);
        Assert.Equal(plan.Days, renewal.Plan.Days);
        Assert.False(renewal.IsFitForAll);
        Assert.All(renewal.Days, d => Assert.NotEmpty(d.Refusal!));
    }

    [Property(MaxTest = 4)]
    public Property Any_change_of_a_class_keeps_the_promises() => Prop.ForAll(
        (from request in Requests.Reasonable
         from narrower in Gen.Choose(0, 5)
         from shorter in Gen.Choose(0, 7)
         select (request, narrower, shorter)).ToArbitrary(),
        c =>
        {
            WarmupPlan plan;
            try
            {
                plan = WarmupPlan.Make(c.request with { Days = 10 }).Plan;
            }
            catch (PlanImpossibleException)
            {
                return;
            }

            var first = c.request.Singers[0];
            ValueList<Singer> singers =
            [
                new Singer(first.Alias, first.Low, NoteName.FromMidi(first.High.Midi - c.narrower), first.SustainedSeconds - c.shorter, first.Experience),
                .. c.request.Singers.Skip(1),
            ];
            KeepsItsPromises(plan, singers, plan.Renew(singers), DateOnly.MinValue);
        });
}
