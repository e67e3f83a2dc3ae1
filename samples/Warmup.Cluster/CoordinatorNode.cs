using Akka.Actor;
using Akka.Cluster;
using Akka.Cluster.Tools.Singleton;

namespace Warmup.ManyMachines;

/// <summary>A process's node that leads the work, or stands by until the one that leads is lost.</summary>
internal sealed class CoordinatorNode : IAsyncDisposable
{
    /// <summary>Where workers find the coordinator, on the node that leads. On the others nobody is there.</summary>
    public const string Path = $"user/{Keeper}/{Singleton}";

    private const string Keeper = "coordinators";
    private const string Singleton = "coordinator";

    // Workers are told to leave; those that do not are left alone.
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(30);

    private readonly ActorSystem _system;
    private readonly Cluster _cluster;
    private readonly TaskCompletionSource<Tally> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _joined = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _farewell = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Starts the node and waits for workers.</summary>
    /// <param name="job">The work.</param>
    /// <param name="journal">Where progress is kept; the same one for all coordinators.</param>
    /// <param name="coordinators">The addresses of all coordinators, the same list for each; none if this is the only one. A cluster begins with the first.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="watch">Hears of everything as it happens, on the coordinator's own thread.</param>
    public CoordinatorNode(PatternJob job, JobJournal journal, IReadOnlyList<Address> coordinators, ClusterSettings settings, Action<Progress> watch)
    {
        var ranges = new PatternWork(job).Ranges;
        _system = settings.StartCoordinator(journal);
        _cluster = Cluster.Get(_system);
        var coordinator = Props.Create(() => new Coordinator(job, ranges, settings, watch, _result, _farewell));
        _system.ActorOf(
            ClusterSingletonManager.Props(coordinator, Coordinator.HandOver.Instance, ClusterSingletonManagerSettings.Create(_system).WithRole(ClusterSettings.CoordinatorRole).WithSingletonName(Singleton)),
            Keeper);
        _cluster.RegisterOnMemberUp(() => _joined.TrySetResult());
        _cluster.JoinSeedNodes(coordinators is [] ? [_cluster.SelfAddress] : coordinators);
        _ = _system.WhenTerminated.ContinueWith(
            _ => _result.TrySetException(new InvalidOperationException("this node was put out of the cluster, or found none to join")), TaskScheduler.Default);
    }

    /// <summary>The address at which workers find the node.</summary>
    public string Address => _cluster.SelfAddress.ToString();

    /// <summary>Is completed once the node is one of the coordinators' cluster: only then can it take over.</summary>
    public Task Joined => _joined.Task;

    /// <summary>The sum over all ranges, once each is done.</summary>
    public Task<Tally> Result => _result.Task;

    /// <summary>Tells the workers that everything is done, hands over where another coordinator stands by, and ends the node.</summary>
    public async ValueTask DisposeAsync()
    {
        if (_result.Task.IsCompletedSuccessfully)
        {
            // Workers that have not heard by then give up by themselves.
            await Task.WhenAny(_farewell.Task, Task.Delay(Farewell));
        }

        await CoordinatedShutdown.Get(_system).Run(CoordinatedShutdown.ClusterLeavingReason.Instance);
        _system.Dispose();
    }
}
