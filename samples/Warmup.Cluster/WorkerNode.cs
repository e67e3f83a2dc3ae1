using System.Diagnostics;
using Akka.Actor;

namespace Warmup.ManyMachines;

/// <summary>A node with one worker. It is no member of the coordinators' cluster: it may come and go as it likes.</summary>
internal static class WorkerNode
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);

    /// <summary>Works for whichever coordinator leads, until all is done.</summary>
    /// <param name="coordinators">The addresses of all coordinators.</param>
    /// <param name="parts">The folder for parts, if there is one.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="stop">Makes the worker leave.</param>
    /// <returns>Whether it left because all ranges are done.</returns>
    public static async Task<bool> RunAsync(IReadOnlyList<Address> coordinators, string? parts, ClusterSettings settings, CancellationToken stop)
    {
        // The engine ends a node whose encrypted connection fails, also when the other side was killed at that moment: it is started again.
        var since = Stopwatch.GetTimestamp();
        while (true)
        {
            var begun = Stopwatch.GetTimestamp();
            if (await RunOnceAsync(coordinators, parts, settings, stop) is { } isDone)
            {
                return isDone;
            }

            since = Stopwatch.GetElapsedTime(begun) > settings.Patience ? Stopwatch.GetTimestamp() : since;
            if (stop.IsCancellationRequested || Stopwatch.GetElapsedTime(since) > settings.Patience)
            {
                return false;
            }

            await Task.Delay(Pause, CancellationToken.None);
        }
    }

    /// <returns>Whether all ranges are done when the worker leaves, or <see langword="null"/> if its node ended by itself.</returns>
    private static async Task<bool?> RunOnceAsync(IReadOnlyList<Address> coordinators, string? parts, ClusterSettings settings, CancellationToken stop)
    {
        using var system = settings.StartWorker();
        var left = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        Action<bool> leave = isDone => left.TrySetResult(isDone);
        var found = coordinators.Select(ICanTell (address) => system.ActorSelection(new RootActorPath(address) / CoordinatorNode.Path.Split('/'))).ToList();
        var worker = system.ActorOf(Props.Create(() => new Worker(found, parts, settings, leave)), "worker");
        using var stopping = stop.Register(() => worker.Tell(new Leaving()));
        await Task.WhenAny(left.Task, system.WhenTerminated);
        await CoordinatedShutdown.Get(system).Run(CoordinatedShutdown.ActorSystemTerminateReason.Instance);
        return left.Task.IsCompleted ? await left.Task : null;
    }
}
