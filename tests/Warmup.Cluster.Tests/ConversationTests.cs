using System.Collections.Concurrent;
using Akka.Actor;
using Akka.Cluster;
using Microsoft.Data.Sqlite;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the promise that every message may be lost or come twice, and that the journal decides what counts. The test speaks one side's part,
/// and lets messages be lost by not answering them.
/// </summary>
public sealed class ConversationTests : IAsyncDisposable
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(2);

    private static readonly PatternJob Job = new() { Words = "ladder run .ends .reversed", Size = 2, Scales = "Mohanam", RangeLength = 3 };

    private readonly TestFolder _folder = new();
    private readonly ClusterSettings _settings;
    private readonly ActorSystem _system;
    private readonly TaskCompletionSource<Tally> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _farewell = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly ConcurrentQueue<Progress> _log = [];

    public ConversationTests()
    {
        _settings = new ClusterSettings { Certificate = _folder.Coordinator, Tick = TimeSpan.FromMilliseconds(50) };
        _system = _settings.StartCoordinator(_folder.Journal);
    }

    public async ValueTask DisposeAsync()
    {
        await _system.Terminate();
        _system.Dispose();
        _folder.Dispose();
    }

    private IActorRef Coordinator(int ranges, ClusterSettings? settings = null) => Coordinator(_system, Job, ranges, _result, settings);

    private IActorRef Coordinator(ActorSystem system, PatternJob job, int ranges, TaskCompletionSource<Tally> result, ClusterSettings? settings = null) =>
        system.ActorOf(Props.Create(() => new Coordinator(job, ranges, settings ?? _settings, p => _log.Enqueue(p), result, _farewell)));

    private static T Next<T>(Inbox inbox) => Assert.IsType<T>(inbox.Receive(Long));

    /// <summary>Asks until there is a range.</summary>
    private static int Ask(Inbox worker, IActorRef coordinator)
    {
        object answer;
        do
        {
            worker.Send(coordinator, new Ready());
        }
        while ((answer = worker.Receive(Long)) is Heard);
        return Assert.IsType<Work>(answer).Range;
    }

    private async Task UntilAccepted(int ranges)
    {
        while (_log.OfType<Progress.Accepted>().Count() < ranges)
        {
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task A_result_that_comes_twice_counts_once()
    {
        var coordinator = Coordinator(2);
        var worker = Inbox.Create(_system);
        worker.Send(coordinator, new Ready());
        Assert.Equal(new Work(Job, 0), Next<Work>(worker));
        worker.Send(coordinator, new Ready());
        Assert.Equal(0, Next<Work>(worker).Range);
        worker.Send(coordinator, new Working(0));
        Next<Heard>(worker);
        var first = new Tally { Patterns = 3, Notes = 10, Checksum = 5 };
        worker.Send(coordinator, new Finished(0, first));
        Assert.Equal(1, Next<Work>(worker).Range);
        worker.Send(coordinator, new Finished(0, first));
        Assert.Equal(1, Next<Work>(worker).Range);
        worker.Send(coordinator, new Finished(1, new Tally { Patterns = 1, Notes = 4, Checksum = ulong.MaxValue }));
        Assert.Equal(new Tally { Patterns = 4, Notes = 14, Checksum = 4 }, await _result.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
        Assert.IsType<Heard>(worker.Receive(Long)); // nothing is left, and it was not in the journal yet
        Assert.False(_farewell.Task.IsCompleted);
        worker.Send(coordinator, new Ready());
        Next<Enough>(worker);
        await _farewell.Task.WaitAsync(Long, TestContext.Current.CancellationToken);
        Assert.Equal([0, 1], _log.OfType<Progress.Accepted>().Select(a => a.Range));
        Assert.Equal(0, Assert.Single(_log.OfType<Progress.Repeated>()).Range);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_worker_that_leaves_or_falls_silent_has_its_range_done_by_another_and_may_still_deliver(bool leaves)
    {
        var coordinator = Coordinator(1, _settings with { Silence = leaves ? Long : TimeSpan.FromMilliseconds(400) });
        var gone = Inbox.Create(_system);
        Assert.Equal(0, Ask(gone, coordinator));
        if (leaves)
        {
            gone.Send(coordinator, new Leaving());
        }

        var other = Inbox.Create(_system);
        Assert.Equal(0, Ask(other, coordinator));
        Assert.Equal(1, Assert.Single(_log.OfType<Progress.Lost>()).TakenBack);
        gone.Send(coordinator, new Finished(0, new Tally { Patterns = 3 }));
        other.Send(coordinator, new Finished(0, new Tally { Patterns = 3 }));
        Assert.Equal(3, (await _result.Task.WaitAsync(Long, TestContext.Current.CancellationToken)).Patterns);
    }

    [Fact]
    public async Task A_range_that_nobody_can_do_ends_the_run()
    {
        var coordinator = Coordinator(2);
        var worker = Inbox.Create(_system);
        Ask(worker, coordinator);
        worker.Send(coordinator, new Failed(0, "no such thing"));
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => _result.Task.WaitAsync(Long));
        Assert.Equal("range 0 failed: no such thing", failure.Message);
    }

    [Fact]
    public async Task A_coordinator_that_is_started_again_goes_on_where_the_journal_ends()
    {
        var worker = Inbox.Create(_system);
        var other = Inbox.Create(_system);
        var first = Coordinator(4);
        Assert.Equal(0, Ask(worker, first));
        Assert.Equal(1, Ask(other, first));
        worker.Send(first, new Finished(0, new Tally { Patterns = 3, Checksum = 7 }));
        Assert.Equal(2, Next<Work>(worker).Range);
        await UntilAccepted(1);
        await first.GracefulStop(Long);
        await Assert.ThrowsAsync<InvalidOperationException>(() => _result.Task);

        // The second one knows what is done, and learns from the workers what they have.
        var result = new TaskCompletionSource<Tally>();
        var second = Coordinator(_system, Job, 4, result);
        other.Send(second, new Working(1));
        Next<Heard>(other);
        Assert.Equal(2, Ask(worker, second));
        worker.Send(second, new Finished(0, new Tally { Patterns = 3, Checksum = 7 })); // lost on its way, and sent again
        Assert.Equal(2, Next<Work>(worker).Range);
        worker.Send(second, new Finished(2, new Tally { Patterns = 3, Checksum = 1 }));
        Assert.Equal(3, Next<Work>(worker).Range);
        worker.Send(second, new Finished(3, new Tally { Patterns = 2, Checksum = 1 }));
        other.Send(second, new Finished(1, new Tally { Patterns = 3, Checksum = 1 }));
        Assert.Equal(new Tally { Patterns = 11, Checksum = 10 }, await result.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
        Assert.Equal([new Progress.Leads(0, 4), new Progress.Leads(1, 4)], _log.OfType<Progress.Leads>());

        // A third one finds everything done.
        var again = new TaskCompletionSource<Tally>();
        Coordinator(_system, Job, 4, again);
        Assert.Equal(await result.Task, await again.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Another_job_on_the_same_journal_is_refused()
    {
        var first = Coordinator(2);
        Ask(Inbox.Create(_system), first);
        await first.GracefulStop(Long);
        foreach (var other in (PatternJob[])[Job with { Size = 1 }, Job with { Version = "1.0" }, Job with { HasParts = true }, Job with { RangeLength = 4 }])
        {
            var result = new TaskCompletionSource<Tally>();
            Coordinator(_system, other, 2, result);
            var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => result.Task.WaitAsync(Long));
            Assert.StartsWith("the journal holds another job", failure.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Of_two_coordinators_at_once_the_journal_believes_one()
    {
        using var elsewhere = (_settings with { Certificate = _folder.Worker }).StartCoordinator(_folder.Journal);
        var first = Coordinator(3);
        var worker = Inbox.Create(_system);
        Assert.Equal(0, Ask(worker, first));
        var late = new TaskCompletionSource<Tally>();
        var second = Coordinator(elsewhere, Job, 3, late);
        var cutOff = Inbox.Create(elsewhere);
        Assert.Equal(0, Ask(cutOff, second));

        // The one that writes first goes on; the other one's record has a number that is taken.
        worker.Send(first, new Finished(0, new Tally { Patterns = 3 }));
        await UntilAccepted(1);
        cutOff.Send(second, new Finished(0, new Tally { Patterns = 3 }));
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => late.Task.WaitAsync(Long));
        Assert.StartsWith("the journal did not take a record: another coordinator leads", failure.Message, StringComparison.Ordinal);
        Assert.Equal(1, Next<Work>(worker).Range);
        worker.Send(first, new Finished(1, new Tally { Patterns = 3 }));
        Assert.Equal(2, Next<Work>(worker).Range);
        worker.Send(first, new Finished(2, new Tally { Patterns = 1 }));
        Assert.Equal(7, (await _result.Task.WaitAsync(Long, TestContext.Current.CancellationToken)).Patterns);
        await elsewhere.Terminate();
    }

    [Fact]
    public async Task A_snapshot_says_what_the_records_before_it_say()
    {
        const int Ranges = 26;
        var first = Coordinator(Ranges, _settings with { RecordsBetweenSnapshots = 10 });
        var worker = Inbox.Create(_system);
        for (var i = 0; i < 13; i++)
        {
            worker.Send(first, new Finished(2 * i, new Tally { Patterns = 1, Checksum = (ulong)i }));
            await UntilAccepted(i + 1); // so that each has a record of its own
        }

        using (var database = new SqliteConnection($"Data Source={_folder.At("journal.db")}"))
        {
            database.Open();
            using var command = database.CreateCommand();
            command.CommandText = "select max(sequence_number) from snapshot";
            object? saved;
            while ((saved = command.ExecuteScalar()) is DBNull)
            {
                await Task.Delay(10, TestContext.Current.CancellationToken);
            }

            Assert.Equal(10L, saved);
            await first.GracefulStop(Long);

            // Without the records that it stands for, the rest must be enough.
            command.CommandText = "delete from journal where sequence_number <= 10";
            Assert.Equal(10, command.ExecuteNonQuery());
        }

        var result = new TaskCompletionSource<Tally>();
        var second = Coordinator(_system, Job, Ranges, result);
        for (var i = 0; i < 13; i++)
        {
            worker.Send(second, new Finished((2 * i) + 1, new Tally { Patterns = 1 }));
        }

        Assert.Equal(new Tally { Patterns = Ranges, Checksum = 13 * 12 / 2 }, await result.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
        Assert.Contains(new Progress.Leads(13, Ranges), _log);
    }

    [Fact]
    public async Task A_worker_says_what_it_does_until_it_is_answered()
    {
        var coordinator = Inbox.Create(_system);
        var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        var worker = Worker(coordinator, _settings, left);
        Next<Ready>(coordinator);
        Next<Ready>(coordinator);
        coordinator.Send(worker, new Work(Job, 1));
        Assert.Equal(new PatternWork(Job).Of(1, CancellationToken.None), Delivered(coordinator, 1));
        Assert.Equal(new PatternWork(Job).Of(1, CancellationToken.None), Delivered(coordinator, 1));
        coordinator.Send(worker, new Work(Job, 1)); // an old message: it is done
        coordinator.Send(worker, new Heard());
        for (var said = coordinator.Receive(Long); said is not Ready; said = coordinator.Receive(Long))
        {
            Assert.IsType<Finished>(said);
        }

        coordinator.Send(worker, new Work(Job with { RangeLength = 0 }, 0));
        object last;
        while ((last = coordinator.Receive(Long)) is Ready or Working)
        {
        }

        Assert.Contains("between 1 and 1000000, not 0", Assert.IsType<Failed>(last).Why, StringComparison.Ordinal);
        coordinator.Send(worker, new Enough());
        Assert.True(await left.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_worker_that_hears_nothing_gives_up_and_says_so()
    {
        var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        var coordinator = Inbox.Create(_system);
        Worker(coordinator, _settings with { Patience = TimeSpan.FromMilliseconds(200) }, left);
        Assert.False(await left.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
        object last;
        while ((last = coordinator.Receive(Long)) is Ready)
        {
        }

        Assert.IsType<Leaving>(last);
    }

    [Fact]
    public async Task A_worker_that_cannot_do_the_job_leaves_it_to_others()
    {
        foreach (var (job, parts) in ((PatternJob, string?)[])[(Job with { Version = "another" }, null), (Job with { HasParts = true }, null), (Job with { HasParts = true }, _folder.At("nowhere"))])
        {
            var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
            var coordinator = Inbox.Create(_system);
            coordinator.Send(Worker(coordinator, _settings, left, parts), new Work(job, 0));
            Assert.False(await left.Task.WaitAsync(Long, TestContext.Current.CancellationToken));
        }
    }

    [Fact]
    public void The_settings_reach_the_engine()
    {
        // A mistyped name in the engine's configuration would be passed over in silence.
        var cluster = Cluster.Get(_system).Settings;
        Assert.Equal([ClusterSettings.CoordinatorRole], cluster.Roles);
        Assert.Equal(_settings.Silence, cluster.FailureDetectorConfig.GetTimeSpan("acceptable-heartbeat-pause"));
        Assert.Equal(_settings.Patience, cluster.ShutdownAfterUnsuccessfulJoinSeedNodes);
        Assert.True(cluster.RunCoordinatedShutdownWhenDown);
        Assert.Equal(typeof(PutOutUnreachable), cluster.DowningProviderType);
        Assert.Equal(_settings.Silence, _system.Settings.Config.GetTimeSpan(PutOutUnreachable.Setting));
        Assert.Equal(("akka.ssl.tcp", "127.0.0.1"), (Cluster.Get(_system).SelfAddress.Protocol, Cluster.Get(_system).SelfAddress.Host));
        Assert.True(Cluster.Get(_system).SelfAddress.Port > 0);
        Assert.Equal(64_000, _system.Settings.Config.GetByteSize("akka.remote.dot-netty.tcp.maximum-frame-size"));
        Assert.True(_system.Settings.Config.GetBoolean("akka.remote.dot-netty.tcp.ssl.require-mutual-authentication"));
        Assert.False(_system.Settings.Config.GetBoolean("akka.coordinated-shutdown.exit-clr"));
    }

    private IActorRef Worker(Inbox coordinator, ClusterSettings settings, TaskCompletionSource<bool> left, string? parts = null) =>
        _system.ActorOf(Props.Create(() => new Worker(new ICanTell[] { coordinator.Receiver }, parts, settings, done => left.TrySetResult(done))));

    /// <summary>The next result, whatever was said before it.</summary>
    private static Tally Delivered(Inbox coordinator, int range)
    {
        object said;
        while ((said = coordinator.Receive(Long)) is not Finished)
        {
            Assert.True(said is Ready || said is Working working && working.Range == range, said.ToString());
        }

        var finished = (Finished)said;
        Assert.Equal(range, finished.Range);
        return finished.Tally;
    }
}
