using System.Globalization;
using Akka.Actor;
using Akka.Actor.Setup;
using Akka.Configuration;
using Akka.Serialization;

namespace Warmup.ManyMachines;

/// <summary>Where nodes listen, whom they believe, when they take another node for lost, and how long they wait.</summary>
/// <remarks>All numbers are the sample's own settings. The waits are long, since a wrong suspicion means that a range is done twice.</remarks>
internal sealed record ClusterSettings
{
    public const string System = "warmup";
    public const string CoordinatorRole = "coordinator";

    /// <summary>The node's certificate: there is no connection without.</summary>
    public required NodeCertificate Certificate { get; init; }

    /// <summary>The address to listen at, which is the only one at which others reach the node.</summary>
    public string Host { get; init; } = "127.0.0.1";

    /// <summary>The port to listen at; 0 for any free one.</summary>
    public int Port { get; init; }

    /// <summary>How long another node may be silent before it is taken for lost. A coordinator is put out after twice as long.</summary>
    public TimeSpan Silence { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>How often a worker says what it is doing.</summary>
    public TimeSpan Tick { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long a worker looks for a coordinator, or hears nothing from one, before it gives up; and a coordinator for the first one.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>How many records the coordinator writes before it sums them up in a snapshot, so that fewer are read when it is started again.</summary>
    public int RecordsBetweenSnapshots { get; init; } = 100;

    /// <summary>Starts a worker's node, which is no member of the coordinators' cluster. It reads no files.</summary>
    public ActorSystem StartWorker() => Start("actor.provider = remote");

    /// <summary>Starts a coordinator's node, which has not joined a cluster yet.</summary>
    public ActorSystem StartCoordinator(JobJournal journal) =>
        Start(string.Create(CultureInfo.InvariantCulture, $$"""
            actor.provider = cluster
            cluster {
              roles = [{{CoordinatorRole}}]
              shutdown-after-unsuccessful-join-seed-nodes = {{Patience.TotalMilliseconds}}ms
              failure-detector.acceptable-heartbeat-pause = {{Silence.TotalMilliseconds}}ms
              downing-provider-class = "Warmup.ManyMachines.PutOutUnreachable, Warmup.Cluster"
            }
            """), journal);

    private ActorSystem Start(string ofItsKind, JobJournal? journal = null)
    {
        var config = ConfigurationFactory.ParseString(string.Create(CultureInfo.InvariantCulture, $$"""
            akka {
              loglevel = WARNING
              stdout-loglevel = WARNING
              loggers = ["Warmup.ManyMachines.ErrorLog, Warmup.Cluster"]
              log-dead-letters = off
              actor.serializers.json = "Warmup.ManyMachines.NoOtherTypes, Warmup.Cluster"
              remote {
                log-remote-lifecycle-events = off
                retry-gate-closed-for = 1s
                dot-netty.tcp {
                  hostname = "{{Host}}"
                  port = {{Port}}
                  maximum-frame-size = 64000b
                  enable-ssl = true
                }
              }
              coordinated-shutdown.exit-clr = off
              {{ofItsKind}}
            }
            {{PutOutUnreachable.Setting}} = {{Silence.TotalMilliseconds}}ms
            """));
        var serializers = SerializationSetup.Create(system =>
        [
            SerializerDetails.Create("warmup", new MessageSerializer(system), [typeof(IMessage)]),
            SerializerDetails.Create("warmup-records", new RecordSerializer(system), [typeof(IRecord)]),
        ]);
        var bootstrap = BootstrapSetup.Create().WithConfig(journal is null ? config : config.WithFallback(journal.Configuration));
        return ActorSystem.Create(System, ActorSystemSetup.Create(bootstrap, serializers, Certificate.Setup));
    }
}
