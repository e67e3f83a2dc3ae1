using System.Globalization;

namespace Warmup.Drawing;

/// <summary>
/// What was measured of voices over time, drawn on pages of A4: for each voice its lowest and highest comfortable notes as lines over the days, and below
/// them the sustained tone. All voices have the same days from left to right.
/// </summary>
/// <remarks>Equal charts give equal bytes on the same system. Immutable, value equality.</remarks>
public sealed record HistoryChart
{
    // The project's own bound.
    private const int MostVoices = 1_000;

    /// <summary>Makes a chart.</summary>
    /// <param name="voices">The voices, 1 to 1,000.</param>
    /// <exception cref="ArgumentException">There are no or too many, or one is missing.</exception>
    public HistoryChart(ValueList<MeasuredVoice> voices)
    {
        Require.InRange(voices.Count, 1, MostVoices, "the number of voices");
        foreach (var voice in voices)
        {
            Require.NotNull(voice, nameof(voices));
        }

        Voices = voices;
    }

    /// <summary>The voices.</summary>
    public ValueList<MeasuredVoice> Voices { get; }

    /// <summary>The title, at most 100 characters without control characters; <c>Measurements over time</c> by default.</summary>
    /// <exception cref="ArgumentException">The text is missing, too long or holds control characters.</exception>
    public string Title
    {
        get;
        init => field = Require.PlainText(value, PrintedForm.LongestTitle, nameof(Title));
    } = "Measurements over time";

    /// <summary>Writes the chart as PDF, with the fonts it uses.</summary>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">No font has a glyph for a character.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WritePdf(Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        PdfPages.Write(Draw(), DrawingFonts.Noto, destination, cancellationToken);
    }

    /// <summary>Writes the chart as SVG, the pages one below the other.</summary>
    /// <param name="destination">Where the bytes go, in UTF-8; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">No font has a glyph for a character.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WriteSvg(Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var typefaces = new Typefaces(DrawingFonts.Noto);
        SvgPages.Write(Draw(), typefaces, destination, cancellationToken);
    }

    /// <summary>The title and the number of voices.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Title}: {Voices.Count} {(Voices.Count == 1 ? "voice" : "voices")}"));

    private PageSet Draw()
    {
        using var shaper = new TextShaper(DrawingFonts.Noto);
        return new HistoryDrawing(this, shaper).Draw();
    }
}
