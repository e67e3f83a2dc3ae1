using System.Buffers;
using BenchmarkDotNet.Attributes;
using NAudio.Midi;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.Benchmarks;

/// <summary>
/// The job of 2,592 drills, stage by stage, beside general writers of the same content and a bare copy of the bytes. Each figure is of one
/// drill of 84 notes. NAudio is given ready events: those of our own files, lyrics and markers and bends included.
/// </summary>
[MemoryDiagnoser]
public class JobBenchmarks
{
    /// <summary>The drills of the job.</summary>
    public const int Drills = 2_592;

    private readonly ArrayBufferWriter<byte> _buffer = new(1 << 18);
    private readonly MidiFormat _midi = new();
    private readonly MidiFormat _notesOnly = new(new MidiOptions { HasLyrics = false, HasMarkers = false, Tuning = MidiTuning.EqualOnly });
    private readonly MusicXmlFormat _xml = new();
    private readonly Singer _singer = new("Wren", NoteName.FromMidi(55), NoteName.FromMidi(79), 24);
    private readonly byte[] _copy = new byte[1 << 18];
    private readonly Drill[] _drills = JobDrills.All;
    private readonly Expansion[] _lines;
    private readonly CarriedDrill[] _carried;
    private readonly Score[] _scores;
    private readonly Score[] _fitting;
    private readonly MidiEventCollection[] _events;
    private readonly byte[][] _midiFiles;
    private readonly byte[][] _xmlFiles;
    private int _first;
    private int _end = Drills;

    public JobBenchmarks()
    {
        // One expansion a scale, for its twelve tonics and three tempi.
        var expansions = _drills.Select(d => d.Scale).Distinct().ToDictionary(s => s, s => JobDrills.Pattern.Expand(s));
        _lines = Array.ConvertAll(_drills, d => expansions[d.Scale]);
        var carried = _drills.GroupBy(d => d.Scale).ToDictionary(g => g.Key, g => new CarriedDrill(g.First()));
        _carried = Array.ConvertAll(_drills, d => carried[d.Scale]);
        _scores = _drills.Zip(_lines, (d, l) => d.ToScore(l)).ToArray();
        var fitting = _scores.Where(s => s.Check(_singer).IsEmpty).ToArray();
        _fitting = [.. Enumerable.Range(0, Drills).Select(i => fitting[i % fitting.Length])];
        _midiFiles = Array.ConvertAll(_scores, s => Written(b => _midi.Write(s, b)));
        _xmlFiles = Array.ConvertAll(_scores, s => Written(b => _xml.Write(s, b)));
        _events = Array.ConvertAll(_midiFiles, f => new MidiFile(new MemoryStream(f), strictChecking: true).Events);
    }

    /// <summary>Has each stage do a part of the job only.</summary>
    /// <param name="first">The first drill, from 0.</param>
    /// <param name="count">The number of drills.</param>
    public void Take(int first, int count) => (_first, _end) = (first, first + count);

