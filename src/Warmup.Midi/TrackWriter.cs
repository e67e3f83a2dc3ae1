using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Warmup.Midi;

/// <summary>
/// Writes a file's bytes. A chunk begins with its length, which is known only at its end: a trial writes into a single block, from its start
/// again whenever it is full, and tells the lengths. A file that fits the block is finished with the trial; a longer one is written once more.
/// </summary>
/// <remarks>It allocates nothing. It can be stopped between blocks.</remarks>
internal ref struct TrackWriter
{
    /// <summary>The largest variable-length quantity: four bytes of seven bits.</summary>
    public const long LargestQuantity = 0x0FFF_FFFF;

    /// <summary>The meta event of a syllable.</summary>
    public const int Lyric = 0x05;

    /// <summary>The least size of a trial's block; most drills fit in it.</summary>
    public const int TrialBlock = 16 * 1024;

    private const int Block = 4096;
    private const int LongestQuantity = 4;
    private const int LongestMessage = LongestQuantity + 3;
    private const int LongestMetaHead = LongestQuantity + 2 + LongestQuantity;

    // A longer text is written a character at a time.
    private const int PlainText = 128;

    /// <summary>The release velocity of a keyboard that does not measure it.</summary>
    public const int Release = 64;

    private const string TimeBetween = "the time between two events, in ticks,";
    private const string LengthOfText = "the length of a text";
    private const string LengthOfMessage = "the length of a system exclusive message";

    private readonly IBufferWriter<byte>? _output;
    private readonly CancellationToken _cancellation;
    private readonly MidiTextEncoding _text;
    private readonly bool _running;
    private Span<byte> _block;
    private int _used;
    private long _before;
    private long _chunk;
    private long _tick;
    private int _status;

    /// <summary>A trial.</summary>
    /// <param name="block">The block, of at least <see cref="TrialBlock"/> bytes.</param>
    /// <param name="options">The options.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TrackWriter(Span<byte> block, MidiOptions options, CancellationToken cancellation)
    {
        _block = block;
        _text = options.Text;
        _running = options.HasRunningStatus;
        _cancellation = cancellation;
    }

    /// <summary>A writer that hands its bytes on.</summary>
    /// <param name="output">Where the bytes go.</param>
    /// <param name="options">The options.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TrackWriter(IBufferWriter<byte> output, MidiOptions options, CancellationToken cancellation)
        : this([], options, cancellation) => _output = output;

    /// <summary>The bytes written so far.</summary>
    public readonly long Length => _before + _used;

    /// <summary>Whether all of them are in the first block.</summary>
    public readonly bool IsWhole => _before == 0;

    /// <summary>Whether a message leaves out its status where it is that of the message before.</summary>
    public readonly bool IsRunning => _running;

    /// <summary>When the event before comes.</summary>
    public readonly long Tick => _tick;

    /// <summary>Begins a track at tick 0.</summary>
    /// <param name="length">The length of its chunk.</param>
    public void BeginTrack(uint length)
    {
        var head = Room(8);
        "MTrk"u8.CopyTo(head);
        BinaryPrimitives.WriteUInt32BigEndian(head[4..], length);
        _used += 8;
        _chunk = Length;
        (_tick, _status) = (0, 0);
    }

    /// <summary>Ends the track.</summary>
    /// <param name="tick">Where.</param>
    /// <returns>The length of its chunk.</returns>
    public uint EndTrack(long tick)
    {
        Meta(tick, 0x2F, default);
        return checked((uint)(Length - _chunk));
    }

    public void NoteOn(long tick, int channel, int key, int velocity) => Channel(tick, 0x90, channel, key, velocity);

    public void NoteOff(long tick, int channel, int key)
    {
        if (_running)
        {
            Channel(tick, 0x90, channel, key, 0);
        }
        else
        {
            Channel(tick, 0x80, channel, key, Release);
        }
    }

    /// <summary>A pitch bend, 0 to 16383; 8192 bends nothing.</summary>
    public void Bend(long tick, int channel, int bend) => Channel(tick, 0xE0, channel, bend & 0x7F, bend >> 7);

    /// <summary>A program, 1 to 128: the one message with a single byte of data.</summary>
    public void Program(long tick, int channel, int program)
    {
        Channel(tick, 0xC0, channel, program - 1, 0);
        _used--;
    }

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

    /// <summary>A meta event with text, and bytes after it.</summary>
    public void Text(long tick, int type, scoped ReadOnlySpan<char> text, scoped ReadOnlySpan<byte> suffix = default)
    {
        if (text.Length <= PlainText && IsPlain(text))
        {
            MetaHead(tick, type, text.Length + suffix.Length);
            var room = Room(PlainText);
            for (var i = 0; i < text.Length; i++)
            {
                room[i] = (byte)text[i];
            }

            _used += text.Length;
            Put(suffix);
            return;
        }

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

    /// <summary>A meta event with a short text.</summary>
    public void Text(long tick, int type, ShortText text)
    {
        var room = Room(LongestMetaHead + sizeof(ulong));
        var at = Delta(room, tick);
        _used += at + Meta(room[at..], type, text);
        _status = 0;
    }

    /// <summary>Puts a meta event with a short text.</summary>
    /// <returns>The bytes it takes.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Meta(Span<byte> room, int type, ShortText text)
    {
        var head = Three(room, 0xFF, type, text.Length);
        BinaryPrimitives.WriteUInt64LittleEndian(room[head..], text.Bytes);
        return head + text.Length;
    }

    /// <summary>A system exclusive message; its data goes without F0 and F7.</summary>
    public void SystemExclusive(long tick, scoped ReadOnlySpan<byte> data)
    {
        var room = Room(LongestQuantity + 1 + LongestQuantity);
        var at = Delta(room, tick);
        room[at++] = 0xF0;
        _used += at + Quantity(room[at..], data.Length + 1, LengthOfMessage);
        Put(data);
        Put([0xF7]);
        _status = 0;
    }

    /// <summary>Takes what was put into <see cref="Room"/>.</summary>
    /// <param name="bytes">The number of bytes.</param>
    /// <param name="tick">When the last event among them comes.</param>
    /// <param name="status">The status of that event.</param>
    public void Take(int bytes, long tick, int status)
    {
        _used += bytes;
        (_tick, _status) = (tick, status);
    }

    /// <summary>Bytes as they stand.</summary>
    public void Put(scoped ReadOnlySpan<byte> bytes)
    {
        bytes.CopyTo(Room(bytes.Length));
        _used += bytes.Length;
    }

    /// <summary>Hands what was written to the buffer.</summary>
    public void Flush()
    {
        _output?.Advance(_used);
        _before += _used;
        _block = default;
        _used = 0;
    }

    // A loop of our own: the runtime's search boxes its bounds until it has been compiled a second time.
    private static bool IsPlain(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (c is < ' ' or > '~')
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>How loud a channel is throughout, 0 to 127.</summary>
    public void Volume(long tick, int channel, int value) => Controller(tick, channel, 7, value);

    /// <summary>How loud a channel is at the moment, 0 to 127.</summary>
    public void Expression(long tick, int channel, int value) => Controller(tick, channel, 11, value);

    private void Controller(long tick, int channel, int number, int value) => Channel(tick, 0xB0, channel, number, value);

    private void Channel(long tick, int kind, int channel, int first, int second)
    {
        if (((channel & ~0xF) | ((first | second) & ~0x7F)) != 0)
        {
            throw NoMessage(kind, channel, first, second);
        }

        var room = Room(LongestMessage + 1);
        var at = Delta(room, tick);
        var status = kind | channel;
        if (_running && status == _status)
        {
            room[at++] = (byte)first;
            room[at++] = (byte)second;
        }
        else
        {
            at += Three(room[at..], status, first, second);
        }

        _status = status;
        _used += at;
    }

    /// <summary>Puts three bytes with one store, which may touch the byte after them.</summary>
    /// <returns>Three.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Three(Span<byte> room, int first, int second, int third)
    {
        BinaryPrimitives.WriteInt32LittleEndian(room, first | (second << 8) | (third << 16));
        return 3;
    }

    private static InvalidOperationException NoMessage(int kind, int channel, int first, int second) => new(string.Create(
        CultureInfo.InvariantCulture, $"event {kind:X2} with channel {channel} and data {first} {second} does not form a MIDI message"));

    private void MetaHead(long tick, int type, long length)
    {
        var room = Room(LongestMetaHead);
        var at = Delta(room, tick);
        room[at++] = 0xFF;
        room[at++] = (byte)type;
        _used += at + Quantity(room[at..], length, LengthOfText);
        _status = 0;
    }

    /// <summary>Puts the time between two events.</summary>
    /// <returns>The bytes it takes.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Time(Span<byte> room, long ticks) => Quantity(room, ticks, TimeBetween);

    /// <summary>The time since the event before.</summary>
    /// <returns>The bytes it takes.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int Delta(Span<byte> room, long tick)
    {
        var delta = tick - _tick;
        _tick = tick;
        return Time(room, delta);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Quantity(Span<byte> room, long value, string what)
    {
        if (value is >= 0 and < 0x80)
        {
            room[0] = unchecked((byte)value);
            return 1;
        }

        if (value is >= 0 and < 0x4000)
        {
            room[1] = unchecked((byte)(value & 0x7F));
            room[0] = unchecked((byte)((value >> 7) | 0x80));
            return 2;
        }

        return LongQuantity(room, value, what);
    }

    private static int LongQuantity(Span<byte> room, long value, string what)
    {
        if (value < 0)
        {
            throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"events must follow each other in time; {what} is {value}"));
        }

        if (value > LargestQuantity)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture, $"{what} must be between 0 and {LargestQuantity}, not {value}"));
        }

        var at = 0;
        for (var shift = 21; shift > 0; shift -= 7)
        {
            if (value >> shift != 0)
            {
                room[at++] = (byte)(((value >> shift) & 0x7F) | 0x80);
            }
        }

        room[at++] = (byte)(value & 0x7F);
        return at;
    }

    /// <summary>Room for a number of bytes, or more.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Span<byte> Room(int bytes)
    {
        if (unchecked(_block.Length - _used) < bytes)
        {
            NextBlock(bytes);
        }

        return _block[_used..];
    }

    private void NextBlock(int bytes)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (_output is null)
        {
            _before += _used;
            _used = 0;
            return;
        }

        Flush();
        _block = _output.GetSpan(Math.Max(bytes, Block));
    }
}
