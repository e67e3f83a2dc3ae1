namespace Warmup.Drawing;

/// <summary>How large a contour is drawn, in points.</summary>
/// <param name="Semitone">The height of a semitone where a drill has several strips.</param>
/// <param name="ShortestNote">The least width of a note.</param>
internal sealed record ContourStyle(double Semitone, double ShortestNote)
{
    /// <summary>What is tried in order until the contour has at most <see cref="MostPages"/>, and the first if none has (the project's own settings).</summary>
    public static ContourStyle[] All { get; } = [new(10, 9), new(10, 7), new(9, 6), new(8, 5), new(8, 4), new(7, 4), new(6, 4)];

    public const int MostPages = 2;
}
