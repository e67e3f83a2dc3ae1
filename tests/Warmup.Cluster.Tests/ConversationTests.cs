using Akka.Actor;
using Akka.Cluster;
using Akka.Cluster.SBR;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the promise that every message may be lost or come twice. The test speaks one side's part, and lets messages be lost by not
/// answering them.
/// </summary>
public sealed class ConversationTests : IAsyncDisposable
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(2);

    private static readonly PatternJob Job = new() { Words = "ladder run .ends .reversed", Size = 2, Scales = "Mohanam", RangeLength = 3 };

    private readonly ClusterSettings _settings = new() { Tick = TimeSpan.FromMilliseconds(50) };
    private readonly ActorSystem _system;
    private readonly TaskCompletionSource<Tally> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly List<Progress> _log = [];

    public ConversationTests() => _system = _settings.Start(ClusterSettings.WorkerRole);

    public async ValueTask DisposeAsync()
    {
        await _system.Terminate();
        _system.Dispose();
    }

    private IActorRef Coordinator(int ranges, int workers) =>
        _system.ActorOf(Props.Create(() => new Coordinator(Job, ranges, workers, _settings, p => _log.Add(p), _result)));

    private static T Next<T>(Inbox inbox) => Assert.IsType<T>(inbox.Receive(Long));

    [Fact]
    public async Task A_result_that_comes_twice_counts_once()
    {
        var coordinator = Coordinator(2, 1);
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
        var second = new Tally { Patterns = 1, Notes = 4, Checksum = ulong.MaxValue };
        worker.Send(coordinator, new Finished(1, second));
        Next<Enough>(worker);
        Assert.Equal(new Tally { Patterns = 4, Notes = 14, Checksum = 4 }, await _result.Task.WaitAsync(Long));
        Assert.Equal([0, 1], _log.OfType<Progress.Accepted>().Select(a => a.Range));
        Assert.Equal(0, Assert.Single(_log.OfType<Progress.Repeated>()).Range);
    }

    [Fact]
    public async Task A_worker_that_ends_has_its_range_done_by_another_and_may_still_deliver()
    {
        var coordinator = Coordinator(1, 2);
        var gone = Inbox.Create(_system);
        gone.Send(coordinator, new Ready());
        Next<Heard>(gone); // it waits for the second one
        var other = Inbox.Create(_system);
        other.Send(coordinator, new Ready());
        Assert.Equal(0, Next<Work>(gone).Range);
        Next<Heard>(other);
        var deadRef = gone.Receiver;
        _system.Stop(deadRef);
        for (var answer = other.Receive(Long, coordinator); answer is Heard; answer = other.Receive(Long, coordinator))
        {
        }

        coordinator.Tell(new Finished(0, new Tally { Patterns = 3 }), deadRef);
        other.Send(coordinator, new Finished(0, new Tally { Patterns = 3 }));
        Assert.Equal(3, (await _result.Task.WaitAsync(Long)).Patterns);
        Next<Enough>(other);
    }

    [Fact]
    public async Task A_range_that_nobody_can_do_ends_the_run()
    {
        var coordinator = Coordinator(2, 1);
        var worker = Inbox.Create(_system);
        worker.Send(coordinator, new Ready());
        Next<Work>(worker);
        worker.Send(coordinator, new Failed(0, "no such thing"));
        var failure = await Assert.ThrowsAsync<InvalidOperationException>(() => _result.Task.WaitAsync(Long));
        Assert.Equal("range 0 failed: no such thing", failure.Message);
    }

    [Fact]
    public async Task A_worker_says_what_it_does_until_it_is_answered()
    {
        var coordinator = Inbox.Create(_system);
        var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        var worker = _system.ActorOf(Props.Create(() => new Worker(coordinator.Receiver, _settings, done => left.TrySetResult(done))));
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
        Assert.True(await left.Task.WaitAsync(Long));
    }

    [Fact]
    public async Task A_worker_that_hears_nothing_gives_up()
    {
        var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        var settings = _settings with { Patience = TimeSpan.FromMilliseconds(200) };
        var coordinator = Inbox.Create(_system);
        _system.ActorOf(Props.Create(() => new Worker(coordinator.Receiver, settings, done => left.TrySetResult(done))));
        Assert.False(await left.Task.WaitAsync(Long));
    }

    [Fact]
    public void The_settings_reach_the_engine()
    {
        // A mistyped name in the engine's configuration would be passed over in silence.
        var cluster = Cluster.Get(_system).Settings;
        Assert.Equal([ClusterSettings.WorkerRole], cluster.Roles);
        Assert.Equal(_settings.HeartbeatPause, cluster.FailureDetectorConfig.GetTimeSpan("acceptable-heartbeat-pause"));
        Assert.Equal(_settings.Patience, cluster.ShutdownAfterUnsuccessfulJoinSeedNodes);
        Assert.True(cluster.RunCoordinatedShutdownWhenDown);
        var resolver = new SplitBrainResolverSettings(_system.Settings.Config);
        Assert.Equal(_settings.DownAfter, resolver.DowningStableAfter);
        Assert.Equal(SplitBrainResolverSettings.KeepOldestName, resolver.DowningStrategy);
        Assert.Equal(ClusterSettings.CoordinatorRole, resolver.KeepOldestSettings.Role);
        Assert.False(resolver.KeepOldestSettings.DownIfAlone);
        Assert.Equal("127.0.0.1", Cluster.Get(_system).SelfAddress.Host);
        Assert.True(Cluster.Get(_system).SelfAddress.Port > 0);
        Assert.Equal(64_000, _system.Settings.Config.GetByteSize("akka.remote.dot-netty.tcp.maximum-frame-size"));
        Assert.False(_system.Settings.Config.GetBoolean("akka.coordinated-shutdown.exit-clr"));
    }

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

/// <summary>Asking again until there is work.</summary>
internal static class InboxExtensions
{
    public static object Receive(this Inbox inbox, TimeSpan timeout, IActorRef coordinator)
    {
        inbox.Send(coordinator, new Ready());
        return inbox.Receive(timeout);
    }
}
