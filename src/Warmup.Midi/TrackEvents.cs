namespace Warmup.Midi;

/// <summary>The order of events at one tick.</summary>
internal enum EventPhase
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

/// <summary>
/// The events of one kind that a track has, the voice's for instance: one after the other in the order of their time, and again from the
/// start as often as needed.
/// </summary>
internal abstract class TrackEvents(MidiPlan plan)
{
    /// <summary>The value of <see cref="Next"/> when no event is left.</summary>
    public const long Over = long.MaxValue;

    private const int PhaseBits = 3;

    /// <summary>When the next event comes: its tick and its phase, as one number that orders them.</summary>
    public long Next { get; protected set; } = Over;

    protected MidiPlan Plan { get; } = plan;

    /// <summary>The tick of the next event.</summary>
    protected long Tick => Next >> PhaseBits;

    /// <summary>Goes back to the first event.</summary>
    public abstract void Start();

    /// <summary>Writes the next event, and those after it that come before a limit.</summary>
    /// <param name="writer">The writer.</param>
    /// <param name="limit">A further event is written only while <see cref="Next"/> lies below it.</param>
    public virtual void Emit(ref TrackWriter writer, long limit)
    {
        do
        {
            Emit(ref writer);
        }
        while (Next < limit);
    }

    /// <summary>Writes the next event and moves to the one after it.</summary>
    protected abstract void Emit(ref TrackWriter writer);

    protected static long At(long tick, EventPhase phase) => (tick << PhaseBits) | (long)phase;

    /// <summary>Sets the program and the volume of a channel, and what its tuning needs.</summary>
    /// <param name="writer">The writer.</param>
    /// <param name="channel">The channel, 0 to 15.</param>
    /// <param name="program">The General MIDI program, 1 to 128.</param>
    /// <param name="volume">The channel's volume, 0 to 127.</param>
    /// <param name="tuningProgram">The program of the MIDI Tuning Standard that the channel uses.</param>
    /// <param name="slideSemitones">The range of the bend that slides need; 0 where nothing slides.</param>
    protected void SetUpChannel(ref TrackWriter writer, int channel, int program, int volume, int tuningProgram, int slideSemitones = 0)
    {
        writer.Program(0, channel, program);
        writer.Volume(0, channel, volume);
        if (slideSemitones > 0)
        {
            writer.RegisteredParameter(0, channel, 0, slideSemitones);
        }

        switch (Plan.Options.Tuning)
        {
            case MidiTuning.PitchBend when slideSemitones == 0:
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
