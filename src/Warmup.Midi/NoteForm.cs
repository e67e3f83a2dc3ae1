namespace Warmup.Midi;

/// <summary>What notes of one length have in common: the time between the message that begins each and the one that ends it, in one or two bytes.</summary>
internal readonly struct NoteForm
{
    // The two messages without channel, key and velocity, with the time between them; and a one where each begins.
    private readonly ulong _messages;
    private readonly ulong _begins;

    private NoteForm(int steps, long ticks, ulong time, int timeBytes)
    {
        (Steps, Ticks, Bytes) = (steps, ticks, 3 + timeBytes + 3);
        var end = 8 * (3 + timeBytes);
        _messages = 0x90 | (time << (8 * 3)) | ((0x80 | ((ulong)TrackWriter.Release << 16)) << end);
        _begins = 1 | (1UL << end);
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
    public ulong Messages(int channel, int key, int velocity) =>
        unchecked(_messages | (_begins * (uint)(channel | (key << 8))) | ((uint)velocity << 16));
}