    [Benchmark(OperationsPerInvoke = Drills)]
    public int Expand()
    {
        var lines = 0;
        foreach (var drill in _drills.AsSpan(_first.._end))
        {
            lines += drill.Pattern.Expand(drill.Scale).Lines.Count;
        }

        return lines;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int ToScore()
    {
        var notes = 0;
        for (var i = _first; i < _end; i++)
        {
            notes += _drills[i].ToScore(_lines[i]).Sections[0].Notes.Count;
        }

        return notes;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int Check()
    {
        var findings = 0;
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            findings += score.Check(_singer).Count;
        }

        return findings;
    }

    /// <summary>The check of drills that the singer can sing.</summary>
    [Benchmark(OperationsPerInvoke = Drills)]
    public int CheckFitting()
    {
        var findings = 0;
        foreach (var score in _fitting.AsSpan(_first.._end))
        {
            findings += score.Check(_singer).Count;
        }

        return findings;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int Midi()
    {
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _midi.Write(score, _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int MusicXml()
    {
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _xml.Write(score, _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int LinesToMidi()
    {
        for (var i = _first; i < _end; i++)
        {
            _buffer.ResetWrittenCount();
            _midi.Write(_drills[i].ToScore(_lines[i]), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int CarriedToScore()
    {
        var notes = 0;
        for (var i = _first; i < _end; i++)
        {
            notes += _carried[i].ToScore(_drills[i]).Sections[0].Notes.Count;
        }

        return notes;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int CarriedToMidi()
    {
        for (var i = _first; i < _end; i++)
        {
            _buffer.ResetWrittenCount();
            _midi.Write(_carried[i].ToScore(_drills[i]), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int CarriedToMusicXml()
    {
        for (var i = _first; i < _end; i++)
        {
            _buffer.ResetWrittenCount();
            _xml.Write(_carried[i].ToScore(_drills[i]), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int DrillToMidi()
    {
        foreach (var drill in _drills.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _midi.Write(drill.ToScore(), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int DrillToMusicXml()
    {
        foreach (var drill in _drills.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _xml.Write(drill.ToScore(), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int All()
    {
        foreach (var drill in _drills.AsSpan(_first.._end))
        {
            var score = drill.ToScore();
            _ = score.Check(_singer);
            _buffer.ResetWrittenCount();
            _midi.Write(score, _buffer);
            _xml.Write(score, _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public long NAudioReadyEvents()
    {
        using var stream = new MemoryStream(_copy);
        foreach (var events in _events.AsSpan(_first.._end))
        {
            stream.Position = 0;
            MidiFile.Export(stream, events);
        }

        return stream.Position;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public long XmlWriterReadyScore()
    {
        using var stream = new MemoryStream(_copy);
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            stream.Position = 0;
            PlainMusicXml.Write(score, stream);
        }

        return stream.Position;
    }

    /// <summary>A file of notes, tempo, meter and name, without syllables, markers and tuning, from a ready score.</summary>
    [Benchmark(OperationsPerInvoke = Drills)]
    public int NotesOnlyMidi()
    {
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _notesOnly.Write(score, _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int NotesOnlyCarriedToMidi()
    {
        for (var i = _first; i < _end; i++)
        {
            _buffer.ResetWrittenCount();
            _notesOnly.Write(_carried[i].ToScore(_drills[i]), _buffer);
        }

        return _buffer.WrittenCount;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int NotesOnlyDrillToMidi()
    {
        foreach (var drill in _drills.AsSpan(_first.._end))
        {
            _buffer.ResetWrittenCount();
            _notesOnly.Write(drill.ToScore(), _buffer);
        }

        return _buffer.WrittenCount;
    }

    /// <summary>The same content by NAudio: its events are made of the notes of a ready score, and written.</summary>
    [Benchmark(OperationsPerInvoke = Drills)]
    public long NotesOnlyNAudio()
    {
        using var stream = new MemoryStream(_copy);
        foreach (var score in _scores.AsSpan(_first.._end))
        {
            stream.Position = 0;
            MidiFile.Export(stream, PlainNAudio.EventsOf(score));
        }

        return stream.Position;
    }

    [Benchmark(OperationsPerInvoke = Drills)]
    public int CopyMidi() => Copied(_midiFiles);

    [Benchmark(OperationsPerInvoke = Drills)]
    public int CopyMusicXml() => Copied(_xmlFiles);

    /// <summary>Byte by byte, as a writer that had nothing to compute would put them.</summary>
    private int Copied(byte[][] files)
    {
        var at = 0;
        foreach (var file in files.AsSpan(_first.._end))
        {
            at = 0;
            foreach (var b in file)
            {
                _copy[at++] = b;
            }
        }

        return at;
    }

    private static byte[] Written(Action<IBufferWriter<byte>> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        write(buffer);
        return buffer.WrittenSpan.ToArray();
    }
}
