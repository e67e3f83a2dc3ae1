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
    /// <summary>Everything.</summary>
    public const string Command = "report";

    /// <summary>The job and its growth alone.</summary>
    public const string JobCommand = "job";

    private const int Rounds = 40;

    // More than a tenth below what was recorded is not the noise of one run.
    private const double LeastShare = 0.9;

    /// <summary>
    /// A goal: how many times as fast as a reference a stage is to be; and how many times it was, by the least times, in the run that
    /// docs/performance.md records.
    /// </summary>
    private static readonly (string Stage, string Reference, double Goal, double Recorded)[] Goals =
    [
        (nameof(JobBenchmarks.DrillToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 2.5, 2.56),
        (nameof(JobBenchmarks.LinesToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 2.5, 3.32),
        (nameof(JobBenchmarks.CarriedToMidi), nameof(JobBenchmarks.NAudioReadyEvents), 4, 6.23),
        (nameof(JobBenchmarks.DrillToMusicXml), nameof(JobBenchmarks.XmlWriterReadyScore), 6.5, 7.77),
        (nameof(JobBenchmarks.CarriedToMusicXml), nameof(JobBenchmarks.XmlWriterReadyScore), 8, 9.43),
    ];

    private static readonly (string Name, Action<JobBenchmarks> Run)[] Stages =
    [
        (nameof(JobBenchmarks.Expand), j => j.Expand()),
        (nameof(JobBenchmarks.ToScore), j => j.ToScore()),
        (nameof(JobBenchmarks.Check), j => j.Check()),
        (nameof(JobBenchmarks.CheckFitting), j => j.CheckFitting()),
        (nameof(JobBenchmarks.Midi), j => j.Midi()),
        (nameof(JobBenchmarks.MusicXml), j => j.MusicXml()),
        (nameof(JobBenchmarks.CarriedToScore), j => j.CarriedToScore()),
        (nameof(JobBenchmarks.CarriedToMidi), j => j.CarriedToMidi()),
        (nameof(JobBenchmarks.LinesToMidi), j => j.LinesToMidi()),
        (nameof(JobBenchmarks.DrillToMidi), j => j.DrillToMidi()),
        (nameof(JobBenchmarks.NAudioReadyEvents), j => j.NAudioReadyEvents()),
        (nameof(JobBenchmarks.CarriedToMusicXml), j => j.CarriedToMusicXml()),
        (nameof(JobBenchmarks.DrillToMusicXml), j => j.DrillToMusicXml()),
        (nameof(JobBenchmarks.XmlWriterReadyScore), j => j.XmlWriterReadyScore()),
        (nameof(JobBenchmarks.All), j => j.All()),
        (nameof(JobBenchmarks.NotesOnlyMidi), j => j.NotesOnlyMidi()),
        (nameof(JobBenchmarks.NotesOnlyCarriedToMidi), j => j.NotesOnlyCarriedToMidi()),
        (nameof(JobBenchmarks.NotesOnlyDrillToMidi), j => j.NotesOnlyDrillToMidi()),
        (nameof(JobBenchmarks.NotesOnlyNAudio), j => j.NotesOnlyNAudio()),
        (nameof(JobBenchmarks.CopyMidi), j => j.CopyMidi()),
        (nameof(JobBenchmarks.CopyMusicXml), j => j.CopyMusicXml()),
    ];

    private static readonly int[] Growths = [1, 10, 100];

    private static readonly (string Name, Action<GrowthBenchmarks> Run)[] GrowthStages =
    [
        (nameof(GrowthBenchmarks.Expand), g => g.Expand()),
        (nameof(GrowthBenchmarks.ToScore), g => g.ToScore()),
        (nameof(GrowthBenchmarks.Check), g => g.Check()),
        (nameof(GrowthBenchmarks.Midi), g => g.Midi()),
        (nameof(GrowthBenchmarks.MusicXml), g => g.MusicXml()),
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
        PrintJob();
        PrintGrowth();
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

    /// <summary>Prints the stages of the job, measured by turns, and how they stand to the goals.</summary>
    public static void PrintJob()
    {
        var turns = new Turns(Rounds, Stages);
        Console.WriteLine();
        Console.WriteLine("| one drill of 84 notes | least | median | allocated |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var (stage, _) in Stages)
        {
            var cost = turns[stage];
            Console.WriteLine(Line($"| {stage} | {cost.Least:0.00} µs | {cost.Median:0.00} µs | {cost.Allocated:0} B |"));
        }

        Console.WriteLine();
        foreach (var (stage, reference, goal, recorded) in Goals)
        {
            var (least, median) = turns.Ratio(stage, reference);
            Console.WriteLine(Line($"{stage}: {least:0.00} times as fast as {reference} by the least, {median:0.00} by the median"));
            if (least < goal)
            {
                Console.WriteLine(Line($"  falls short of the goal, {goal:0.0}"));
            }

            if (least < LeastShare * recorded)
            {
                Console.WriteLine(Line($"  falls short of what was recorded, {recorded:0.00}, by {100 * (1 - (least / recorded)):0} %"));
            }
        }
    }

    /// <summary>Prints what each stage costs a note as the drill grows, by the least times.</summary>
    public static void PrintGrowth()
    {
        var drills = Array.ConvertAll(Growths, times => new GrowthBenchmarks { Times = times });
        Array.ForEach(drills, d => d.SetUp());
        Console.WriteLine();
        Console.WriteLine("| a note, as the drill grows | 84 notes | 840 notes | 8,400 notes | allocated in all |");
        Console.WriteLine("|---|---|---|---|---|");
        foreach (var (name, run) in GrowthStages)
        {
            var costs = Array.ConvertAll(drills, d => Least.Of(() => run(d)));
            var notes = costs.Zip(Growths, (c, times) => Line($"{c.Nanoseconds / (GrowthBenchmarks.Notes * times):0.0} ns"));
            Console.WriteLine(Line($"| {name} | {string.Join(" | ", notes)} | {string.Join(", ", costs.Select(c => Line($"{c.Allocated:0} B")))} |"));
        }
    }

    private static string Name(BenchmarkReport report) => report.BenchmarkCase.Descriptor.WorkloadMethod.Name;

    private static double Allocated(BenchmarkReport report) => report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? double.NaN;

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
