using System.Diagnostics;
using Akka.Actor;
using Akka.Cluster;

namespace Warmup.ManyMachines;

/// <summary>What the coordinator tells whoever watches it.</summary>
internal abstract record Progress
{
    /// <summary>A worker has asked for its first range.</summary>
    public sealed record Joined(Address Worker) : Progress;

    /// <summary>The result of a range was added.</summary>
    public sealed record Accepted(Address Worker, int Range, int Done, int Ranges) : Progress;

    /// <summary>The result of a range came again; it changed nothing.</summary>
    public sealed record Repeated(Address Worker, int Range) : Progress;

    /// <summary>A worker left or fell silent.</summary>
    public sealed record Lost(Address Worker, string Why, int TakenBack) : Progress;
}

/// <summary>Hands out ranges, takes back those of lost workers, and adds up the results, each range once.</summary>
internal sealed class Coordinator : ReceiveActor, IWithTimers
{
    private readonly PatternJob _job;
    private readonly RangeLedger<IActorRef> _ledger;
    private readonly int _workersNeeded;
    private readonly Action<Progress> _watch;
    private readonly TaskCompletionSource<Tally> _result;
    private readonly HashSet<IActorRef> _workers = [];
    private readonly ClusterSettings _settings;
    private readonly Cluster _cluster = Cluster.Get(Context.System);
    private bool _begun;
    private Tally _sum = Tally.Empty;

    public Coordinator(PatternJob job, int ranges, int workersNeeded, ClusterSettings settings, Action<Progress> watch, TaskCompletionSource<Tally> result)
    {
        _job = job;
        _ledger = new RangeLedger<IActorRef>(ranges, settings.Silence);
        _workersNeeded = workersNeeded;
        _settings = settings;
        _watch = watch;
        _result = result;
        Receive<Ready>(_ => OnReady());
        Receive<Working>(_ => OnWorking());
        Receive<Finished>(OnFinished);
        Receive<Failed>(failed => result.TrySetException(new InvalidOperationException($"range {failed.Range} failed: {failed.Why}")));
        Receive<Terminated>(gone => Lose(gone.ActorRef, "has left"));
        Receive<ClusterEvent.UnreachableMember>(gone => OnUnreachable(gone.Member.Address));
        Receive<ClusterEvent.IReachabilityEvent>(_ => { });
        Receive<LookAround>(_ => OnLookAround());
    }

    public ITimerScheduler Timers { get; set; } = null!;

    private static TimeSpan Now => Stopwatch.GetElapsedTime(0);

    protected override void PreStart()
    {
        _cluster.Subscribe(Self, ClusterEvent.SubscriptionInitialStateMode.InitialStateAsEvents, typeof(ClusterEvent.IReachabilityEvent));
        Timers.StartPeriodicTimer(LookAround.Instance, LookAround.Instance, _settings.Tick);
    }

    // A fault here would lose the sum: an error is better than a wrong result.
    protected override void PreRestart(Exception reason, object message)
    {
        _result.TrySetException(reason);
        base.PreRestart(reason, message);
    }

    protected override void PostStop()
    {
        _cluster.Unsubscribe(Self);
        _result.TrySetException(new InvalidOperationException("the coordinator was stopped before all ranges were done"));
    }

    private static Address AddressOf(IActorRef worker) => worker.Path.Address;

    private void OnReady()
    {
        Know(Sender);
        if (_begun)
        {
            Give(Sender);
        }
        else if (_workers.Count >= _workersNeeded)
        {
            _begun = true;
            _workers.ToList().ForEach(Give);
        }
        else
        {
            Sender.Tell(new Heard());
        }
    }

    /// <summary>Takes note of a worker, also of one that was lost and is there again.</summary>
    private void Know(IActorRef worker)
    {
        if (_workers.Add(worker))
        {
            Context.Watch(worker);
            _watch(new Progress.Joined(AddressOf(worker)));
        }
    }

    private void OnWorking()
    {
        Know(Sender);
        _ledger.Hear(Sender, Now);
        Sender.Tell(new Heard());
    }

    private void OnFinished(Finished finished)
    {
        Know(Sender);
        if (_ledger.Accept(Sender, finished.Range))
        {
            _sum += finished.Tally;
            _watch(new Progress.Accepted(AddressOf(Sender), finished.Range, _ledger.Done, _ledger.Ranges));
            if (_ledger.IsComplete)
            {
                _result.TrySetResult(_sum);
                _workers.ToList().ForEach(Give);
                return;
            }
        }
        else
        {
            _watch(new Progress.Repeated(AddressOf(Sender), finished.Range));
        }

        Give(Sender);
    }

    private void Give(IActorRef worker)
    {
        IMessage answer = _ledger.IsComplete ? new Enough()
            : _ledger.Hand(worker, Now) is { } range ? new Work(_job, range)
            : new Heard();
        worker.Tell(answer);
    }

    private void OnUnreachable(Address address)
    {
        foreach (var worker in _workers.Where(w => AddressOf(w) == address).ToList())
        {
            // If it can be reached again it says so, and is welcome.
            Lose(worker, "cannot be reached");
        }
    }

    private void OnLookAround()
    {
        foreach (var worker in _ledger.Expire(Now))
        {
            _watch(new Progress.Lost(AddressOf(worker), "has fallen silent", _ledger.TakenBack));
        }
    }

    private void Lose(IActorRef worker, string why)
    {
        _workers.Remove(worker);
        if (_ledger.Leave(worker) is not null)
        {
            _watch(new Progress.Lost(AddressOf(worker), why, _ledger.TakenBack));
        }
    }

    private sealed class LookAround
    {
        public static LookAround Instance { get; } = new();
    }
}
