using System.Text;

namespace Warmup.Plans.Tests;

/// <summary>Source: memory measured by the runtime; the calendar by <see cref="DateOnly"/> and by known leap days.</summary>
[Collection(nameof(LongPlanTests))]
[CollectionDefinition(nameof(LongPlanTests), DisableParallelization = true)]
public class LongPlanTests
{
    private static PlanRequest Long(int days) => Requests.Usual with
    {
        Scales = Requests.Scales("mohanam", "bilahari"),
        Singers = [Requests.Singer("Heron", 48, 76, 30)],
        Days = days,
    };

    private static (long Allocated, long Kept, WarmupPlan Plan) Measure(int days)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var start = GC.GetAllocatedBytesForCurrentThread();
        var plan = WarmupPlan.Make(Long(days)).Plan;
        var allocated = GC.GetAllocatedBytesForCurrentThread() - start;
        return (allocated, GC.GetTotalMemory(forceFullCollection: true) - before, plan);
    }

    [Fact]
    public void Ten_thousand_days_take_no_more_memory_a_day_than_two_thousand()
    {
        // A first plan pays for what is made once.
        _ = Measure(100);
        var (none, _, _) = Measure(400);
        var (few, fewKept, _) = Measure(2_000);
        var (many, manyKept, plan) = Measure(10_000);
        Assert.Equal(10_000, plan.Days.Count);

        // What a day adds, once the drills are known at every tempo.
        var fewADay = (few - none) / 1_600.0;
        var manyADay = (many - few) / 8_000.0;
        Assert.True(manyADay < 1.25 * fewADay, $"{fewADay:0} bytes a day at first, {manyADay:0} later");
        var keptADay = (manyKept - fewKept) / 8_000.0;
        Assert.True(keptADay < 2_000, $"{keptADay:0} bytes are kept a day");
    }

    [Fact]
    public void Leap_days_and_changes_of_the_clock_are_days_like_others()
    {
        var plan = WarmupPlan.Make(Long(800) with { Start = new DateOnly(2027, 1, 1), RestDays = [] }).Plan;

        // 2028 is a leap year; 28 March 2027 and 26 March 2028 have 23 hours in the European Union (Directive 2000/84/EC: last Sunday of March).
        Assert.False(plan.DayOf(new DateOnly(2028, 2, 29)).IsRest);
        Assert.False(plan.DayOf(new DateOnly(2027, 3, 28)).IsRest);
        Assert.Equal(366, plan.Days.Count(d => d.Date.Year == 2028));
        Assert.Equal(800, plan.Days.Select(d => d.Date).Distinct().Count());
        Assert.All(plan.Days, d => Assert.False(d.IsRest));
        using var stream = new MemoryStream();
        PlanFile.Write(plan, stream);
        Assert.Contains("2028-02-29", Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
        Assert.Equal(plan, PlanFile.Read(stream.ToArray()));
    }

    [Fact]
    public void A_stopped_plan_stops()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => WarmupPlan.Make(Requests.Usual, stop.Token));
    }
}
