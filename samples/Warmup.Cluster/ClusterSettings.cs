using System.Globalization;
using Akka.Actor;
using Akka.Actor.Setup;
using Akka.Configuration;
using Akka.Serialization;

namespace Warmup.ManyMachines;

/// <summary>Where nodes listen, when they take another node for lost, and how long they wait.</summary>
/// <remarks>All numbers are the sample's own settings. The waits are long, since a wrong suspicion means that a range is done twice.</remarks>
internal sealed record ClusterSettings
{
    public const string System = "warmup";
    public const string CoordinatorRole = "coordinator";
    public const string WorkerRole = "worker";

    /// <summary>The address to listen at, which is the only one at which others reach the node. Remoting has no password: see docs/scale.md.</summary>
    public string Host { get; init; } = "127.0.0.1";

    /// <summary>The port to listen at; 0 for any free one.</summary>
    public int Port { get; init; }

    /// <summary>How long a node's heartbeats may be missing before its ranges are handed out again.</summary>
    public TimeSpan HeartbeatPause { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How long a node must have been unreachable before it is put out of the cluster for good.</summary>
    public TimeSpan DownAfter { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>How long a worker may be silent about its range before the range is handed out again.</summary>
    public TimeSpan Silence { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How often a worker says what it is doing.</summary>
    public TimeSpan Tick { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long a worker looks for its coordinator, or hears nothing from it, before it gives up.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>Starts a node that has not joined a cluster yet. It reads no files.</summary>
    public ActorSystem Start(string role)
    {
        // If the network splits, the side with the coordinator, the oldest node, goes on; a worker that is cut off from it ends.
        var config = ConfigurationFactory.ParseString(string.Create(CultureInfo.InvariantCulture, $$"""
            akka {
              loglevel = WARNING
              stdout-loglevel = WARNING
              loggers = ["Warmup.ManyMachines.ErrorLog, Warmup.Cluster"]
              log-dead-letters = off
              actor.provider = cluster
              actor.serializers.json = "Warmup.ManyMachines.NoOtherTypes, Warmup.Cluster"
              remote.log-remote-lifecycle-events = off
              remote.dot-netty.tcp {
                hostname = "{{Host}}"
                port = {{Port}}
                maximum-frame-size = 64000b
              }
              cluster {
                roles = [{{role}}]
                shutdown-after-unsuccessful-join-seed-nodes = {{Patience.TotalMilliseconds}}ms
                failure-detector.acceptable-heartbeat-pause = {{HeartbeatPause.TotalMilliseconds}}ms
                split-brain-resolver {
                  active-strategy = keep-oldest
                  stable-after = {{DownAfter.TotalMilliseconds}}ms
                  keep-oldest { down-if-alone = off, role = {{CoordinatorRole}} }
                }
              }
              coordinated-shutdown.exit-clr = off
            }
            """));
        var serializers = SerializationSetup.Create(system =>
            [SerializerDetails.Create("warmup", new MessageSerializer(system), [typeof(IMessage)])]);
        return ActorSystem.Create(System, ActorSystemSetup.Create(BootstrapSetup.Create().WithConfig(config), serializers));
    }
}
