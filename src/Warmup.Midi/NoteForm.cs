namespace Warmup.Midi;

/// <summary>What notes of one length have in common: the time between the message that begins each and the one that ends it, in one or two bytes.</summary>
internal readonly struct NoteForm
{
    private readonly ulong _time;
    private readonly int _endsAt;

    private NoteForm(int steps, long ticks, ulong time, int timeBytes)
    {
        (Steps, Ticks, Bytes) = (steps, ticks, 3 + timeBytes + 3);
        (_time, _endsAt) = (time << (8 * 3), 8 * (3 + timeBytes));
    }

    /// <summary>The length in grid steps.</summary>
    public int Steps { get; }

    /// <summary>The ticks that the notes sound.</summary>
    public long Ticks { get; }

    /// <summary>The bytes of the two messages and the time between them.</summary>
    public int Bytes { get; }

    /// <summary>The form of notes; none where the time takes more than two bytes.</summary>
    public static NoteForm? Of(int steps, long ticks) => ticks switch
    {
        >= 0 and < 0x80 => new NoteForm(steps, ticks, (ulong)ticks, 1),
        >= 0x80 and < 0x4000 => new NoteForm(steps, ticks, (ulong)((ticks >> 7) | 0x80 | ((ticks & 0x7F) << 8)), 2),
        _ => null,
    };

    /// <summary>The two messages of a note with the time between them, as one number that begins with its lowest byte.</summary>
    public ulong Messages(int channel, int key, int velocity)
    {
        var begins = 0x90 | channel | (key << 8) | (velocity << 16);
        var ends = 0x80 | channel | (key << 8) | (TrackWriter.Release << 16);
        return unchecked((uint)begins | _time | ((ulong)(uint)ends << _endsAt));
    }
}
