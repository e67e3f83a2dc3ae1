namespace Warmup.Drawing;

/// <summary>How close a sheet is set.</summary>
/// <param name="Letters">The letters' size in points where a row has room for it.</param>
/// <param name="Leading">The height of a row in parts of that size; more where its signs need it.</param>
/// <param name="IsClose">Whether the head stands in two columns under a smaller title.</param>
internal sealed record SheetStyle(double Letters, double Leading, bool IsClose)
{
    /// <summary>The width before a row, for the number of its line.</summary>
    public const double Gutter = 22;

    /// <summary>The width before a row that can begin inside an avartana, for where it does.</summary>
    public const double WideGutter = 46;

    /// <summary>What a sheet is set in where it fits, from the widest to the closest (the project's own settings).</summary>
    public static SheetStyle[] For(double letters) => [new(letters, 2.3, false), new(letters, 2, true), new(letters, 1.7, true)];
}
