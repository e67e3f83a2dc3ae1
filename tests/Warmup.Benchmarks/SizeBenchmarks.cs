using BenchmarkDotNet.Attributes;
using Warmup.Plans;

namespace Warmup.Benchmarks;

/// <summary>A class of 500 singers and a plan of 10,000 days: what <c>warmup fit</c> and <c>warmup plan</c> compute, without the program's start and the disk.</summary>
[MemoryDiagnoser]
public class SizeBenchmarks
{
    private Drill _drill = null!;
    private ValueList<Singer> _singers;
    private PlanRequest _large = null!;
    private PlanRequest _long = null!;

    [GlobalSetup]
    public void SetUp()
    {
        // Two registers an octave apart; ranges, breaths and levels differ from singer to singer.
        _singers = Enumerable.Range(0, 500)
            .Select(i => (Low: 42 + (12 * (i % 2)) + (i % 3), Number: i))
            .Select(v => new Singer($"Voice {v.Number}", NoteName.FromMidi(v.Low), NoteName.FromMidi(v.Low + 19 + (v.Number % 8)), 18 + (v.Number % 13), (Experience)(v.Number % 3)))
            .ToValueList();
        _drill = new Drill { Scale = Catalogue.Default.Read("Mohanam"), Pattern = Pattern.Parse("ladder + ladder.reversed"), Tonic = Tonic.Parse("G3"), Delivery = Delivery.LineByLine };
        _large = new PlanRequest
        {
            Scales = ((string[])["Mohanam", "Mayamalavagowla", "Bilahari", "29"]).Select(Catalogue.Default.Read).ToValueList(),
            Singers = _singers,
            Start = new DateOnly(2026, 12, 1),
        };
        _long = _large with { Singers = _singers.Take(2).ToValueList(), Days = 10_000 };
    }

    [Benchmark]
    public int FitOf500Singers() => ClassReport.Of([_drill], _singers).Rows.Count + TempoWindow.OfSpeeds(_drill, _singers).Count;

    [Benchmark]
    public int PlanFor500Singers() => WarmupPlan.Make(_large).Plan.Days.Count;

    [Benchmark]
    public int PlanOf10000Days()
    {
        var draw = WarmupPlan.Draw(_long);
        var days = draw.KeepDays();
        PlanFile.Write(draw.Outline.Plan, days, Stream.Null);
        return MonthPage.Of(draw.Outline.Plan, days).Count();
    }
}
