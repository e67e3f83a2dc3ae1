using System.Diagnostics;

namespace Warmup.ManyMachines;

/// <summary>A worker in a process of its own on this machine.</summary>
internal static class LocalWorker
{
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(30);

    /// <summary>Starts this program once more, as a worker.</summary>
    public static Process Start(string coordinator)
    {
        var program = typeof(LocalWorker).Assembly.Location;
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", ["exec", program, "worker", "--join", coordinator]);
        return Process.Start(start) ?? throw new InvalidOperationException("the worker's process could not be started");
    }

    /// <summary>Waits for a worker to leave by itself, and ends it if it does not.</summary>
    public static void End(Process process)
    {
        using (process)
        {
            if (!process.WaitForExit(Farewell))
            {
                process.Kill();
            }
        }
    }
}
