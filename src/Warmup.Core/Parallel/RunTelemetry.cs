using System.Diagnostics;
using System.Diagnostics.Metrics;
using System.Reflection;

namespace Warmup;

/// <summary>
/// What a run tells to those who listen, by names after the OpenTelemetry conventions; docs/telemetry.md lists them. Where nobody listens, nothing is
/// counted and no clock is read.
/// </summary>
internal sealed class RunTelemetry
{
    private static readonly string? Version = typeof(RunTelemetry).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0];
    private static readonly ActivitySource Source = new(Telemetry.Name, Version);
    private static readonly System.Diagnostics.Metrics.Meter Counters = new(Telemetry.Name, Version);
    private static readonly UpDownCounter<long> Active = Counters.CreateUpDownCounter<long>("warmup.run.active", "{run}", "Runs over many items that have begun and not ended.");
    private static readonly Counter<long> Items = Counters.CreateCounter<long>("warmup.run.items", "{item}", "Items whose result was taken; error.type names what a failed one threw.");

    private readonly Activity? _activity;
    private long _items;

    private RunTelemetry(Activity? activity) => _activity = activity;

    /// <summary>A run begins.</summary>
    public static RunTelemetry Begin(OrderedParallel run)
    {
        Active.Add(1);
        var outer = Activity.Current;
        var activity = Source.StartActivity("warmup.run");
        if (activity is not null)
        {
            activity.SetTag("warmup.run.workers", run.Workers).SetTag("warmup.run.look_ahead", run.LookAhead);

            // The run goes on while its caller does other things, which are no part of it.
            Activity.Current = outer;
        }

        return new RunTelemetry(activity);
    }

    /// <summary>A result was taken, or what an item threw instead.</summary>
    public void Taken(Exception? failure)
    {
        _items++;
        if (failure is null)
        {
            Items.Add(1);
            return;
        }

        var type = failure.GetType().FullName;
        Items.Add(1, new KeyValuePair<string, object?>("error.type", type));
        _activity?.SetStatus(ActivityStatusCode.Error).SetTag("error.type", type);
    }

    /// <summary>The run has ended, or was left.</summary>
    public void End()
    {
        Active.Add(-1);
        _activity?.SetTag("warmup.run.items", _items).Dispose();
    }
}
