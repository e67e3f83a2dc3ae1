using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Akka.Actor;

namespace Warmup.ManyMachines;

/// <summary>The commands and their options.</summary>
internal static class Commands
{
    private const int MostWorkers = 64;

    private static readonly Option<string> Words = new("--words") { Description = "The words of the patterns; the usual choice by default.", DefaultValueFactory = _ => new PatternJob().Words };
    private static readonly Option<int> Size = new("--size") { Description = "The largest size of a pattern, 1 to 12; 5 by default.", DefaultValueFactory = _ => new PatternJob().Size };
    private static readonly Option<string> Scales = new("--scales") { Description = "1 to 16 scales, with semicolons between them.", DefaultValueFactory = _ => new PatternJob().Scales };
    private static readonly Option<int> Range = new("--range") { Description = "The number of patterns in a range, 1 to 1000000; 1000 by default.", DefaultValueFactory = _ => new PatternJob().RangeLength };
    private static readonly Option<long> First = new("--first") { Description = "The first index; 0 by default." };
    private static readonly Option<long> Most = new("--most") { Description = "The most indexes; all by default.", DefaultValueFactory = _ => new PatternJob().Most };
    private static readonly Option<int> Samples = new("--samples") { Description = $"The number of indexes to take, 1 to {PatternJob.LongestRange}; 20000 by default.", DefaultValueFactory = _ => 20_000 };
    private static readonly Option<int> Workers = new("--workers") { Description = $"Workers to start or to wait for, 1 to {MostWorkers}; 2 by default.", DefaultValueFactory = _ => 2 };
    private static readonly Option<string> Host = new("--host") { Description = "The address to listen at; 127.0.0.1 by default.", DefaultValueFactory = _ => new ClusterSettings().Host };
    private static readonly Option<int> Port = new("--port") { Description = "The port to listen at; 0, the default, is any free one.", DefaultValueFactory = _ => 0 };
    private static readonly Option<string> Join = new("--join") { Description = "The coordinator's address, as it prints it.", Required = true };

    public static RootCommand Create()
    {
        var count = new Command("count", "Prints how many patterns there are, by size.") { Words, Size };
        count.SetAction(parsed => Count(parsed.GetValue(Words)!, parsed.GetValue(Size)));
        var alone = new Command("alone", "Does all the work on one thread of this process.") { Words, Size, Scales, First, Most, Range };
        alone.SetAction((parsed, stop) => Task.FromResult(Time(new PatternWork(JobOf(parsed)).OfAll, stop)));
        var sample = new Command("sample", "Measures what a pattern costs: works on one thread through indexes spread evenly over the whole.") { Words, Size, Scales, First, Most, Range, Samples };
        sample.SetAction((parsed, stop) => Task.FromResult(Time(token => new PatternWork(JobOf(parsed)).OfSpread(SamplesOf(parsed), token), stop)));
        var local = new Command("local", "Coordinates, and starts worker processes on this machine.") { Words, Size, Scales, First, Most, Range, Workers };
        local.SetAction((parsed, stop) => CoordinateAsync(JobOf(parsed), WorkersOf(parsed), true, new ClusterSettings(), stop));
        var coordinator = new Command("coordinator", "Coordinates workers that you start elsewhere.") { Words, Size, Scales, First, Most, Range, Workers, Host, Port };
        coordinator.SetAction((parsed, stop) => CoordinateAsync(JobOf(parsed), WorkersOf(parsed), false, SettingsOf(parsed), stop));
        var worker = new Command("worker", "Works for a coordinator.") { Join, Host, Port };
        worker.SetAction(async (parsed, stop) => await WorkerNode.RunAsync(CoordinatorOf(parsed), SettingsOf(parsed), stop) ? 0 : 1);
        return new RootCommand("Works through a pattern enumeration in many processes.") { count, alone, sample, local, coordinator, worker };
    }

