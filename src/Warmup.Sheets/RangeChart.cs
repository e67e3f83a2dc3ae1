using System.Globalization;

namespace Warmup.Sheets;

/// <summary>How a range chart is drawn.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record RangeChartOptions
{
    /// <summary>The most columns that a chart can hold.</summary>
    public const int MostColumns = 60;

    private readonly string? _title;
    private readonly int _mostSingers = 32;

    /// <summary>The heading; the score's title by default. At most 200 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The text is too long or holds control characters.</exception>
    public string? Title
    {
        get => _title;
        init => _title = value is null || (value.Length <= 200 && !value.Any(char.IsControl))
            ? value
            : throw new ArgumentException("the title of a chart must be at most 200 characters long, without control characters", nameof(Title));
    }

    /// <summary>The most singers drawn, 1 to 60; 32 by default. The others are counted in a line of text.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public int MostSingers
    {
        get => _mostSingers;
        init => _mostSingers = value is >= 1 and <= MostColumns
            ? value
            : throw new ArgumentOutOfRangeException(
                nameof(MostSingers), value, string.Create(CultureInfo.InvariantCulture, $"MostSingers must be between 1 and {MostColumns}, not {value}"));
    }
}

/// <summary>
/// Draws a class and a drill for the wall, as SVG on an A3 sheet: each singer's comfortable range as a bar beside a keyboard, the time the
/// drill spends on each note beside it, and in each bar the drill's notes in the octave that suits the singer.
/// </summary>
/// <remarks>Equal input gives equal bytes. No network, no script, no fonts of its own.</remarks>
public static class RangeChart
{
    /// <summary>Writes a chart.</summary>
    /// <param name="score">The score.</param>
    /// <param name="singers">The singers, at least one.</param>
    /// <param name="destination">Where the bytes go (UTF-8); it is not closed.</param>
    /// <param name="options">How it is drawn; the defaults where left out.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no singers.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Write(
        Score score, ValueList<Singer> singers, Stream destination, RangeChartOptions? options = null, CancellationToken cancellationToken = default)
    {
        options ??= new RangeChartOptions();
        var content = RangeChartContent.Of(score, singers, options.MostSingers, cancellationToken);
        using var canvas = new SvgCanvas(destination, RangeChartDrawing.Width, RangeChartDrawing.Height, "420mm", "297mm");
        new RangeChartDrawing(canvas, content).Draw(options.Title ?? score.Title, score);
    }
}
