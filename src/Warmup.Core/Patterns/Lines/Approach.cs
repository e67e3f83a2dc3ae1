namespace Warmup;

/// <summary>How a note of a line is reached from the note before it.</summary>
public enum Approach
{
    /// <summary>By a leap or by a step of a figure; a line's first note too. No note lies between.</summary>
    Leap,

    /// <summary>As part of a run over the ascent.</summary>
    Ascent,

    /// <summary>As part of a run over the descent.</summary>
    Descent,
}
