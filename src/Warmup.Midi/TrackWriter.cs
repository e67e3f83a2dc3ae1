using System.Buffers;
using System.Globalization;
using System.Text;

namespace Warmup.Midi;

/// <summary>
/// Writes the events of one track to a buffer, or only measures them: a chunk begins with its length, so that each track is gone
/// through twice instead of being kept. Nothing is allocated.
/// </summary>
internal ref struct TrackWriter
{
    /// <summary>The largest variable-length quantity: four bytes of seven bits.</summary>
    public const long LargestQuantity = 0x0FFF_FFFF;

    private const int Block = 4096;

    private readonly IBufferWriter<byte>? _output;
    private readonly MidiTextEncoding _text;
    private readonly bool _running;
    private Span<byte> _free;
    private int _used;
    private long _tick;
    private int _status;

    /// <summary>A writer at tick 0.</summary>
    /// <param name="output">Where the bytes go; <see langword="null"/> to measure only.</param>
    /// <param name="options">The options.</param>
    public TrackWriter(IBufferWriter<byte>? output, MidiOptions options)
    {
        _output = output;
        _text = options.Text;
        _running = options.RunningStatus;
    }

    /// <summary>The bytes written so far.</summary>
    public long Length { get; private set; }

    public void NoteOn(long tick, int channel, int key, int velocity) => Channel(tick, 0x90, channel, key, velocity);

    public void NoteOff(long tick, int channel, int key)
    {
        if (_running)
        {
            Channel(tick, 0x90, channel, key, 0);
        }
        else
        {
            // 64 is the release velocity of a keyboard that does not measure it.
            Channel(tick, 0x80, channel, key, 64);
        }
    }

    /// <summary>A pitch bend, 0 to 16383; 8192 bends nothing.</summary>
    public void Bend(long tick, int channel, int bend) => Channel(tick, 0xE0, channel, bend & 0x7F, bend >> 7);

    /// <summary>A program, 1 to 128.</summary>
    public void Program(long tick, int channel, int program) => Channel(tick, 0xC0, channel, program - 1, -1);

    /// <summary>Sets a registered parameter below 128 to a whole value and closes it, so that stray data entry changes nothing.</summary>
    public void RegisteredParameter(long tick, int channel, int parameter, int value)
    {
        Controller(tick, channel, 101, 0);
        Controller(tick, channel, 100, parameter);
        Controller(tick, channel, 6, value);
        Controller(tick, channel, 38, 0);
        Controller(tick, channel, 101, 127);
        Controller(tick, channel, 100, 127);
    }

    /// <summary>A meta event with its data.</summary>
    public void Meta(long tick, int type, scoped ReadOnlySpan<byte> data)
    {
        MetaHead(tick, type, data.Length);
        Put(data);
    }

    /// <summary>A meta event with text, and bytes behind it.</summary>
    public void Text(long tick, int type, scoped ReadOnlySpan<char> text, scoped ReadOnlySpan<byte> suffix = default)
    {
        Span<byte> scratch = stackalloc byte[MidiText.LongestCharacter];
        long length = suffix.Length;
        foreach (var rune in text.EnumerateRunes())
        {
            length += MidiText.Encode(rune, _text, scratch).Length;
        }

        MetaHead(tick, type, length);
        foreach (var rune in text.EnumerateRunes())
        {
            Put(MidiText.Encode(rune, _text, scratch));
        }

        Put(suffix);
    }

    /// <summary>A system exclusive message; its data goes without F0 and F7.</summary>
    public void SystemExclusive(long tick, scoped ReadOnlySpan<byte> data)
    {
        Delta(tick);
        Put(0xF0);
        Quantity(data.Length + 1, "the length of a system exclusive message");
        Put(data);
        Put(0xF7);
        _status = 0;
    }

    /// <summary>Ends the track.</summary>
    public void End(long tick)
    {
        Meta(tick, 0x2F, default);
        Flush();
    }

    /// <summary>Bytes that belong to no event: the heads of chunks.</summary>
    public void Put(scoped ReadOnlySpan<byte> bytes)
    {
        if (_output is not null && bytes.Length > 0)
        {
            if (_free.Length - _used < bytes.Length)
            {
                Flush();
                _free = _output.GetSpan(Math.Max(bytes.Length, Block));
            }

            bytes.CopyTo(_free[_used..]);
            _used += bytes.Length;
        }

        Length += bytes.Length;
    }

    /// <summary>Hands what was written to the buffer.</summary>
    public void Flush()
    {
        if (_used > 0)
        {
            _output!.Advance(_used);
        }

        _free = default;
        _used = 0;
    }

    private void Controller(long tick, int channel, int number, int value) => Channel(tick, 0xB0, channel, number, value);

    private void Channel(long tick, int kind, int channel, int first, int second)
    {
        if (channel is < 0 or > 15 || first is < 0 or > 127 || second is < -1 or > 127)
        {
            throw new InvalidOperationException(string.Create(
                CultureInfo.InvariantCulture, $"event {kind:X2} with channel {channel} and data {first} {second} is no MIDI message"));
        }

        Delta(tick);
        var status = kind | channel;
        if (!_running || status != _status)
        {
            Put((byte)status);
            _status = status;
        }

        Put((byte)first);
        if (second >= 0)
        {
            Put((byte)second);
        }
    }

    private void MetaHead(long tick, int type, long length)
    {
        Delta(tick);
        Put(0xFF);
        Put((byte)type);
        Quantity(length, "the length of a text");
        _status = 0;
    }

    private void Delta(long tick)
    {
        if (tick < _tick)
        {
            throw new InvalidOperationException(string.Create(
                CultureInfo.InvariantCulture, $"an event at tick {tick} cannot follow one at tick {_tick}"));
        }

        Quantity(tick - _tick, "the time between two events, in ticks,");
        _tick = tick;
    }

    private void Quantity(long value, string what)
    {
        if (value > LargestQuantity)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture, $"{what} must be between 0 and {LargestQuantity}, not {value}"));
        }

        for (var shift = 21; shift > 0; shift -= 7)
        {
            if (value >> shift != 0)
            {
                Put((byte)(((value >> shift) & 0x7F) | 0x80));
            }
        }

        Put((byte)(value & 0x7F));
    }

    private void Put(byte value) => Put([value]);
}
