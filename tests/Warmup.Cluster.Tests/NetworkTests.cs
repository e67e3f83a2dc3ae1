using System.Diagnostics;
using System.Globalization;

namespace Warmup.ManyMachines.Tests;

/// <summary>
/// Source: the same job done on one thread. Each node is in a network namespace of its own, as on a machine of its own: it has its own address, and
/// its cable can be pulled.
/// </summary>
[Trait("Run", "whole")]
public sealed class NetworkTests(ITestOutputHelper output) : IDisposable
{
    private static readonly TimeSpan Long = TimeSpan.FromMinutes(8);

    private static readonly PatternJob Job = new() { Size = 6, Most = 100_000, RangeLength = 500, HasParts = true };

    private readonly TestFolder _folder = new();
    private readonly string _prefix = string.Create(CultureInfo.InvariantCulture, $"wu{Environment.ProcessId % 10_000}");
    private readonly List<string> _namespaces = [];

    public void Dispose()
    {
        _namespaces.ForEach(name => Ip("netns", "del", name));
        _folder.Dispose();
    }

    [Theory]
    [InlineData(8)]
    [InlineData(4)]
    [InlineData(2)]
    public async Task Nodes_with_addresses_of_their_own_do_the_work_though_cables_are_pulled(int workers)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess && File.Exists("/usr/sbin/ip"), "needs network namespaces: Linux, root and iproute2");
        MakeHub();
        var parts = _folder.Folder("parts");
        var journal = _folder.At("journal.db");
        using var cluster = new LocalCluster();
        string[] addresses = ["akka.ssl.tcp://warmup@10.77.0.1:4053", "akka.ssl.tcp://warmup@10.77.0.2:4053"];
        Process Coordinator(int which) => cluster.Start(
        [
            "coordinator", "--size", $"{Job.Size}", "--most", $"{Job.Most}", "--range", $"{Job.RangeLength}", "--write-parts", "--journal", journal, "--silence", "3",
            "--host", $"10.77.0.{which}", "--port", "4053", "--coordinators", .. addresses, "--certificate", Path.Combine(cluster.Folder, "coordinator.pem"),
        ], "ip", "netns", "exec", Join(which));
        Process Worker(int which) => cluster.Start(
            ["worker", "--join", .. addresses, "--host", $"10.77.0.{which}", "--parts", parts, "--certificate", Path.Combine(cluster.Folder, "worker.pem")],
            "ip", "netns", "exec", Join(which));

        List<Process> coordinators = [Coordinator(1)];
        var running = Enumerable.Range(10, workers).Select(Worker).ToList();
        await Until(parts, 10, coordinators);
        coordinators.Add(Coordinator(2));

        // A worker's cable is pulled for longer than it may be silent, and plugged in again.
        await Until(parts, 40, coordinators);
        Cable(10, "down");
        await Task.Delay(TimeSpan.FromSeconds(6), TestContext.Current.CancellationToken);
        Cable(10, "up");

        // The same happens to the coordinator that leads: the other takes over, and the journal keeps the two apart.
        await Until(parts, 100, coordinators);
        Cable(1, "down");
        await Task.Delay(TimeSpan.FromSeconds(15), TestContext.Current.CancellationToken);
        Cable(1, "up");
        await Task.WhenAny(coordinators.Select(c => c.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(Long)));
        Assert.All(coordinators, c => Assert.True(c.WaitForExit(Long)));
        Assert.Contains(coordinators, c => c.ExitCode == 0);
        Assert.All(running, w => Assert.True(w.WaitForExit(Long)));
        Assert.All(running, w => Assert.Equal(0, w.ExitCode));
        var sum = await JournalSum.ReadAsync(JobJournal.InFile(journal), parts, TestContext.Current.CancellationToken);
        Assert.True(sum.IsWhole, string.Join('\n', sum.Differences));
        Assert.Equal((new PatternWork(Job).OfAll(CancellationToken.None), 0), (sum.Sum, sum.Repeated));
        output.WriteLine($"{workers} workers: {sum.Sum}; exit codes of the coordinators {string.Join(' ', coordinators.Select(c => c.ExitCode))}");
    }

    private static async Task Until(string parts, int count, List<Process> coordinators)
    {
        var since = Stopwatch.GetTimestamp();
        while (Directory.GetFiles(parts, "part-*").Length < count)
        {
            Assert.True(coordinators.Any(c => !c.HasExited) && Stopwatch.GetElapsedTime(since) < Long, "it ended before");
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }
    }

    private void MakeHub()
    {
        MakeNamespace("hub");
        Ip("-n", Name("hub"), "link", "add", "hub", "type", "bridge");
        Ip("-n", Name("hub"), "link", "set", "hub", "up");
    }

    /// <summary>Makes a namespace with the address 10.77.0.WHICH and a cable to the hub.</summary>
    private string Join(int which)
    {
        var (node, plug) = (MakeNamespace($"{which}"), $"p{which}");
        Ip("-n", Name("hub"), "link", "add", plug, "type", "veth", "peer", "name", "cable", "netns", node);
        Ip("-n", Name("hub"), "link", "set", plug, "master", "hub", "up");
        Ip("-n", node, "addr", "add", $"10.77.0.{which}/24", "dev", "cable");
        Ip("-n", node, "link", "set", "cable", "up");
        Ip("-n", node, "link", "set", "lo", "up");
        return node;
    }

    private void Cable(int which, string state) => Ip("-n", Name("hub"), "link", "set", $"p{which}", state);

    private string Name(string node) => _prefix + node;

    private string MakeNamespace(string node)
    {
        Ip("netns", "add", Name(node));
        _namespaces.Add(Name(node));
        return Name(node);
    }

    private static void Ip(params string[] arguments)
    {
        using var process = Process.Start("/usr/sbin/ip", arguments);
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