    private static PatternJob JobOf(ParseResult parsed)
    {
        var job = new PatternJob
        {
            Words = parsed.GetValue(Words)!,
            Size = parsed.GetValue(Size),
            Scales = parsed.GetValue(Scales)!,
            First = parsed.GetValue(First),
            Most = parsed.GetValue(Most),
            RangeLength = parsed.GetValue(Range),
        };
        return job.Problem() is { } problem ? throw new UsageException(problem) : job;
    }

    private static int WorkersOf(ParseResult parsed) => parsed.GetValue(Workers) is var workers and >= 1 and <= MostWorkers
        ? workers
        : throw new UsageException($"--workers must be between 1 and {MostWorkers}, not {parsed.GetValue(Workers)}");

    private static int SamplesOf(ParseResult parsed) => parsed.GetValue(Samples) is var samples and >= 1 and <= PatternJob.LongestRange
        ? samples
        : throw new UsageException($"--samples must be between 1 and {PatternJob.LongestRange}, not {parsed.GetValue(Samples)}");

    private static ClusterSettings SettingsOf(ParseResult parsed)
    {
        var (host, port) = (parsed.GetValue(Host)!, parsed.GetValue(Port));
        return Uri.CheckHostName(host) == UriHostNameType.Unknown ? throw new UsageException($"--host must be a name or an address, not '{host}'")
            : port is < 0 or > 65_535 ? throw new UsageException($"--port must be between 0 and 65535, not {port}")
            : new ClusterSettings { Host = host, Port = port };
    }

    private static string CoordinatorOf(ParseResult parsed) => parsed.GetValue(Join) is { } address && ActorPath.TryParseAddress(address, out var read) && read.HasGlobalScope
        ? address
        : throw new UsageException("--join must be an address such as akka.tcp://warmup@127.0.0.1:4053");

    private static int Count(string words, int size)
    {
        var job = new PatternJob { Words = words, Size = size };
        var patterns = job.CountingProblem() is { } problem ? throw new UsageException(problem) : job.Enumeration();
        Int128 sum = 0;
        for (var parts = 1; parts <= patterns.Size; parts++)
        {
            sum += patterns.CountOfSize(parts);
            Print($"size {parts}: {patterns.CountOfSize(parts)} patterns, {sum} up to here");
        }

        return 0;
    }

    private static int Time(Func<CancellationToken, Tally> work, CancellationToken stop)
    {
        var clock = Stopwatch.StartNew();
        Describe(work(stop), clock.Elapsed);
        return 0;
    }

    private static async Task<int> CoordinateAsync(PatternJob job, int workers, bool startsWorkers, ClusterSettings settings, CancellationToken stop)
    {
        var begun = new TaskCompletionSource<long>();
        void Watch(Progress progress)
        {
            if (progress is Progress.Accepted)
            {
                begun.TrySetResult(Stopwatch.GetTimestamp());
            }
            else
            {
                Console.WriteLine(progress);
            }
        }

        List<Process> started = [];
        try
        {
            await using var node = new CoordinatorNode(job, workers, settings, Watch);
            Console.WriteLine($"listening at {node.Address}");
            for (var i = 0; startsWorkers && i < workers; i++)
            {
                started.Add(LocalWorker.Start(node.Address));
            }

            // The time runs from the first range that came back, when the processes are up; each worker's first range is not counted.
            var tally = await node.Result.WaitAsync(stop);
            Describe(tally, Stopwatch.GetElapsedTime(await begun.Task), (long)job.RangeLength * workers);
        }
        finally
        {
            foreach (var process in started)
            {
                LocalWorker.End(process);
            }
        }

        return 0;
    }

    private static void Describe(Tally tally, TimeSpan time, long before = 0)
    {
        Print($"patterns {tally.Patterns}, refused {tally.Refused}, lines {tally.Lines}, notes {tally.Notes}, palindromes {tally.Palindromes}, broken {tally.Broken}, checksum {tally.Checksum:x16}");
        Print($"{Math.Max(0, tally.Patterns - before) / time.TotalSeconds:0} patterns/s, {time.TotalSeconds:0.0} s");
    }

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
