using Akka.Actor;
using Akka.Cluster;

namespace Warmup.ManyMachines;

/// <summary>A node with one worker.</summary>
internal static class WorkerNode
{
    /// <summary>Joins a coordinator's cluster, works, and leaves.</summary>
    /// <returns>Whether it left because all ranges are done.</returns>
    public static async Task<bool> RunAsync(string coordinator, ClusterSettings settings, CancellationToken stop)
    {
        var address = Address.Parse(coordinator);
        using var system = settings.Start(ClusterSettings.WorkerRole);
        var done = false;
        void Leave(bool isDone)
        {
            done |= isDone;
            _ = CoordinatedShutdown.Get(system).Run(CoordinatedShutdown.ClusterLeavingReason.Instance);
        }

        Action<bool> leave = Leave;
        using var stopping = stop.Register(() => Leave(false));
        var cluster = Cluster.Get(system);
        cluster.RegisterOnMemberUp(() => system.ActorOf(
            Props.Create(() => new Worker(system.ActorSelection(new RootActorPath(address) / "user" / CoordinatorNode.ActorName), settings, leave)), "worker"));
        cluster.JoinSeedNodes([address]);

        // It also ends if it could not join, or was put out of the cluster.
        await system.WhenTerminated;
        return done;
    }
}
