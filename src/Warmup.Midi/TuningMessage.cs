namespace Warmup.Midi;

/// <summary>A single-note tuning change of the MIDI Tuning Standard, gathered key by key.</summary>
internal ref struct TuningMessage
{
    /// <summary>The most keys of one message.</summary>
    public const int MostKeys = 127;

    /// <summary>The bytes a full message takes.</summary>
    public const int Size = Head + (4 * MostKeys);

    private const int Head = 6;

    private readonly Span<byte> _bytes;

    /// <summary>An empty message.</summary>
    /// <param name="bytes">At least <see cref="Size"/> bytes.</param>
    /// <param name="program">The tuning program, 0 to 127.</param>
    public TuningMessage(Span<byte> bytes, int program)
    {
        // Universal real time, all devices, MIDI tuning, single-note change.
        _bytes = bytes;
        ReadOnlySpan<byte> head = [0x7F, 0x7F, 0x08, 0x02, (byte)program, 0];
        head.CopyTo(bytes);
    }

    /// <summary>The keys so far.</summary>
    public int Keys { get; private set; }

    /// <summary>Whether no more keys fit.</summary>
    public readonly bool IsFull => Keys == MostKeys;

    /// <summary>The message without F0 and F7.</summary>
    public readonly ReadOnlySpan<byte> Data => _bytes[..(Head + (4 * Keys))];

    /// <summary>Adds a key.</summary>
    public void Add(KeyTuning key)
    {
        var at = _bytes[(Head + (4 * Keys))..];
        at[0] = (byte)key.Key;
        at[1] = (byte)(key.Retuned >> 14);
        at[2] = (byte)((key.Retuned >> 7) & 0x7F);
        at[3] = (byte)(key.Retuned & 0x7F);
        Keys++;
        _bytes[Head - 1] = (byte)Keys;
    }
}
