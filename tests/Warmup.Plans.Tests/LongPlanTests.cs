using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

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
    [Trait("Run", "whole")]
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
    public void Days_that_are_drawn_are_not_kept_and_are_those_of_the_whole_plan()
    {
        var draw = WarmupPlan.Draw(Long(3_000));
        Assert.True(draw.Outline.Plan.Days.IsEmpty);

        // Memory in use after some days and after many, while the plan and its pages are written to nowhere.
        var (early, late, count) = (0L, 0L, 0);
        PlanFile.Write(draw.Outline.Plan, draw.DrawDays().Select(Counted), Stream.Null);
        Assert.Equal(3_000, count);
        Assert.True(late - early < 200_000, $"{late - early} bytes more after 2,900 days than after 1,000");

        var plan = draw.ToResult();
        Assert.Equal(WarmupPlan.Make(Long(3_000)).Plan, plan.Plan);
        using var whole = new MemoryStream();
        using var drawn = new MemoryStream();
        PlanFile.Write(plan.Plan, whole);
        PlanFile.Write(draw.Outline.Plan, draw.DrawDays(), drawn);
        Assert.True(whole.ToArray().AsSpan().SequenceEqual(drawn.ToArray()));

        PlanDay Counted(PlanDay day)
        {
            count++;
            (early, late) = (count == 1_000 ? GC.GetTotalMemory(forceFullCollection: true) : early, count == 2_900 ? GC.GetTotalMemory(forceFullCollection: true) : late);
            return day;
        }
    }

    [Fact]
    [Trait("Run", "whole")]
    public void Days_that_are_kept_take_some_thirty_bytes_each()
    {
        var draw = WarmupPlan.Draw(Long(3_000));
        var all = draw.DrawDays().ToList();
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var days = draw.KeepDays();
        var kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        Assert.True(kept < 60 * 3_000, $"{kept / 3_000.0} bytes a day");
        Assert.Equal(all, days);
        Assert.Equal(all, days);

        // Two that are read at the same time do not disturb each other.
        Assert.All(days.Zip(days.Skip(100)), d => Assert.Equal(100, d.Second.Date.DayNumber - d.First.Date.DayNumber));
    }

    [Property(MaxTest = 5)]
    public Property Days_that_are_kept_are_those_that_were_drawn() => Prop.ForAll(Requests.Random.ToArbitrary(), request =>
    {
        try
        {
            var draw = WarmupPlan.Draw(request);
            Assert.Equal(draw.DrawDays(), draw.KeepDays());
            Assert.All(draw.KeepDays().SelectMany(d => d.Drills), p => Assert.Contains(draw.Outline.Plan.Drills, d => ReferenceEquals(d, p.Drill)));
        }
        catch (PlanImpossibleException)
        {
        }
    });

    [Fact]
    [Trait("Run", "whole")]
    public void A_long_plan_has_pages_of_a_size_that_lead_from_one_to_the_next()
    {
        var draw = WarmupPlan.Draw(Long(3_000));
        var pages = MonthPage.Of(draw.Outline.Plan, draw.DrawDays(), d => $"{d.Date:yyyy-MM-dd}.html").ToList();
        Assert.True(pages.Count > 2);
        Assert.Equal("plan.html", pages[0].FileName);
        var texts = pages.ConvertAll(p =>
        {
            using var stream = new MemoryStream();
            p.Write(stream);
            Assert.InRange(stream.Length, 100_000, MonthPage.MostBytes);
            return Encoding.UTF8.GetString(stream.ToArray());
        });
        for (var i = 0; i < pages.Count; i++)
        {
            // Above and below the tables.
            Assert.Equal(i == 0 ? 0 : 2, texts[i].Split("rel=\"prev\"").Length - 1);
            Assert.Equal(i == pages.Count - 1 ? 0 : 2, texts[i].Split("rel=\"next\"").Length - 1);
            Assert.True(i == 0 || texts[i - 1].Contains($"<a href=\"{pages[i].FileName}\" rel=\"next\">", StringComparison.Ordinal));
            Assert.True(i == 0 || texts[i].Contains($"<a href=\"{pages[i - 1].FileName}\" rel=\"prev\">", StringComparison.Ordinal));
            Assert.All(Cautions.All, c => Assert.Contains(System.Net.WebUtility.HtmlEncode(c.Text), texts[i], StringComparison.Ordinal));
        }

        // Each day of singing is on one page, linked once.
        var all = string.Concat(texts);
        Assert.All(draw.DrawDays().Where(d => !d.IsRest), d => Assert.Equal(2, all.Split($"<a href=\"{d.Date:yyyy-MM-dd}.html\">").Length));
    }

    [Fact]
    public void Scores_that_are_kept_for_many_days_are_the_days_own()
    {
        var draw = WarmupPlan.Draw(Long(40));
        var scores = new DayScores(draw.Outline.Plan);
        foreach (var day in draw.DrawDays().Where(d => !d.IsRest))
        {
            Assert.Equal(draw.Outline.Plan.ToScore(day), scores.Of(day));
        }

        Assert.Throws<ArgumentException>(() => scores.Of(draw.DrawDays().First(d => d.IsRest)));
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
