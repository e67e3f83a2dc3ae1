using System.Buffers.Binary;
using System.Text;

namespace Warmup.Midi.Tests;

/// <summary>An event as its bytes stand in a file.</summary>
/// <param name="Tick">Its time in ticks from the track's beginning.</param>
/// <param name="Status">The status byte, filled in where the file leaves it out.</param>
/// <param name="Type">The type of a meta event; -1 for others.</param>
/// <param name="Data">The data bytes; of a system exclusive event everything behind its length.</param>
/// <param name="HasStatus">Whether the status byte stands in the file.</param>
public sealed record RawEvent(long Tick, int Status, int Type, byte[] Data, bool HasStatus)
{
    public int Kind => Status & 0xF0;

    public int Channel => Status & 0x0F;

    public bool IsMeta(int type) => Status == 0xFF && Type == type;

    public bool IsNoteOn => Kind == 0x90 && Data[1] > 0;

    public bool IsNoteOff => Kind == 0x80 || (Kind == 0x90 && Data[1] == 0);

    public string Text => Encoding.UTF8.GetString(Data);
}

/// <summary>
/// A reader of the tests' own, written from the Standard MIDI Files 1.0 specification: it throws at the first byte that breaks it.
/// </summary>
public sealed class RawFile
{
    private readonly byte[] _bytes;
    private int _at;

    private RawFile(byte[] bytes) => _bytes = bytes;

    public int Format { get; private set; }

    public int TicksPerQuarter { get; private set; }

    public List<List<RawEvent>> Tracks { get; } = [];

    public static RawFile Of(Score score, MidiOptions? options = null) => Parse(Files.Bytes(score, options));

    public static RawFile Parse(byte[] bytes)
    {
        var file = new RawFile(bytes);
        Must(file.Take(4).AsSpan().SequenceEqual("MThd"u8), "no MThd");
        Must(file.Long() == 6, "the header's length is not 6");
        file.Format = file.Short();
        var tracks = file.Short();
        file.TicksPerQuarter = file.Short();
        Must(file.TicksPerQuarter is > 0 and < 0x8000, "the division is no number of ticks");
        for (var t = 0; t < tracks; t++)
        {
            Must(file.Take(4).AsSpan().SequenceEqual("MTrk"u8), "no MTrk");
            var length = file.Long();
            var end = file._at + length;
            file.Tracks.Add(file.Track(end));
            Must(file._at == end, "the chunk's length is wrong");
        }

        Must(file._at == bytes.Length, "bytes behind the last track");
        return file;
    }

    private List<RawEvent> Track(long end)
    {
        var events = new List<RawEvent>();
        var tick = 0L;
        var running = 0;
        while (_at < end)
        {
            Must(events.Count == 0 || !events[^1].IsMeta(0x2F), "an event behind the end of the track");
            tick += Quantity();
            var status = (int)_bytes[_at];
            var hasStatus = status >= 0x80;
            if (hasStatus)
            {
                _at++;
            }
            else
            {
                status = running;
                Must(status != 0, "running status without a status");
            }

            switch (status)
            {
                case 0xFF:
                    var type = (int)Take(1)[0];
                    events.Add(new RawEvent(tick, status, type, Take(Quantity()), true));
                    running = 0;
                    break;
                case 0xF0 or 0xF7:
                    events.Add(new RawEvent(tick, status, -1, Take(Quantity()), true));
                    running = 0;
                    break;
                default:
                    Must(status is >= 0x80 and < 0xF0, $"status {status:X2}");
                    var data = Take((status & 0xF0) is 0xC0 or 0xD0 ? 1 : 2);
                    Must(data.All(b => b < 0x80), "a data byte above 127");
                    events.Add(new RawEvent(tick, status, -1, data, hasStatus));
                    running = status;
                    break;
            }
        }

        Must(events.Count > 0 && events[^1].IsMeta(0x2F), "no end of track");
        return events;
    }

    private int Quantity()
    {
        var value = 0;
        for (var i = 0; i < 4; i++)
        {
            var b = Take(1)[0];
            value = (value << 7) | (b & 0x7F);
            if (b < 0x80)
            {
                return value;
            }
        }

        throw new InvalidDataException("a variable-length quantity of more than four bytes");
    }

    private byte[] Take(int count)
    {
        Must(_at + count <= _bytes.Length, "the file ends early");
        _at += count;
        return _bytes[(_at - count).._at];
    }

    private int Short() => BinaryPrimitives.ReadUInt16BigEndian(Take(2));

    private long Long() => BinaryPrimitives.ReadUInt32BigEndian(Take(4));

    private static void Must(bool condition, string message)
    {
        if (!condition)
        {
            throw new InvalidDataException(message);
        }
    }
}
