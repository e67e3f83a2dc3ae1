using System.Buffers;
using BenchmarkDotNet.Attributes;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Benchmarks;

/// <summary>What each stage costs as a drill of 84 notes is sung once, ten times and a hundred times.</summary>
[MemoryDiagnoser]
public class GrowthBenchmarks
{
    /// <summary>The notes of one time through the drill.</summary>
    public const int Notes = 84;

    private readonly ArrayBufferWriter<byte> _buffer = new(1 << 23);
    private readonly MidiFormat _midi = new();
    private readonly MusicXmlFormat _xml = new();
    private readonly Singer _singer = new("Wren", NoteName.FromMidi(55), NoteName.FromMidi(79), 24);
    private Drill _drill = null!;
    private Expansion _lines = null!;
    private Score _score = null!;

    [Params(1, 10, 100)]
    public int Times { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _drill = JobDrills.Drill(15, Tonic.FromMidi(60), 60) with { Pattern = JobDrills.Pattern.Repeat(Times) };
        _lines = _drill.Pattern.Expand(_drill.Scale);
        _score = _drill.ToScore(_lines);
    }

    [Benchmark]
    public Expansion Expand() => _drill.Pattern.Expand(_drill.Scale);

    [Benchmark]
    public Score ToScore() => _drill.ToScore(_lines);

    [Benchmark]
    public ValueList<Finding> Check() => _score.Check(_singer);

    [Benchmark]
    public int Midi()
    {
        _buffer.ResetWrittenCount();
        _midi.Write(_score, _buffer);
        return _buffer.WrittenCount;
    }

    [Benchmark]
    public int MusicXml()
    {
        _buffer.ResetWrittenCount();
        _xml.Write(_score, _buffer);
        return _buffer.WrittenCount;
    }
}
