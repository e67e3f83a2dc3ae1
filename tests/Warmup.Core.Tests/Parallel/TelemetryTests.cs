using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace Warmup.Tests;

/// <summary>What a run tells to those who listen. Other tests run at the same time: a look-ahead that no other run has marks those of this test.</summary>
public class TelemetryTests
{
    private const int Mark = 4_321;

    [Fact]
    public void A_run_is_an_activity_that_knows_its_workers_and_its_items()
    {
        var ended = Listen(run => Assert.Equal(Enumerable.Range(1, 10), run.Map(Enumerable.Range(0, 10), (i, _) => i + 1)));
        var activity = Assert.Single(ended);
        Assert.Equal(("warmup.run", 2, 10L), (activity.OperationName, activity.GetTagItem("warmup.run.workers"), activity.GetTagItem("warmup.run.items")));
        Assert.Equal(ActivityStatusCode.Unset, activity.Status);
        Assert.True(activity.IsStopped);
    }

    [Fact]
    public void A_failed_item_and_a_run_that_is_left_are_told()
    {
        var ended = Listen(run =>
        {
            Assert.Throws<OrderedParallelException>(() => run.Map(Enumerable.Range(0, 9), (i, _) => i < 3 ? i : throw new InvalidDataException()).ToList());
            Assert.Equal(1, run.Map(Enumerable.Range(1, 9), (i, _) => i).First());
        });
        Assert.Equal([4L, 1L], ended.Select(a => (long)a.GetTagItem("warmup.run.items")!));
        Assert.Equal((ActivityStatusCode.Error, typeof(InvalidDataException).FullName), (ended[0].Status, ended[0].GetTagItem("error.type")));
        Assert.Equal(ActivityStatusCode.Unset, ended[1].Status);
    }

    [Fact]
    public void A_run_is_no_part_of_what_its_caller_does_meanwhile()
    {
        Listen(run =>
        {
            using var outer = new Activity("outer").Start();
            foreach (var _ in run.Map(Enumerable.Range(0, 3), (i, _) => i))
            {
                Assert.Same(outer, Activity.Current);
            }
        });
    }

    [Fact]
    public void Items_and_running_runs_are_counted()
    {
        var (items, failed, active) = (0L, 0L, new List<long>());
        using var listener = new MeterListener { InstrumentPublished = (instrument, l) => { if (instrument.Meter.Name == Telemetry.Name) { l.EnableMeasurementEvents(instrument); } } };
        listener.SetMeasurementEventCallback<long>((instrument, count, tags, _) =>
        {
            if (instrument.Name == "warmup.run.items")
            {
                Interlocked.Add(ref tags.IsEmpty ? ref items : ref failed, count);
            }
            else
            {
                lock (active)
                {
                    active.Add(count);
                }
            }
        });
        listener.Start();
        Assert.Throws<OrderedParallelException>(() => new OrderedParallel { Workers = 2 }.Map(Enumerable.Range(0, 9), (i, _) => i < 5 ? i : throw new InvalidDataException()).ToList());
        Assert.True(items >= 5 && failed >= 1, $"{items} and {failed}");
        lock (active)
        {
            Assert.True(active.Contains(1) && active.Contains(-1));
        }
    }

    private static List<Activity> Listen(Action<OrderedParallel> use)
    {
        var ended = new List<Activity>();
        using var listener = new ActivityListener
        {
            ShouldListenTo = source => source.Name == Telemetry.Name,
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = activity =>
            {
                if (Equals(activity.GetTagItem("warmup.run.look_ahead"), Mark))
                {
                    lock (ended)
                    {
                        ended.Add(activity);
                    }
                }
            },
        };
        ActivitySource.AddActivityListener(listener);
        use(new OrderedParallel { Workers = 2, LookAhead = Mark });
        return ended;
    }
}
