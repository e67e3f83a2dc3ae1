using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using Akka.Actor;

namespace Warmup.ManyMachines;

/// <summary>The commands and their options.</summary>
internal static class Commands
{
    private const int MostWorkers = 64;
    private const int MostCoordinators = 8;

    private static readonly Option<string> Words = new("--words") { Description = "The words of the patterns; the usual choice by default.", DefaultValueFactory = _ => new PatternJob().Words };
    private static readonly Option<int> Size = new("--size") { Description = "The largest size of a pattern, 1 to 12; 5 by default.", DefaultValueFactory = _ => new PatternJob().Size };
    private static readonly Option<string> Scales = new("--scales") { Description = "1 to 16 scales, with semicolons between them.", DefaultValueFactory = _ => new PatternJob().Scales };
    private static readonly Option<int> Range = new("--range") { Description = "The number of patterns in a range, 1 to 1000000; 1000 by default.", DefaultValueFactory = _ => new PatternJob().RangeLength };
    private static readonly Option<long> First = new("--first") { Description = "The first index; 0 by default." };
    private static readonly Option<long> Most = new("--most") { Description = "The most indexes; all by default.", DefaultValueFactory = _ => new PatternJob().Most };
    private static readonly Option<int> Samples = new("--samples") { Description = $"The number of indexes to take, 1 to {PatternJob.LongestRange}; 20000 by default.", DefaultValueFactory = _ => 20_000 };
    private static readonly Option<bool> WriteParts = new("--write-parts") { Description = "Let the workers write a part for each range, into their folders of --parts." };
    private static readonly Option<int> Workers = new("--workers") { Description = $"Workers to start, 1 to {MostWorkers}; 2 by default.", DefaultValueFactory = _ => 2 };
    private static readonly Option<string> Host = new("--host") { Description = "The address to listen at; 127.0.0.1 by default.", DefaultValueFactory = _ => "127.0.0.1" };
    private static readonly Option<int> Port = new("--port") { Description = "The port to listen at; 0, the default, is any free one.", DefaultValueFactory = _ => 0 };
    private static readonly Option<string> Certificate = new("--certificate") { Description = "The node's certificate, as \"certificates\" makes it, with authority.pem beside it.", Required = true };
    private static readonly Option<string?> JournalFile = new("--journal") { Description = "The file in which progress is kept (SQLite). Started again with it, the work goes on." };
    private static readonly Option<string?> PostgresFile = new("--postgres") { Description = "Instead of --journal: a file with the connection string of a PostgreSQL database." };
    private static readonly Option<string?> Parts = new("--parts") { Description = "The folder for parts: a Parquet file for each range, with a row for each index." };
    private static readonly Option<string[]> Coordinators = new("--coordinators") { Description = "The addresses of all coordinators, the same list for each, where there is more than one. The first begins the cluster.", AllowMultipleArgumentsPerToken = true };
    private static readonly Option<string[]> Join = new("--join") { Description = "The addresses of all coordinators, as they print them.", Required = true, AllowMultipleArgumentsPerToken = true };
    private static readonly Option<int> Silence = new("--silence") { Description = "How long another node may be silent before it is taken for lost, 1 to 600 seconds; 10 by default.", DefaultValueFactory = _ => 10 };
    private static readonly Option<int> Patience = new("--patience") { Description = "How long to look for a coordinator, 1 to 86400 seconds; 300 by default.", DefaultValueFactory = _ => 300 };
    private static readonly Option<string?> Metrics = new("--metrics") { Description = "Where a Prometheus server may ask, such as 127.0.0.1:9464; nowhere by default." };
    private static readonly Option<string> Out = new("--out") { Description = "The folder for the certificates.", Required = true };
    private static readonly Option<string[]> Nodes = new("--nodes") { Description = "The names of the nodes; each gets a file of its own.", Required = true, AllowMultipleArgumentsPerToken = true };

