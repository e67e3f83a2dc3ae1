using Akka.Actor;
using Akka.Cluster;

namespace Warmup.ManyMachines;

/// <summary>A process's node with the coordinator: the first of its cluster.</summary>
internal sealed class CoordinatorNode : IAsyncDisposable
{
    public const string ActorName = "coordinator";

    // Workers are told to leave; those that do not are left alone.
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(100);

    private readonly ActorSystem _system;
    private readonly Cluster _cluster;
    private readonly TaskCompletionSource<Tally> _result = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Starts the node and waits for workers.</summary>
    /// <param name="job">The work.</param>
    /// <param name="workersNeeded">How many workers must be there before the first range is handed out.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="watch">Hears of everything as it happens, on the coordinator's own thread.</param>
    public CoordinatorNode(PatternJob job, int workersNeeded, ClusterSettings settings, Action<Progress> watch)
    {
        var ranges = new PatternWork(job).Ranges;
        _system = settings.Start(ClusterSettings.CoordinatorRole);
        _cluster = Cluster.Get(_system);
        _cluster.Join(_cluster.SelfAddress);
        _system.ActorOf(Props.Create(() => new Coordinator(job, ranges, workersNeeded, settings, watch, _result)), ActorName);
    }

    /// <summary>The address at which workers find the coordinator.</summary>
    public string Address => _cluster.SelfAddress.ToString();

    /// <summary>The sum over all ranges, once each is done.</summary>
    public Task<Tally> Result => _result.Task;

    /// <summary>Leaves the cluster after its workers and ends the node.</summary>
    public async ValueTask DisposeAsync()
    {
        using var enough = new CancellationTokenSource(Farewell);
        using var look = new PeriodicTimer(Look);
        try
        {
            while (_cluster.State.Members.Count > 1)
            {
                foreach (var gone in _cluster.State.Unreachable)
                {
                    // Nobody else can leave while it is unclear whether this one is there.
                    _cluster.Down(gone.Address);
                }

                await look.WaitForNextTickAsync(enough.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // A worker is still there; it will notice that its coordinator is gone.
        }

        await CoordinatedShutdown.Get(_system).Run(CoordinatedShutdown.ClusterLeavingReason.Instance);
    }
}
