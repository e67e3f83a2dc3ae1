namespace Warmup;

/// <summary>How loud a note is from its beginning to its end.</summary>
public enum Loudness
{
    /// <summary>Even.</summary>
    Even,

    /// <summary>Soft, louder until the middle of the note, and soft again at its end: messa di voce.</summary>
    SwellAndFade,
}
