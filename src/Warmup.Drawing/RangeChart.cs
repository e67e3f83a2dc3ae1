namespace Warmup.Drawing;

/// <summary>
/// Draws a class and a drill for the wall, as SVG on an A3 sheet: each comfortable range as a bar beside a keyboard, the time that the drill spends on
/// each note, and in each bar the drill's notes in the octave that suits the singer.
/// </summary>
/// <remarks>Equal input gives equal bytes. The drawing has no script, loads nothing, and uses the fonts of whoever opens it.</remarks>
public static class RangeChart
{
    /// <summary>Writes a chart.</summary>
    /// <param name="score">The score.</param>
    /// <param name="bars">The bars, at least one.</param>
    /// <param name="destination">Where the bytes go (UTF-8); it is not closed.</param>
    /// <param name="options">How it is drawn; the defaults where left out.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no bars, or the score has no notes.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Write(
        Score score, ValueList<RangeBar> bars, Stream destination, RangeChartOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        options ??= RangeChartOptions.Default;
        var content = RangeChartContent.Of(score, bars, options.MostBars, cancellationToken);
        using var svg = new SvgWriter(destination, RangeChartDrawing.Digits);
        new RangeChartDrawing(svg, content).Draw(options.Title ?? score.Title, score);
    }
}
