using Akka.Actor;
using Akka.Cluster;

namespace Warmup.ManyMachines;

/// <summary>
/// Puts a coordinator out of the cluster that cannot be reached for long, so that another takes its place. After a split each side does so, and
/// each may lead for a while: the journal takes the records of one only. The engine's own rules cannot tell a split from a loss with two nodes.
/// </summary>
internal sealed class PutOutUnreachable(ActorSystem system, Cluster cluster) : IDowningProvider
{
    /// <summary>Where the engine's configuration says how long.</summary>
    public const string Setting = "warmup.put-out-after";

    public TimeSpan DownRemovalMargin => TimeSpan.Zero;

    public Props DowningActorProps
    {
        get
        {
            var patience = system.Settings.Config.GetTimeSpan(Setting);
            return Props.Create(() => new Watcher(cluster, patience));
        }
    }

    private sealed class Watcher : ReceiveActor, IWithTimers
    {
        private readonly Cluster _cluster;

        public Watcher(Cluster cluster, TimeSpan patience)
        {
            _cluster = cluster;
            Receive<ClusterEvent.UnreachableMember>(gone => Timers.StartSingleTimer(gone.Member.UniqueAddress, gone.Member.Address, patience));
            Receive<ClusterEvent.ReachableMember>(back => Timers.Cancel(back.Member.UniqueAddress));
            Receive<Address>(_cluster.Down);
        }

        public ITimerScheduler Timers { get; set; } = null!;

        protected override void PreStart() =>
            _cluster.Subscribe(Self, ClusterEvent.SubscriptionInitialStateMode.InitialStateAsEvents, typeof(ClusterEvent.UnreachableMember), typeof(ClusterEvent.ReachableMember));

        protected override void PostStop() => _cluster.Unsubscribe(Self);
    }
}
