namespace Warmup;

/// <summary>
/// How laws treat a combinator: which others it changes places with. The order is that of a normal form, innermost first.
/// </summary>
internal enum LawClass
{
    /// <summary>Changes the frame only (mirrored, swapped, span): changes places with everything that does not look at the frame.</summary>
    Frame,

    /// <summary>Swaps the lists and turns each line round (reversed).</summary>
    Turn,

    /// <summary>Changes each line by itself and keeps their number.</summary>
    EachLine,

    /// <summary>The whole pattern up, then down.</summary>
    UpDown,

    /// <summary>Picks, orders or repeats whole lines by their places, whatever their notes.</summary>
    LineOrder,

    /// <summary>Anything else: only the frame passes through it.</summary>
    Other,

    /// <summary>Looks at the frame itself (returning): nothing passes through it.</summary>
    Barrier,

    /// <summary>No law is known: it stays where it stands.</summary>
    None,
}
