using BenchmarkDotNet.Attributes;

namespace Warmup.Benchmarks;

/// <summary>What a class of 10,000 singers costs: the report, and the ranking of the twelve tonics alone.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class ClassBenchmarks
{
    private Drill _drill = null!;
    private Score _score = null!;
    private ValueList<Singer> _singers;

    [Params(100, 10_000)]
    public int Singers { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _drill = new Drill { Scale = Catalogue.Default.Read("Mohanam"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3"), Delivery = Delivery.LineByLine };
        _score = _drill.ToScore();
        _singers = Enumerable.Range(0, Singers)
            .Select(i => new Singer($"Voice {i}", NoteName.FromMidi(43 + (i % 20)), NoteName.FromMidi(62 + (i % 23)), 10 + (i % 25), (Experience)(i % 3)))
            .ToValueList();
    }

    [Benchmark]
    public ClassReport Report() => ClassReport.Of([_drill], _singers);

    [Benchmark]
    public ValueList<TonicFit> RankTonics() => _score.RankTonics(_singers);
}
