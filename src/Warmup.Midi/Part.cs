namespace Warmup.Midi;

/// <summary>The order of events at one tick.</summary>
internal enum Phase
{
    /// <summary>Notes end before anything begins.</summary>
    Off,

    /// <summary>Names, tempi, meters, markers, programs.</summary>
    Setup,

    /// <summary>Bends and tuning messages, before the note they belong to.</summary>
    Tuning,

    /// <summary>The syllable of the note that follows.</summary>
    Lyric,

    /// <summary>Notes begin.</summary>
    On,
}

/// <summary>Gives the events of a part one after the other in the order of their time, again from the start as often as needed.</summary>
internal abstract class Part(MidiPlan plan)
{
    /// <summary>The key of a part without further events.</summary>
    public const long Over = long.MaxValue;

    private const int PhaseBits = 3;

    /// <summary>When the next event comes: its tick and its phase, as one number that orders them.</summary>
    public long Next { get; protected set; } = Over;

    protected MidiPlan Plan { get; } = plan;

    /// <summary>The tick of the next event.</summary>
    protected long Tick => Next >> PhaseBits;

    /// <summary>Goes back to the first event.</summary>
    public abstract void Start();

    /// <summary>Writes the next event, and those behind it that come before a limit.</summary>
    /// <param name="writer">The writer.</param>
    /// <param name="limit">What <see cref="Next"/> must be below for a further event.</param>
    public virtual void Emit(ref TrackWriter writer, long limit)
    {
        do
        {
            Emit(ref writer);
        }
        while (Next < limit);
    }

    /// <summary>Writes the next event and goes on to the one behind it.</summary>
    protected abstract void Emit(ref TrackWriter writer);

    protected static long At(long tick, Phase phase) => (tick << PhaseBits) | (long)phase;

    /// <summary>The program of a channel and what its tuning needs.</summary>
    /// <param name="writer">The writer.</param>
    /// <param name="channel">The channel, 0 to 15.</param>
    /// <param name="program">The General MIDI program, 1 to 128.</param>
    /// <param name="tuningProgram">The program of the MIDI Tuning Standard that the channel takes.</param>
    protected void SetUpChannel(ref TrackWriter writer, int channel, int program, int tuningProgram)
    {
        writer.Program(0, channel, program);
        switch (Plan.Options.Tuning)
        {
            case MidiTuning.PitchBend:
                writer.RegisteredParameter(0, channel, 0, KeyTuning.BendSemitones);
                break;
            case MidiTuning.TuningStandard:
                // The bank (4), then the program (3): one synthesizer retunes a channel only after this selection.
                writer.RegisteredParameter(0, channel, 4, 0);
                writer.RegisteredParameter(0, channel, 3, tuningProgram);
                break;
            default:
                break;
        }
    }
}

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
