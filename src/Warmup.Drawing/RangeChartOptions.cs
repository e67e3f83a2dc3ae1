namespace Warmup.Drawing;

/// <summary>How a range chart is drawn.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record RangeChartOptions
{
    private const int LongestTitle = 200;
    private const int Room = 60;

    private readonly string? _title;
    private readonly int _mostBars = 32;

    /// <summary>The options unless others are given.</summary>
    public static RangeChartOptions Default { get; } = new();

    /// <summary>The heading; the score's title by default. At most 200 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The text is too long or holds control characters.</exception>
    public string? Title
    {
        get => _title;
        init => _title = value is null ? null : Require.PlainText(value, LongestTitle, nameof(Title));
    }

    /// <summary>The most bars that are drawn, 1 to 60; 32 by default. A line of text counts the others.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int MostBars
    {
        get => _mostBars;
        init => _mostBars = Require.InRange(value, 1, Room, nameof(MostBars));
    }

    /// <summary>The title and the most bars.</summary>
    public override string ToString() => OneLine.Of($"{Title ?? "the score's title"}, at most {MostBars} bars");
}
