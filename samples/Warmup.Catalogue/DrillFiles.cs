using System.Buffers;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.WholeCatalogue;

/// <summary>Makes drills as files in memory and keeps only the size and a checksum of each.</summary>
internal static class DrillFiles
{
    private const int FirstSize = 1 << 16;

    private static readonly MidiFormat Midi = new();
    private static readonly MusicXmlFormat Xml = new();

    /// <summary>Makes all drills and adds up what is kept, in their order.</summary>
    public static Totals Make(OrderedParallel run, IEnumerable<Drill> drills, CancellationToken stop, Action<int>? reached = null)
    {
        var totals = new Totals();
        var done = 0;
        foreach (var made in run.Map(drills, () => new ArrayBufferWriter<byte>(FirstSize), MakeOne, stop))
        {
            totals.Add(made);
            reached?.Invoke(++done);
        }

        return totals;
    }

    /// <summary>Makes one drill: both files, one after the other, in the worker's buffer.</summary>
    public static Made MakeOne(Drill drill, ArrayBufferWriter<byte> buffer, CancellationToken stop)
    {
        if (!drill.TryToScore(out var score, out var refusal, stop))
        {
            return new Made { Refusal = refusal!.Code };
        }

        try
        {
            buffer.ResetWrittenCount();
            Midi.Write(score!, buffer, stop);
            var midi = buffer.WrittenCount;
            Xml.Write(score!, buffer, stop);
            return new Made { Notes = score!.NoteCount, MidiBytes = midi, XmlBytes = buffer.WrittenCount - midi, Checksum = Crc32C.Of(buffer.WrittenSpan) };
        }
        catch (ExportException)
        {
            return new Made { Refusal = "export" };
        }
    }
}

/// <summary>What is kept of one drill.</summary>
internal readonly record struct Made
{
    /// <summary>The code of the finding that refused the drill, or <see langword="null"/>.</summary>
    public string? Refusal { get; init; }

    public int Notes { get; init; }

    public int MidiBytes { get; init; }

    public int XmlBytes { get; init; }

    public uint Checksum { get; init; }
}
