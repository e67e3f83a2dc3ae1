namespace Warmup.Drawing;

/// <summary>A PNG picture: the pages one below the other on white.</summary>
/// <param name="options">What is drawn, and how fine.</param>
public sealed class PngFormat(DrawingOptions options) : IScoreFormat
{
    /// <summary>A format that draws the student's sheet.</summary>
    public PngFormat()
        : this(new SheetOptions())
    {
    }

    /// <summary>The most dots of a picture, width times height: 48,000,000, twenty-two pages of A4 at 150 dots an inch (the project's own bound).</summary>
    public static long MostDots => 48_000_000;

    /// <summary>What is drawn.</summary>
    public DrawingOptions Options { get; } = options ?? throw new ArgumentNullException(nameof(options));

    /// <inheritdoc/>
    public string Name => $"{Options.Subject} as PNG";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".png"];

    /// <inheritdoc/>
    /// <exception cref="ExportException">
    /// No font has a glyph for a character, there is no such page, or the picture would have more dots than <see cref="MostDots"/>.
    /// </exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var shaper = new TextShaper(Options.Fonts);
        var pages = Options.Pages(score, shaper, cancellationToken).Pages;
        PngPages.Write(pages, Options.Fonts, Options.DotsPerInch, destination, cancellationToken);
    }
}
