using System.Diagnostics;
using Akka.Actor;

namespace Warmup.ManyMachines;

/// <summary>Asks for ranges, does them on a thread of its own, and repeats what it is doing until it gets an answer.</summary>
internal sealed class Worker : ReceiveActor, IWithTimers, IDisposable
{
    private readonly IReadOnlyList<ICanTell> _coordinators;
    private readonly string? _parts;
    private readonly ClusterSettings _settings;
    private readonly Action<bool> _leave;
    private readonly CancellationTokenSource _stop = new();
    private IMessage _state = new Ready();
    private PatternWork? _work;
    private TimeSpan _heard = Now;

    /// <param name="coordinators">Where a coordinator may be. Only one of them answers.</param>
    /// <param name="parts">The folder for parts, if there is one.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="leave">Hears once that the worker has ended, and whether all ranges are done.</param>
    public Worker(IReadOnlyList<ICanTell> coordinators, string? parts, ClusterSettings settings, Action<bool> leave)
    {
        (_coordinators, _parts, _settings, _leave) = (coordinators, parts, settings, leave);
        Receive<Work>(OnWork);
        Receive<Heard>(_ => OnHeard());
        Receive<Enough>(_ => Leave(true));
        Receive<Outcome>(OnOutcome);
        Receive<Failed>(Say);
        Receive<Remind>(_ => OnRemind());
        Receive<Leaving>(_ => Leave(false));
    }

    public ITimerScheduler Timers { get; set; } = null!;

    private static TimeSpan Now => Stopwatch.GetElapsedTime(0);

    protected override void PreStart()
    {
        Timers.StartPeriodicTimer(Remind.Instance, Remind.Instance, _settings.Tick);
        Say(_state);
    }

    public void Dispose() => _stop.Dispose();

    protected override void PostStop() => _stop.Cancel();

    /// <summary>Tells the coordinator what the worker is doing, now and at every reminder until that changes.</summary>
    private void Say(IMessage state)
    {
        _state = state;
        foreach (var coordinator in _coordinators)
        {
            coordinator.Tell(state, Self);
        }
    }

    private void OnHeard()
    {
        _heard = Now;

        // The result was added and there is nothing new. If this answers an older message, the worker just asks for the range again.
        _state = _state is Finished ? new Ready() : _state;
    }

    private void OnWork(Work order)
    {
        _heard = Now;
        var isRepeated = _state is Working || (_state is Finished done && done.Range == order.Range);
        if (isRepeated)
        {
            return;
        }

        if (Obstacle(order.Job) is { } obstacle)
        {
            // Another worker can do it: this one is of no use here.
            Console.Error.WriteLine($"{obstacle}; leaving");
            Leave(false);
            return;
        }

        _state = new Working(order.Range);
        var (known, parts, stop) = (_work, _parts, _stop.Token);

        // Not on the thread pool, which carries the messages.
        Task.Factory.StartNew(() => Do(order, known, parts, stop), stop, TaskCreationOptions.LongRunning, TaskScheduler.Default)
            .PipeTo(Self, failure: why => Failure(order.Range, why.GetBaseException()));
    }

    // A disk that is full, or not there, is this worker's own trouble: another one can do the range.
    private static IMessage Failure(int range, Exception why)
    {
        if (why is not (IOException or UnauthorizedAccessException))
        {
            return new Failed(range, Shortened(why.Message));
        }

        Console.Error.WriteLine($"the part cannot be written: {why.Message}");
        return new Leaving();
    }

    private string? Obstacle(PatternJob job) =>
        job.Version != PatternJob.OwnVersion ? $"the job is of another version than this program, {PatternJob.OwnVersion}"
        : job.HasParts && _parts is null ? "the job writes parts, and this worker has no --parts"
        : null;

    private void OnOutcome(Outcome outcome)
    {
        _work = outcome.Work;
        Say(outcome.Finished);
    }

    private void Leave(bool isDone)
    {
        Timers.CancelAll();
        if (!isDone)
        {
            Say(new Leaving());
        }

        _leave(isDone);
    }

    private static Outcome Do(Work order, PatternWork? known, string? parts, CancellationToken stop)
    {
        var work = known is not null && known.Job == order.Job ? known : new PatternWork(order.Job.Problem() is { } problem ? throw new ArgumentException(problem) : order.Job);
        if (order.Range < 0 || order.Range >= work.Ranges)
        {
            throw new ArgumentException("the job has no such range");
        }

        using var activity = ClusterTelemetry.BeginRange(work.FirstOf(order.Range), work.CountOf(order.Range));
        var tally = order.Job.HasParts ? PartFile.Write(parts!, work, order.Range, stop) : work.Of(order.Range, stop);
        return new Outcome(work, new Finished(order.Range, tally));
    }

    private static string Shortened(string message) => message.Length <= PatternJob.LongestText ? message : message[..PatternJob.LongestText];

    private void OnRemind()
    {
        if (Now - _heard > _settings.Patience)
        {
            Console.Error.WriteLine($"no coordinator has answered for {_settings.Patience.TotalSeconds} seconds; leaving");
            Leave(false);
            return;
        }

        Say(_state);
    }

    /// <summary>A range's result, and the job's tables for the next one.</summary>
    private sealed record Outcome(PatternWork Work, Finished Finished);

    private sealed class Remind
    {
        public static Remind Instance { get; } = new();
    }
}
