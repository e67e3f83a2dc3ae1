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

    private static readonly PatternJob Job = new() { Words = "ladder run figure(0 2) .reversed .ends .there-and-back .up-down .take(3) +", Size = 6, Most = 8_000, RangeLength = 200 };

    [Fact]
    public async Task A_worker_that_is_killed_half_way_costs_no_index_and_no_index_twice()
    {
        var ranges = new PatternWork(Job).Ranges;
        Assert.True(ranges >= 20, $"{ranges} ranges are too few to be half-way");
        var log = new List<Progress>();
        List<Process> workers = [];
        void Watch(Progress progress)
        {
            log.Add(progress);
            output.WriteLine(progress.ToString());
            if (progress is Progress.Accepted { Done: var done } && done == ranges / 2)
            {
                // Both workers hold a range from the first to the last one, so the one that ends here holds one.
                workers[0].Kill();
                workers[0].WaitForExit();
            }
        }

        var node = new CoordinatorNode(Job, 2, new ClusterSettings { HeartbeatPause = TimeSpan.FromSeconds(5) }, Watch);
        await using (node)
        {
            workers.Add(LocalWorker.Start(node.Address));
            workers.Add(LocalWorker.Start(node.Address));
            Assert.Equal(await Task.Run(() => new PatternWork(Job).OfAll(CancellationToken.None)), await node.Result.WaitAsync(Long));
        }

        Assert.NotEqual(0, workers[0].ExitCode);
        Assert.True(workers[1].WaitForExit(Long));
        Assert.Equal(0, workers[1].ExitCode);
        var accepted = log.OfType<Progress.Accepted>().ToList();
        Assert.Equal(Enumerable.Range(0, ranges), accepted.Select(a => a.Range).Order());
        Assert.Equal(2, accepted.Select(a => a.Worker).Distinct().Count());
        Assert.Contains(log, p => p is Progress.Lost { TakenBack: >= 1 });

        // The range of the lost one came from the other, after it was lost.
        var lost = log.OfType<Progress.Lost>().First();
        Assert.NotEqual(lost.Worker, log.Skip(log.IndexOf(lost)).OfType<Progress.Accepted>().First().Worker);
        workers.ForEach(w => w.Dispose());
    }

    [Fact]
    public async Task A_worker_that_is_held_up_and_comes_back_is_taken_in_again()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the signals' numbers are those of Linux");
        var ranges = new PatternWork(Job).Ranges;
        var log = new List<Progress>();
        List<Process> workers = [];
        void Watch(Progress progress)
        {
            log.Add(progress);
            output.WriteLine(progress.ToString());
            if (progress is Progress.Accepted { Done: var done } && done == ranges / 2)
            {
                Assert.Equal(0, Signal(workers[0].Id, Stop));
            }
            else if (progress is Progress.Lost)
            {
                Assert.Equal(0, Signal(workers[0].Id, Continue));
            }
        }

        var settings = new ClusterSettings { HeartbeatPause = TimeSpan.FromSeconds(5), DownAfter = Long };
        var node = new CoordinatorNode(Job, 2, settings, Watch);
        await using (node)
        {
            workers.Add(LocalWorker.Start(node.Address));
            workers.Add(LocalWorker.Start(node.Address));
            Assert.Equal(await Task.Run(() => new PatternWork(Job).OfAll(CancellationToken.None)), await node.Result.WaitAsync(Long));
        }

        Assert.Contains(log, p => p is Progress.Lost);
        Assert.Equal(Enumerable.Range(0, ranges), log.OfType<Progress.Accepted>().Select(a => a.Range).Order());
        Assert.All(workers, w => Assert.True(w.WaitForExit(Long)));
        Assert.Equal(0, workers[1].ExitCode);
        workers.ForEach(w => w.Dispose());
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Signal(int process, int number);
}
