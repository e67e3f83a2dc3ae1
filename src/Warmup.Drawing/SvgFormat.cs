namespace Warmup.Drawing;

/// <summary>
/// Scalable Vector Graphics 1.1: the pages one below the other. Texts are glyphs drawn as paths, so that they look alike everywhere; each has its
/// words as a title for screen readers. It has no script and loads nothing.
/// </summary>
/// <param name="options">What is drawn.</param>
public sealed class SvgFormat(DrawingOptions options) : IScoreFormat
{
    /// <summary>A format that draws the student's sheet.</summary>
    public SvgFormat()
        : this(new SheetOptions())
    {
    }

    /// <summary>What is drawn.</summary>
    public DrawingOptions Options { get; } = options ?? throw new ArgumentNullException(nameof(options));

    /// <inheritdoc/>
    public string Name => $"{Options.Subject} as SVG";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".svg"];

    /// <inheritdoc/>
    /// <exception cref="ExportException">No font has a glyph for a character, or there is no such page.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var shaper = new TextShaper(Options.Fonts);
        var pages = Options.Pages(score, shaper, cancellationToken);
        using var typefaces = new Typefaces(Options.Fonts);
        SvgPages.Write(pages, typefaces, destination, cancellationToken);
    }
}
