namespace Warmup;

/// <summary>How a note of a line is reached from the one before it.</summary>
public enum Approach
{
    /// <summary>By a leap or a step of a figure, or it is the first note: nothing lies between.</summary>
    Leap,

    /// <summary>As part of a run over the ascent.</summary>
    Ascent,

    /// <summary>As part of a run over the descent.</summary>
    Descent,
}
