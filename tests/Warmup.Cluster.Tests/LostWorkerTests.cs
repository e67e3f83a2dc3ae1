using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the same job done on one thread. The workers are processes of their own, the coordinator is here, so that a worker is stopped at
/// a known point: while the coordinator waits between two results.
/// </summary>
public sealed class LostWorkerTests(ITestOutputHelper output)
{
    private const int Continue = 18;
    private const int Stop = 19;

    // Far longer than it takes, for a machine that does much else.
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(5);

    private static readonly PatternJob Job = new() { Words = "ladder run figure(1 3) .reversed .ends .there-and-back .up-down .take(3) +", Size = 6, Most = 8_000, RangeLength = 200 };

    [Fact]
    public async Task A_worker_that_is_killed_half_way_costs_no_index_and_no_index_twice()
    {
        // Both workers hold a range from the first to the last one, so the one that ends here holds one.
        var (log, exits) = await RunAsync((progress, workers) =>
        {
            if (IsHalfWay(progress))
            {
                workers[0].Kill();
                workers[0].WaitForExit();
            }
        });
        Assert.Contains(log, p => p is Progress.Lost { TakenBack: >= 1 });
        Assert.NotEqual(0, exits[0]);
        Assert.Equal(0, exits[1]);
    }

    [Fact]
    public async Task A_worker_that_is_held_up_and_comes_back_costs_no_index_and_no_index_twice()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the signals' numbers are those of Linux");
        var (log, exits) = await RunAsync((progress, workers) =>
        {
            if (IsHalfWay(progress))
            {
                Assert.Equal(0, Signal(workers[0].Id, Stop));
            }
            else if (progress is Progress.Lost)
            {
                Assert.Equal(0, Signal(workers[0].Id, Continue));
            }
        });
        Assert.Contains(log, p => p is Progress.Lost { TakenBack: >= 1 });
        Assert.Equal(0, exits[1]);
    }

    private static bool IsHalfWay(Progress progress) => progress is Progress.Accepted { Done: var done, Ranges: var ranges } && done == ranges / 2;

    /// <summary>Runs the job with two worker processes and checks its result.</summary>
    /// <returns>What happened, and the workers' exit codes.</returns>
    private async Task<(List<Progress> Log, List<int> Exits)> RunAsync(Action<Progress, IReadOnlyList<Process>> watch)
    {
        var ranges = new PatternWork(Job).Ranges;
        Assert.True(ranges >= 20, $"{ranges} ranges are too few to be half-way");
        var log = new List<Progress>();
        List<Process> workers = [];
        void Watch(Progress progress)
        {
            log.Add(progress);
            output.WriteLine(progress.ToString());
            watch(progress, workers);
        }

        try
        {
            // Soon suspected, which costs at most a range done twice; never put out, however slow the machine is.
            var settings = new ClusterSettings { HeartbeatPause = TimeSpan.FromSeconds(5), DownAfter = Long };
            await using (var node = new CoordinatorNode(Job, 2, settings, Watch))
            {
                Assert.StartsWith("akka.tcp://warmup@127.0.0.1:", node.Address, StringComparison.Ordinal);
                workers.Add(LocalWorker.Start(node.Address));
                workers.Add(LocalWorker.Start(node.Address));
                Assert.Equal(await Task.Run(() => new PatternWork(Job).OfAll(CancellationToken.None)), await node.Result.WaitAsync(Long));
            }

            Assert.All(workers, w => Assert.True(w.WaitForExit(Long)));
            Assert.Equal(Enumerable.Range(0, ranges), log.OfType<Progress.Accepted>().Select(a => a.Range).Order());
            return (log, workers.ConvertAll(w => w.ExitCode));
        }
        finally
        {
            foreach (var worker in workers)
            {
                worker.Kill();
                worker.Dispose();
            }
        }
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Signal(int process, int number);
}
