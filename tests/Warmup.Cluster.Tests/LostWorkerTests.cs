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

    private static readonly PatternJob Job = new() { Words = "ladder run figure(1 3) .reversed .ends .there-and-back .up-down .take(3) +", Size = 6, Most = 16_000, RangeLength = 100 };

    [Fact]
    public async Task Workers_that_are_killed_or_held_up_cost_no_index_and_no_index_twice()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the signals' numbers are those of Linux");
        var ranges = new PatternWork(Job).Ranges;
        var log = new List<Progress>();
        using var folder = new TestFolder();
        using var cluster = new LocalCluster();
        List<Process> workers = [];
        var isHeldUp = false;
        void Watch(Progress progress)
        {
            log.Add(progress);
            if (progress is not Progress.Accepted)
            {
                output.WriteLine(progress.ToString());
            }

            // All three have ranges now, and there are more than they can do in between.
            if (progress is Progress.Accepted { Ranges: var all, Done: var done } && log.OfType<Progress.Joined>().Count() >= 3 && done < all / 2 && !isHeldUp)
            {
                workers[0].Kill();
                workers[0].WaitForExit();
                Assert.Equal(0, Signal(workers[1].Id, Stop));
                isHeldUp = true;
            }
            else if (progress is Progress.Lost { TakenBack: 2 })
            {
                Assert.Equal(0, Signal(workers[1].Id, Continue));
            }
        }

        // Soon suspected, which costs at most a range done twice.
        var settings = new ClusterSettings { Certificate = cluster.Coordinator, Silence = TimeSpan.FromSeconds(4) };
        await using (var node = new CoordinatorNode(Job, folder.Journal, [], settings, Watch))
        {
            Assert.StartsWith("akka.ssl.tcp://warmup@127.0.0.1:", node.Address, StringComparison.Ordinal);
            for (var i = 0; i < 3; i++)
            {
                workers.Add(cluster.StartWorker(node.Address));
            }

            Assert.Equal(await Task.Run(() => new PatternWork(Job).OfAll(CancellationToken.None)), await node.Result.WaitAsync(Long));
        }

        Assert.All(workers, w => Assert.True(w.WaitForExit(Long)));
        Assert.Equal(Enumerable.Range(0, ranges), log.OfType<Progress.Accepted>().Select(a => a.Range).Order());
        Assert.True(isHeldUp, "all was done before");
        Assert.Contains(log, p => p is Progress.Lost { TakenBack: 2 });
        Assert.NotEqual(0, workers[0].ExitCode);
        Assert.Equal([0, 0], workers[1..].Select(w => w.ExitCode));
    }

    [DllImport("libc", EntryPoint = "kill")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Signal(int process, int number);
}
