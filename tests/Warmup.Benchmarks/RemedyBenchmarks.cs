using BenchmarkDotNet.Attributes;

namespace Warmup.Benchmarks;

/// <summary>What would help an invented class of six, and the tempi that it can sing: what a page asks for with each change.</summary>
[MemoryDiagnoser]
public class RemedyBenchmarks
{
    private static readonly ValueList<Singer> Singers =
    [
        Singer("Wren", 55, 76, 18, Experience.Beginner),
        Singer("Finch", 53, 74, 20, Experience.Intermediate),
        Singer("Heron", 53, 72, 22, Experience.Advanced),
        Singer("Otter", 48, 67, 24, Experience.Intermediate),
        Singer("Badger", 43, 62, 22, Experience.Beginner),
        Singer("Robin", 59, 74, 12, Experience.Beginner),
    ];

    private Drill _drill = null!;

    [Params("sarali-1", "janta-2", "alankara-1", "choir-1")]
    public string Exercise { get; set; } = string.Empty;

    [Params(true, false)]
    public bool IsLineByLine { get; set; }

    [GlobalSetup]
    public void Make()
    {
        var exercise = Repertoire.Find(Exercise)!;
        _drill = new Drill
        {
            Scale = Repertoire.UsualScale,
            Pattern = exercise.Pattern,
            Tonic = Tonic.FromMidi(48),
            Meter = exercise.Meter,
            Delivery = IsLineByLine ? Delivery.LineByLine : Delivery.Continuous,
        };
    }

    [Benchmark]
    public int Remedies() => _drill.Advise(Singers).Count;

    [Benchmark]
    public int TempoWindows() => TempoWindow.OfSpeeds(_drill, Singers).Count;

    private static Singer Singer(string alias, int low, int high, int seconds, Experience experience) =>
        new(alias, NoteName.FromMidi(low), NoteName.FromMidi(high), seconds, experience);
}
