using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace Warmup.ManyMachines;

/// <summary>What a node tells whoever listens; docs/telemetry.md describes it. Nobody listens by default.</summary>
internal static class ClusterTelemetry
{
    public const string Name = "Warmup.Cluster";

    private static readonly ActivitySource Activities = new(Name);
    private static readonly System.Diagnostics.Metrics.Meter Instruments = new(Name);
    private static readonly UpDownCounter<int> Workers = Instruments.CreateUpDownCounter<int>("warmup.cluster.workers", "{worker}", "Workers that the coordinator has heard of and not lost");
    private static readonly Counter<long> RangesDone = Instruments.CreateCounter<long>("warmup.cluster.ranges.done", "{range}", "Ranges whose first result is in the journal");
    private static readonly Counter<long> RangesRepeated = Instruments.CreateCounter<long>("warmup.cluster.ranges.repeated", "{range}", "Results that came again and changed nothing");
    private static readonly Counter<long> RangesTakenBack = Instruments.CreateCounter<long>("warmup.cluster.ranges.taken_back", "{range}", "Ranges taken from workers that left or fell silent");
    private static readonly Counter<long> Patterns = Instruments.CreateCounter<long>("warmup.cluster.patterns", "{pattern}", "Patterns of the ranges that are done");
    private static readonly Histogram<double> Writes = Instruments.CreateHistogram<double>("warmup.cluster.journal.write.duration", "s", "How long the journal took for a record");
    private static readonly Histogram<double> Ranges = Instruments.CreateHistogram<double>("warmup.cluster.range.duration", "s", "How long this worker took for a range");
    private static int _workers;

    public static void Joined()
    {
        Interlocked.Increment(ref _workers);
        Workers.Add(1);
    }

    public static void Left()
    {
        Interlocked.Decrement(ref _workers);
        Workers.Add(-1);
    }

    /// <summary>This process leads no more: the workers are another's.</summary>
    public static void ForgetWorkers() => Workers.Add(-Interlocked.Exchange(ref _workers, 0));

    public static void Accepted(long patterns)
    {
        RangesDone.Add(1);
        Patterns.Add(patterns);
    }

    public static void Repeated() => RangesRepeated.Add(1);

    public static void TakenBack() => RangesTakenBack.Add(1);

    public static void Written(TimeSpan time) => Writes.Record(time.TotalSeconds);

    /// <summary>A worker begins a range, and ends it when it disposes of the result.</summary>
    public static IDisposable BeginRange(long first, int count) => new RangeInProgress(Activities.StartActivity("warmup.cluster.range")?
        .SetTag("warmup.cluster.range.first", first).SetTag("warmup.cluster.range.count", count));

    private sealed class RangeInProgress(Activity? activity) : IDisposable
    {
        private readonly long _since = Stopwatch.GetTimestamp();

        public void Dispose()
        {
            Ranges.Record(Stopwatch.GetElapsedTime(_since).TotalSeconds);
            activity?.Dispose();
        }
    }
}
