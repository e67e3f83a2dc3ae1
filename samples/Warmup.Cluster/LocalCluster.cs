using System.Diagnostics;

namespace Warmup.ManyMachines;

/// <summary>Processes of this program on this machine, in a folder of their own with their certificates, which goes when they have gone.</summary>
internal sealed class LocalCluster : IDisposable
{
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(40);

    private readonly List<Process> _started = [];

    public LocalCluster() => NodeCertificate.Make(Folder, ["coordinator", "worker"]);

    /// <summary>The folder, which only this user can read.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("warmup-cluster").FullName;

    /// <summary>What the coordinator shows.</summary>
    public NodeCertificate Coordinator => NodeCertificate.Read(Path.Combine(Folder, "coordinator.pem"));

    /// <summary>Starts a worker in a process of its own.</summary>
    public Process StartWorker(string coordinator, string? parts = null) =>
        Start(["worker", "--join", coordinator, "--certificate", Path.Combine(Folder, "worker.pem"), .. parts is null ? (string[])[] : ["--parts", parts]]);

    /// <summary>Starts this program once more.</summary>
    /// <param name="arguments">Its arguments.</param>
    /// <param name="within">A command that starts it, such as one that enters a network namespace.</param>
    public Process Start(IReadOnlyList<string> arguments, params string[] within)
    {
        string[] command = [.. within, Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", "exec", typeof(LocalCluster).Assembly.Location, .. arguments];
        var start = new ProcessStartInfo(command[0], command[1..]);
        var process = Process.Start(start) ?? throw new InvalidOperationException("a process could not be started");
        _started.Add(process);
        return process;
    }

    /// <summary>Waits for the processes to end by themselves, ends those that do not, and removes the folder.</summary>
    public void Dispose()
    {
        foreach (var process in _started)
        {
            using (process)
            {
                if (!process.WaitForExit(Farewell))
                {
                    process.Kill();
                    process.WaitForExit();
                }
            }
        }

        Directory.Delete(Folder, true);
    }
}