    public static RootCommand Create()
    {
        var count = new Command("count", "Prints how many patterns there are, by size.") { Words, Size };
        count.SetAction(parsed => Count(parsed.GetValue(Words)!, parsed.GetValue(Size)));
        var alone = new Command("alone", "Does all the work on one thread of this process.") { Words, Size, Scales, First, Most, Range };
        alone.SetAction((parsed, stop) => Task.FromResult(Time(new PatternWork(JobOf(parsed)).OfAll, stop)));
        var sample = new Command("sample", "Measures what a pattern costs: works on one thread through indexes spread evenly over the whole.") { Words, Size, Scales, First, Most, Range, Samples };
        sample.SetAction((parsed, stop) => Task.FromResult(Time(token => new PatternWork(JobOf(parsed)).OfSpread(SamplesOf(parsed), token), stop)));
        var certificates = new Command("certificates", "Makes the certificates with which nodes know each other.") { Out, Nodes };
        certificates.SetAction(parsed => NodeCertificate.Make(parsed.GetValue(Out)!, parsed.GetValue(Nodes)!));
        var local = new Command("local", "Coordinates, and starts worker processes on this machine.") { Words, Size, Scales, First, Most, Range, Workers, JournalFile, Parts };
        local.SetAction((parsed, stop) => LocalAsync(JobOf(parsed) with { HasParts = PartsOf(parsed) is not null }, WorkersOf(parsed), parsed.GetValue(JournalFile), PartsOf(parsed), stop));
        var coordinator = new Command("coordinator", "Coordinates workers that you start elsewhere.") { Words, Size, Scales, First, Most, Range, WriteParts, Host, Port, Coordinators, JournalFile, PostgresFile, Certificate, Silence, Patience, Metrics };
        coordinator.SetAction(async (parsed, stop) =>
        {
            var (job, journal, settings) = (JobOf(parsed) with { HasParts = parsed.GetValue(WriteParts) }, JournalOf(parsed), SettingsOf(parsed));
            using var metrics = MetricsEndpoint.Open(parsed.GetValue(Metrics));
            return await CoordinateAsync(job, journal, AddressesOf(parsed, Coordinators), settings, _ => { }, stop);
        });
        var worker = new Command("worker", "Works for a coordinator.") { Join, Parts, Host, Port, Certificate, Silence, Patience, Metrics };
        worker.SetAction(async (parsed, stop) =>
        {
            var (addresses, parts, settings) = (AddressesOf(parsed, Join), PartsOf(parsed), SettingsOf(parsed));
            using var metrics = MetricsEndpoint.Open(parsed.GetValue(Metrics));
            var isDone = await WorkerNode.RunAsync(addresses, parts, settings, stop);
            DescribeCost();
            return isDone ? 0 : 1;
        });
        var sum = new Command("sum", "Adds up what a journal says, and holds the parts against it.") { JournalFile, PostgresFile, Parts };
        sum.SetAction((parsed, stop) => SumAsync(JournalOf(parsed), PartsOf(parsed), stop));
        return new RootCommand("Works through a pattern enumeration in many processes.") { count, alone, sample, certificates, local, coordinator, worker, sum };
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
        var (host, port, silence, patience) = (parsed.GetValue(Host)!, parsed.GetValue(Port), parsed.GetValue(Silence), parsed.GetValue(Patience));
        return Uri.CheckHostName(host) == UriHostNameType.Unknown ? throw new UsageException($"--host must be a name or an address, not '{host}'")
            : port is < 0 or > 65_535 ? throw new UsageException($"--port must be between 0 and 65535, not {port}")
            : silence is < 1 or > 600 ? throw new UsageException($"--silence must be between 1 and 600 seconds, not {silence}")
            : patience is < 1 or > 86_400 ? throw new UsageException($"--patience must be between 1 and 86400 seconds, not {patience}")
            : new ClusterSettings { Host = host, Port = port, Silence = TimeSpan.FromSeconds(silence), Patience = TimeSpan.FromSeconds(patience), Certificate = NodeCertificate.Read(parsed.GetValue(Certificate)!) };
    }

