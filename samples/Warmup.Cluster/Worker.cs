using System.Diagnostics;
using Akka.Actor;

namespace Warmup.ManyMachines;

/// <summary>Asks for ranges, does them on a thread of its own, and repeats what it is doing until it gets an answer.</summary>
internal sealed class Worker : ReceiveActor, IWithTimers, IDisposable
{
    private readonly ICanTell _coordinator;
    private readonly ClusterSettings _settings;
    private readonly Action<bool> _leave;
    private readonly CancellationTokenSource _stop = new();
    private IMessage _state = new Ready();
    private PatternWork? _work;
    private TimeSpan _heard = Now;

    /// <param name="coordinator">Where the coordinator is.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="leave">Hears once that the worker has ended, and whether all ranges are done.</param>
    public Worker(ICanTell coordinator, ClusterSettings settings, Action<bool> leave)
    {
        _coordinator = coordinator;
        _settings = settings;
        _leave = leave;
        Receive<Work>(OnWork);
        Receive<Heard>(_ => OnHeard());
        Receive<Enough>(_ => Leave(true));
        Receive<Outcome>(OnOutcome);
        Receive<Failed>(Say);
        Receive<Remind>(_ => OnRemind());
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
        _coordinator.Tell(state, Self);
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

        _state = new Working(order.Range);
        var (known, stop) = (_work, _stop.Token);

        // Not on the thread pool, which carries the heartbeats.
        Task.Factory.StartNew(() => Do(order, known, stop), stop, TaskCreationOptions.LongRunning, TaskScheduler.Default)
            .PipeTo(Self, failure: why => new Failed(order.Range, Shortened(why.Message)));
    }

    private void OnOutcome(Outcome outcome)
    {
        _work = outcome.Work;
        Say(outcome.Finished);
    }

    private void Leave(bool isDone)
    {
        Timers.CancelAll();
        _leave(isDone);
    }

    private static Outcome Do(Work order, PatternWork? known, CancellationToken stop)
    {
        var work = known is not null && known.Job == order.Job ? known : new PatternWork(order.Job.Problem() is { } problem ? throw new ArgumentException(problem) : order.Job);
        return new Outcome(work, new Finished(order.Range, work.Of(order.Range, stop)));
    }

    private static string Shortened(string message) => message.Length <= PatternJob.LongestText ? message : message[..PatternJob.LongestText];

    private void OnRemind()
    {
        if (Now - _heard > _settings.Patience)
        {
            Console.Error.WriteLine($"the coordinator has been silent for {_settings.Patience.TotalSeconds} seconds; leaving");
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
