namespace Warmup;

/// <summary>What the hand does on an akshara.</summary>
/// <remarks>
/// The fingers are counted from the little one to the thumb and then from the little one again (common practice; the order of the fingers
/// is from memory).
/// </remarks>
public enum Kriya
{
    /// <summary>The palm on the thigh or on the other palm.</summary>
    Clap,

    /// <summary>Counted with the little finger.</summary>
    LittleFinger,

    /// <summary>Counted with the ring finger.</summary>
    RingFinger,

    /// <summary>Counted with the middle finger.</summary>
    MiddleFinger,

    /// <summary>Counted with the index finger.</summary>
    IndexFinger,

    /// <summary>Counted with the thumb.</summary>
    Thumb,

    /// <summary>The palm turned up.</summary>
    Wave,

    /// <summary>Nothing.</summary>
    Silent,
}
