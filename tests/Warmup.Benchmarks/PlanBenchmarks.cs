using BenchmarkDotNet.Attributes;
using Warmup.Plans;

namespace Warmup.Benchmarks;

/// <summary>What a plan over many days costs.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class PlanBenchmarks
{
    private PlanRequest _request = null!;

    [Params(28, 10_000)]
    public int Days { get; set; }

    [GlobalSetup]
    public void SetUp() => _request = new PlanRequest
    {
        Scales = [Catalogue.Default.Read("Mohanam"), Catalogue.Default.Read("Hamsadhwani"), Catalogue.Default.Read("15")],
        Singers = [new Singer("Wren", NoteName.FromMidi(55), NoteName.FromMidi(76), 24), new Singer("Finch", NoteName.FromMidi(53), NoteName.FromMidi(74), 26)],
        Start = new DateOnly(2026, 12, 1),
        Days = Days,
    };

    [Benchmark]
    public PlanResult Make() => WarmupPlan.Make(_request);
}
