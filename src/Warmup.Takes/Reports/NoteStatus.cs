namespace Warmup.Takes;

/// <summary>What became of a note of the drill in a take.</summary>
public enum NoteStatus
{
    /// <summary>It was sung.</summary>
    Sung,

    /// <summary>Another note was sung in its place.</summary>
    OtherNote,

    /// <summary>It was left out.</summary>
    LeftOut,

    /// <summary>Something was heard in its place, and it cannot be told what.</summary>
    Unsure,
}
