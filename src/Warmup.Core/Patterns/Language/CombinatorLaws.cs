namespace Warmup;

/// <summary>What a combinator of your own promises, in every scale. The normal form builds on it; the law suite of Warmup.Testing tries it.</summary>
[Flags]
public enum CombinatorLaws
{
    /// <summary>Nothing. That is always right, and costs only some equal patterns that are not recognised as equal.</summary>
    None = 0,

    /// <summary>
    /// It changes each line by itself, whatever the other lines are, and gives as many lines as it is given. So it works part by part on
    /// a sum and changes places with words that pick whole lines.
    /// </summary>
    EachLine = 1,

    /// <summary>
    /// It picks, orders or repeats whole lines by their places, whatever their notes. So it changes places with words that change each
    /// line.
    /// </summary>
    LineOrder = 2,

    /// <summary>Applied twice with the same numbers, it gives the lines back.</summary>
    UndoesItself = 4,

    /// <summary>Applied twice with the same numbers, it gives what it gives once.</summary>
    IsIdempotent = 8,
}
