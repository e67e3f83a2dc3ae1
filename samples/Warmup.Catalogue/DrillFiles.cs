using System.Buffers;
using Warmup.Midi;
using Warmup.MusicXml;

namespace Warmup.WholeCatalogue;

/// <summary>
/// Makes drills as files in memory, one after the other in the same buffer, and keeps only the size and a checksum of each. What one worker has:
/// not for several threads at once.
/// </summary>
internal sealed class DrillFiles
{
    private const int FirstSize = 1 << 16;

    private static readonly MidiFormat Midi = new();
    private static readonly MusicXmlFormat Xml = new();

    private readonly ArrayBufferWriter<byte> _buffer = new(FirstSize);

    // The last drill that was made from its pattern. In the catalogue's order others with its lines follow.
    private CarriedDrill? _carried;

    /// <summary>Makes all drills and adds up what is kept, in their order.</summary>
    public static Totals Make(OrderedParallel run, IEnumerable<Drill> drills, CancellationToken stop, Action<int>? reached = null)
    {
        var totals = new Totals();
        var done = 0;

        // One drill takes so little time that handing over each would cost more than a worker gains.
        var parts = drills.Chunk(CatalogueDrills.Tonics);
        foreach (var part in run.Map(parts, () => new DrillFiles(), (part, files, cancellation) => Array.ConvertAll(part, d => files.Make(d, cancellation)), stop))
        {
            Array.ForEach(part, totals.Add);
            done += part.Length;
            reached?.Invoke(done);
        }

        return totals;
    }

    /// <summary>Makes one drill: both files, one after the other.</summary>
    public Made Make(Drill drill, CancellationToken stop)
    {
        try
        {
            var score = ScoreOf(drill, stop);
            _buffer.ResetWrittenCount();
            Midi.Write(score, _buffer, stop);
            var midi = _buffer.WrittenCount;
            Xml.Write(score, _buffer, stop);
            return new Made { Notes = score.NoteCount, MidiBytes = midi, XmlBytes = _buffer.WrittenCount - midi, Checksum = Crc32C.Of(_buffer.WrittenSpan) };
        }
        catch (PatternException refused)
        {
            return new Made { Refusal = refused.Finding.Code };
        }
        catch (ExportException)
        {
            return new Made { Refusal = "export" };
        }
    }

    private Score ScoreOf(Drill drill, CancellationToken stop)
    {
        if (!ReferenceEquals(_carried?.Drill.Scale, drill.Scale) || !ReferenceEquals(_carried.Drill.Pattern, drill.Pattern) || _carried.Drill.Speeds != drill.Speeds)
        {
            _carried = new CarriedDrill(drill, stop);
        }

        return _carried.ToScore(drill, stop);
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
