using System.Buffers;
using BenchmarkDotNet.Attributes;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Benchmarks;

/// <summary>One drill of 84 notes: lines up, turned round and their ends, from the rule to the bytes.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class DrillBenchmarks
{
    private readonly ArrayBufferWriter<byte> _buffer = new(1 << 17);
    private readonly MidiFormat _midi = new(MidiOptions.Default with { HasDrone = false });
    private readonly MusicXmlFormat _xml = new();
    private Drill _drill = null!;
    private Expansion _lines = null!;
    private Score _score = null!;

    [GlobalSetup]
    public void SetUp()
    {
        _drill = new Drill
        {
            Scale = Catalogue.Default.Parent(15).Scale,
            Pattern = Pattern.Ladder + Pattern.Ladder.Reversed() + Pattern.Ladder.Ends(),
            Tonic = Tonic.Parse("C4"),
            Speed = Speed.Second,
        };
        _lines = _drill.Pattern.Expand(_drill.Scale);
        _score = _drill.ToScore(_lines);
    }

    [Benchmark]
    public Expansion Expand() => _drill.Pattern.Expand(_drill.Scale);

    [Benchmark]
    public Score PutInTime() => _drill.ToScore(_lines);

    [Benchmark]
    public int WriteMidi()
    {
        _buffer.ResetWrittenCount();
        _midi.Write(_score, _buffer);
        return _buffer.WrittenCount;
    }

    [Benchmark]
    public int WriteMusicXml()
    {
        _buffer.ResetWrittenCount();
        _xml.Write(_score, _buffer);
        return _buffer.WrittenCount;
    }
}
