using System.Diagnostics;
using Akka.Actor;
using Akka.Persistence;

namespace Warmup.ManyMachines;

/// <summary>What the coordinator tells whoever watches it.</summary>
internal abstract record Progress
{
    /// <summary>This coordinator leads from now on; so many ranges are done already.</summary>
    public sealed record Leads(int Done, int Ranges) : Progress;

    /// <summary>A worker has spoken for the first time.</summary>
    public sealed record Joined(Address Worker) : Progress;

    /// <summary>The result of a range is in the journal.</summary>
    public sealed record Accepted(int Range, int Done, int Ranges) : Progress;

    /// <summary>The result of a range came again; it changed nothing.</summary>
    public sealed record Repeated(Address Worker, int Range) : Progress;

    /// <summary>A worker left or fell silent.</summary>
    public sealed record Lost(Address Worker, string Why, int TakenBack) : Progress;
}

/// <summary>
/// Hands out ranges, takes back those of lost workers, and writes each range's first result into the journal. It is the only one of its cluster;
/// should there be a second one for a while, the journal takes one record of each number, and whoever comes too late ends.
/// </summary>
/// <remarks>
/// A worker gets its next range before its result is in the journal, so that nobody waits for the disk. If this coordinator is killed before,
/// the range is done again: it counts once, by what the journal says.
/// </remarks>
internal sealed class Coordinator : ReceivePersistentActor, IWithTimers
{
    // A record of this many results stays far below the longest one.
    private const int MostInRecord = 500;

    // The most stretches for which a snapshot is made: the sample's own setting.
    private const int MostStretches = 10_000;

    // How many ticks a worker that is not known yet has to hear that everything is done.
    private const int FarewellTicks = 3;

    private readonly PatternJob _job;
    private readonly RangeLedger<IActorRef> _ledger;
    private readonly ClusterSettings _settings;
    private readonly Action<Progress> _watch;
    private readonly TaskCompletionSource<Tally> _result;
    private readonly TaskCompletionSource _farewell;
    private readonly Dictionary<IActorRef, TimeSpan> _heard = [];
    private readonly Queue<Finished> _unwritten = [];
    private Tally _sum = Tally.Empty;
    private PatternJob? _begun;
    private int _written;
    private bool _isWriting;
    private bool _isLeaving;
    private int _ticksDone;

    /// <param name="job">The work.</param>
    /// <param name="ranges">How many ranges it has.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="watch">Hears of everything as it happens, on the coordinator's own thread.</param>
    /// <param name="result">Gets the sum once every range is in the journal, or why that will not be.</param>
    /// <param name="farewell">Is completed once all workers have heard that everything is done.</param>
    public Coordinator(PatternJob job, int ranges, ClusterSettings settings, Action<Progress> watch, TaskCompletionSource<Tally> result, TaskCompletionSource farewell)
    {
        (_job, _settings, _watch, _result, _farewell) = (job, settings, watch, result, farewell);
        _ledger = new RangeLedger<IActorRef>(ranges);
        Recover<SnapshotOffer>(offer => Restore((Standing)offer.Snapshot));
        Recover<Begun>(begun => _begun = begun.Job);
        Recover<Done>(Restore);
        Recover<RecoveryCompleted>(_ => OnRecovered());
        Command<Ready>(_ => OnReady());
        Command<Working>(OnWorking);
        Command<Finished>(OnFinished);
        Command<Failed>(failed => Fail($"range {failed.Range} failed: {failed.Why}"));
        Command<Leaving>(_ => Lose(Sender, "has left"));
        Command<LookAround>(_ => OnLookAround());
        Command<HandOver>(_ => OnHandOver());
        Command<SaveSnapshotSuccess>(saved => DeleteSnapshots(new SnapshotSelectionCriteria(saved.Metadata.SequenceNr - 1)));
        Command<SaveSnapshotFailure>(failed => Console.Error.WriteLine($"warning: no snapshot was saved, which costs only time when the journal is read: {failed.Cause.Message}"));
        Command<DeleteSnapshotsSuccess>(_ => { });
        Command<DeleteSnapshotsFailure>(_ => { });
    }

    public override string PersistenceId => JobJournal.Name;

    public ITimerScheduler Timers { get; set; } = null!;

    private static TimeSpan Now => Stopwatch.GetElapsedTime(0);

    protected override void OnPersistFailure(Exception cause, object @event, long sequenceNr) =>
        Fail("the journal did not take a record: another coordinator leads, or the database cannot be reached", cause);

    protected override void OnPersistRejected(Exception cause, object @event, long sequenceNr) => Fail("the journal rejected a record", cause);

    protected override void OnRecoveryFailure(Exception reason, object? message = null) => Fail("the journal cannot be read", reason);

    // After a fault, memory and journal may differ: the process ends, and another reads the journal.
    protected override void PreRestart(Exception reason, object message)
    {
        _result.TrySetException(reason);
        base.PreRestart(reason, message);
    }

    protected override void PostStop()
    {
        ClusterTelemetry.ForgetWorkers();
        if (!_isLeaving)
        {
            _result.TrySetException(new InvalidOperationException("the coordinator was stopped before all ranges were done"));
        }
    }

    private static Address AddressOf(IActorRef worker) => worker.Path.Address;

