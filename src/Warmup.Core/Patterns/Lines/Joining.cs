namespace Warmup;

/// <summary>How a note goes on to the next one of its line.</summary>
public enum Joining
{
    /// <summary>It is sung on its pitch for its whole length.</summary>
    Plain,

    /// <summary>
    /// Its second half slides to the next note's pitch, evenly in cents (the project's own setting). Where no note of another pitch follows at
    /// once in its line, it is sung plain.
    /// </summary>
    Glide,

    /// <summary>It sounds for the first half of its length and is silent for the second (the project's own setting).</summary>
    Staccato,
}