    private static JobJournal JournalOf(ParseResult parsed) => (parsed.GetValue(JournalFile), parsed.GetValue(PostgresFile)) switch
    {
        ({ } file, null) => JobJournal.InFile(file),
        (null, { } file) => JobJournal.InPostgres(file),
        _ => throw new UsageException("give one of --journal and --postgres"),
    };

    private static string? PartsOf(ParseResult parsed) => parsed.GetValue(Parts) is { } folder && !Directory.Exists(folder)
        ? throw new UsageException($"--parts must be a folder that is there, not '{folder}': make it first, one for each job")
        : parsed.GetValue(Parts);

    private static List<Address> AddressesOf(ParseResult parsed, Option<string[]> option)
    {
        var texts = parsed.GetValue(option) ?? [];
        return texts.Length > MostCoordinators ? throw new UsageException($"{option.Name} takes at most {MostCoordinators} addresses")
            : [.. texts.Select(text => ActorPath.TryParseAddress(text, out var read) && read.HasGlobalScope
                ? read
                : throw new UsageException($"{option.Name} takes addresses such as akka.ssl.tcp://warmup@127.0.0.1:4053"))];
    }

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

    private static async Task<int> LocalAsync(PatternJob job, int workers, string? journal, string? parts, CancellationToken stop)
    {
        using var cluster = new LocalCluster();
        return await CoordinateAsync(
            job,
            JobJournal.InFile(journal ?? Path.Combine(cluster.Folder, "journal.db")),
            [],
            new ClusterSettings { Certificate = cluster.Coordinator },
            address =>
            {
                for (var i = 0; i < workers; i++)
                {
                    cluster.StartWorker(address, parts);
                }
            },
            stop);
    }

    private static async Task<int> CoordinateAsync(PatternJob job, JobJournal journal, IReadOnlyList<Address> coordinators, ClusterSettings settings, Action<string> started, CancellationToken stop)
    {
        // The time runs from the first range that came back, when the processes are up; what was done before is not counted.
        var begun = (Since: Stopwatch.GetTimestamp(), Done: 0);
        void Watch(Progress progress)
        {
            if (progress is Progress.Accepted { Done: var done })
            {
                begun = begun.Done == 0 ? (Stopwatch.GetTimestamp(), done) : begun;
            }
            else if (progress is not Progress.Repeated)
            {
                Console.WriteLine(progress);
            }
        }

        await using var node = new CoordinatorNode(job, journal, coordinators, settings, Watch);
        Console.WriteLine($"listening at {node.Address}");
        _ = node.Joined.ContinueWith(_ => Console.WriteLine("leads, or stands by to take over"), TaskScheduler.Default);
        started(node.Address);
        var tally = await node.Result.WaitAsync(stop);
        Describe(tally, Stopwatch.GetElapsedTime(begun.Since), (long)job.RangeLength * begun.Done);
        return 0;
    }

    private static async Task<int> SumAsync(JobJournal journal, string? parts, CancellationToken stop)
    {
        var sum = await JournalSum.ReadAsync(journal, parts, stop);
        Print($"{sum.Sum}");
        Print($"{sum.Done} of {sum.Ranges} ranges are done, {sum.Repeated} were written twice and counted once");
        if (parts is not null)
        {
            Print($"{sum.Done - sum.Different} parts agree, {sum.PartBytes} bytes; {sum.Different} do not");
            sum.Differences.ToList().ForEach(Console.Error.WriteLine);
        }

        return sum.IsWhole ? 0 : 1;
    }

    private static void Describe(Tally tally, TimeSpan time, long before = 0)
    {
        Print($"{tally}");
        Print($"{Math.Max(0, tally.Patterns - before) / time.TotalSeconds:0} patterns/s, {time.TotalSeconds:0.0} s");
        DescribeCost();
    }

    private static void DescribeCost() => Print($"this process took {Environment.CpuUsage.TotalTime.TotalSeconds:0.00} s of processor time");

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
