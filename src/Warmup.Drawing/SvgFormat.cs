namespace Warmup.Drawing;

/// <summary>
/// Scalable Vector Graphics 1.1: the pages one below the other. Texts are shaped glyphs drawn as paths, so that they look alike everywhere;
/// each has its words as a title for screen readers. No script, no network.
/// </summary>
/// <param name="options">What is drawn; the student's sheet where left out.</param>
public sealed class SvgFormat(DrawingOptions? options = null) : IScoreFormat
{
    private readonly DrawingOptions _options = options ?? new SheetOptions();

    /// <inheritdoc/>
    public string Name => $"{_options.Subject} as SVG";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".svg"];

    /// <inheritdoc/>
    /// <exception cref="ExportException">No font has a glyph for a character, or there is no such page.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var shaper = new TextShaper(_options.Fonts);
        var pages = _options.Pages(score, shaper, cancellationToken);
        using var faces = new Faces(_options.Fonts);
        SvgPages.Write(pages, faces, destination, cancellationToken);
    }
}
