using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Warmup.ManyMachines.Tests;

/// <summary>A job done by processes of the program: coordinators and workers that a test kills and starts again.</summary>
internal sealed class Processes(PatternJob job, IReadOnlyList<string> journal, string parts, int silence) : IDisposable
{
    private readonly LocalCluster _cluster = new();
    private readonly IReadOnlyList<int> _ports = [FreePort(), FreePort()];

    public string[] Addresses => [.. _ports.Select(port => $"akka.ssl.tcp://warmup@127.0.0.1:{port}")];

    /// <summary>The settings of a coordinator in this process.</summary>
    public ClusterSettings Settings(int which) => new() { Certificate = _cluster.Coordinator, Port = _ports[which], Silence = TimeSpan.FromSeconds(silence) };

    /// <summary>Starts one of two coordinators.</summary>
    public Process StartCoordinator(int which) => _cluster.Start(
    [
        "coordinator", "--words", job.Words, "--size", $"{job.Size}", "--scales", job.Scales, "--most", $"{job.Most}", "--range", $"{job.RangeLength}", "--write-parts", .. journal,
        "--port", $"{_ports[which]}", "--coordinators", .. Addresses, "--silence", $"{silence}", "--certificate", Path.Combine(_cluster.Folder, "coordinator.pem"),
    ]);

    public Process StartWorker() =>
        _cluster.Start(["worker", "--join", .. Addresses, "--parts", parts, "--certificate", Path.Combine(_cluster.Folder, "worker.pem")]);

    public void Dispose() => _cluster.Dispose();

    /// <summary>Kills a process at once, as a loss of power would.</summary>
    public static void Kill(Process process)
    {
        process.Kill();
        process.WaitForExit();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
