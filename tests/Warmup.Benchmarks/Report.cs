using System.Globalization;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using Perfolizer.Horology;

namespace Warmup.Benchmarks;

/// <summary>Runs the job, its growth, large classes and long plans, and the first drill one after the other and prints the tables of the documentation.</summary>
internal static class Report
{
    public const string Command = "report";

    // More than a tenth below what was recorded is not the noise of one run.
    private const double LeastShare = 0.9;

    /// <summary>
    /// A goal: how many times as fast as a reference a stage is to be; and how many times it was, by the least times, in the run that
    /// docs/performance.md records, or 0 where none is recorded yet.
    /// </summary>
    private static readonly (string Stage, string Reference, double Goal, double Recorded)[] Goals =
    [
        (nameof(JobBenchmarks.DrillToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 2.5, 1.37),
        (nameof(JobBenchmarks.LinesToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 2.5, 1.77),
        (nameof(JobBenchmarks.CarriedToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 4, 0),
        (nameof(JobBenchmarks.DrillToMusicXml), nameof(JobBenchmarks.XmlWriterReadyScore), 6.5, 5.56),
        (nameof(JobBenchmarks.CarriedToMusicXml), nameof(JobBenchmarks.XmlWriterReadyScore), 8, 0),
    ];

    public static void Print()
    {
        // All in this process, so that nothing but the work differs between the figures that are compared.
        var config = ManualConfig.Create(DefaultConfig.Instance)
            .WithOptions(ConfigOptions.DisableOptimizationsValidator)
            .AddJob(Job.Default
                .WithToolchain(InProcessEmitToolchain.Instance)
                .WithWarmupCount(8)
                .WithIterationCount(12)
                .WithIterationTime(TimeInterval.FromMilliseconds(150)));
        var job = BenchmarkRunner.Run<JobBenchmarks>(config);
        var growth = BenchmarkRunner.Run<GrowthBenchmarks>(config);
        Console.WriteLine();
        Console.WriteLine("| one drill of 84 notes | median | least | most | allocated |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var report in job.Reports)
        {
            var s = report.ResultStatistics!;
            Console.WriteLine(Line($"| {Name(report)} | {Micro(s.Median)} | {Micro(s.Min)} | {Micro(s.Max)} | {Allocated(report):0} B |"));
        }

        Console.WriteLine();
        foreach (var (stage, reference, goal, recorded) in Goals)
        {
            var (of, to) = (Statistics(job, stage), Statistics(job, reference));
            var (median, least) = (to.Median / of.Median, to.Min / of.Min);
            Console.WriteLine(Line($"{stage}: {median:0.0} times as fast as {reference} by the medians, {least:0.0} by the least"));
            if (least < goal)
            {
                Console.WriteLine(Line($"  falls short of the goal, {goal:0.0}"));
            }

            if (least < LeastShare * recorded)
            {
                Console.WriteLine(Line($"  falls short of what was recorded, {recorded:0.00}, by {100 * (1 - (least / recorded)):0} %"));
            }
        }

        Console.WriteLine();
        Console.WriteLine("| a note, as the drill grows | 84 notes | 840 notes | 8,400 notes | allocated in all |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var stage in growth.Reports.GroupBy(Name))
        {
            var reports = stage.OrderBy(Times).ToArray();
            var costs = string.Join(" | ", reports.Select(r => Line($"{r.ResultStatistics!.Median / (GrowthBenchmarks.Notes * Times(r)):0.0} ns")));
            Console.WriteLine(Line($"| {stage.Key} | {costs} | {string.Join(", ", reports.Select(r => Line($"{Allocated(r):0} B")))} |"));
        }

        Console.WriteLine();
        Console.WriteLine("| at full size | median | least | allocated in all |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var report in BenchmarkRunner.Run<SizeBenchmarks>(config).Reports)
        {
            var s = report.ResultStatistics!;
            Console.WriteLine(Line($"| {Name(report)} | {s.Median / 1e9:0.00} s | {s.Min / 1e9:0.00} s | {Allocated(report) / 1e6:0} MB |"));
        }

        Console.WriteLine();
        FirstDrill.Measure();
    }

    private static string Name(BenchmarkReport report) => report.BenchmarkCase.Descriptor.WorkloadMethod.Name;

    private static int Times(BenchmarkReport report) => (int)report.BenchmarkCase.Parameters[nameof(GrowthBenchmarks.Times)];

    private static double Allocated(BenchmarkReport report) => report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? double.NaN;

    private static BenchmarkDotNet.Mathematics.Statistics Statistics(Summary summary, string name) => summary.Reports.First(r => Name(r) == name).ResultStatistics!;

    private static string Micro(double nanoseconds) => Line($"{nanoseconds / 1000:0.00} µs");

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