    private void Restore(Standing standing)
    {
        _begun = standing.Job;
        _sum = standing.Sum;
        foreach (var stretch in standing.Stretches)
        {
            for (var range = stretch[0]; range <= stretch[1]; range++)
            {
                _written += _ledger.Accept(range) ? 1 : 0;
            }
        }
    }

    private void Restore(Done done)
    {
        foreach (var finished in done.Ranges)
        {
            if (_ledger.Accept(finished.Range))
            {
                _sum += finished.Tally;
                _written++;
            }
        }
    }

    private void OnRecovered()
    {
        if (_begun is null)
        {
            Persist(new Begun(_job), _ => Lead());
        }
        else if (_begun != _job)
        {
            Fail($"the journal holds another job ({_begun}), not {_job}; choose another journal, or start it as that one was");
        }
        else
        {
            Lead();
        }
    }

    private void Lead()
    {
        Timers.StartPeriodicTimer(LookAround.Instance, LookAround.Instance, _settings.Tick);
        _watch(new Progress.Leads(_written, _ledger.Ranges));
        EndIfComplete();
    }

    private void OnReady()
    {
        Know(Sender);
        Give(Sender);
    }

    private void OnWorking(Working working)
    {
        Know(Sender);
        _ledger.Hold(Sender, working.Range);
        Sender.Tell(new Heard());
    }

    private void OnFinished(Finished finished)
    {
        Know(Sender);
        if (_ledger.Accept(Sender, finished.Range))
        {
            _unwritten.Enqueue(finished);
            WriteResults();
        }
        else
        {
            ClusterTelemetry.Repeated();
            _watch(new Progress.Repeated(AddressOf(Sender), finished.Range));
        }

        Give(Sender);
    }

    /// <summary>Takes note of a worker, also of one that was lost and is there again.</summary>
    private void Know(IActorRef worker)
    {
        if (!_heard.ContainsKey(worker))
        {
            ClusterTelemetry.Joined();
            _watch(new Progress.Joined(AddressOf(worker)));
        }

        _heard[worker] = Now;
    }

    private void Give(IActorRef worker)
    {
        if (_written == _ledger.Ranges)
        {
            worker.Tell(new Enough());
            Forget(worker);
            return;
        }

        IMessage answer = _ledger.Hand(worker) is { } range ? new Work(_job, range) : new Heard();
        worker.Tell(answer);
    }

    /// <summary>Writes all results that have come in as one record, one record at a time.</summary>
    private void WriteResults()
    {
        if (_isWriting || _unwritten.Count == 0)
        {
            return;
        }

        _isWriting = true;
        var ranges = new List<Finished>();
        while (ranges.Count < MostInRecord && _unwritten.TryDequeue(out var finished))
        {
            ranges.Add(finished);
        }

        var since = Stopwatch.GetTimestamp();
        PersistAsync(new Done(ranges), done => OnWritten(done, Stopwatch.GetElapsedTime(since)));
    }

    private void OnWritten(Done done, TimeSpan time)
    {
        _isWriting = false;
        ClusterTelemetry.Written(time);
        foreach (var finished in done.Ranges)
        {
            _sum += finished.Tally;
            _written++;
            ClusterTelemetry.Accepted(finished.Tally.Patterns);
            _watch(new Progress.Accepted(finished.Range, _written, _ledger.Ranges));
        }

        // A snapshot says what is in the journal up to here, and no more.
        if (LastSequenceNr % _settings.RecordsBetweenSnapshots == 0 && _ledger.Stretches(_unwritten.Select(f => f.Range).ToHashSet()) is { Count: <= MostStretches } stretches)
        {
            SaveSnapshot(new Standing(_job, _sum, stretches));
        }

        WriteResults();
        EndIfComplete();
        LeaveIfWritten();
    }

    private void EndIfComplete()
    {
        if (_written == _ledger.Ranges)
        {
            _result.TrySetResult(_sum);
        }
    }

    private void OnLookAround()
    {
        foreach (var (worker, heard) in _heard)
        {
            if (Now - heard > _settings.Silence)
            {
                Lose(worker, "has fallen silent");
            }
        }

        if (_written == _ledger.Ranges && ++_ticksDone >= FarewellTicks && _heard.Count == 0)
        {
            _farewell.TrySetResult();
        }
    }

    private void Lose(IActorRef worker, string why)
    {
        Forget(worker);
        if (_ledger.Leave(worker) is not null)
        {
            ClusterTelemetry.TakenBack();
            _watch(new Progress.Lost(AddressOf(worker), why, _ledger.TakenBack));
        }
    }

    private void Forget(IActorRef worker)
    {
        if (_heard.Remove(worker))
        {
            ClusterTelemetry.Left();
        }
    }

    /// <summary>Another coordinator takes over: what is being written is written first.</summary>
    private void OnHandOver()
    {
        _isLeaving = true;
        LeaveIfWritten();
    }

    private void LeaveIfWritten()
    {
        if (_isLeaving && !_isWriting)
        {
            Context.Stop(Self);
        }
    }

    private void Fail(string why, Exception? cause = null)
    {
        _result.TrySetException(new InvalidOperationException(cause is null ? why : $"{why}: {cause.Message}", cause));
        Context.Stop(Self);
    }

    /// <summary>The end of a coordinator whose node leaves.</summary>
    internal sealed class HandOver
    {
        public static HandOver Instance { get; } = new();
    }

    private sealed class LookAround
    {
        public static LookAround Instance { get; } = new();
    }
}
