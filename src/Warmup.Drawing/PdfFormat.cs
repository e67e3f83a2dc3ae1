namespace Warmup.Drawing;

/// <summary>PDF with pages of A4. Its texts can be searched, and it embeds the fonts that it uses.</summary>
/// <param name="options">What is drawn.</param>
/// <remarks>The date of creation is fixed: equal scores give equal bytes on the same system.</remarks>
public sealed class PdfFormat(DrawingOptions options) : IScoreFormat
{
    /// <summary>A format that draws the student's sheet.</summary>
    public PdfFormat()
        : this(new SheetOptions())
    {
    }

    /// <summary>What is drawn.</summary>
    public DrawingOptions Options { get; } = options ?? throw new ArgumentNullException(nameof(options));

    /// <inheritdoc/>
    public string Name => $"{Options.Subject} as PDF";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".pdf"];

    /// <inheritdoc/>
    /// <exception cref="ExportException">No font has a glyph for a character, or there is no such page.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(destination);
        using var shaper = new TextShaper(Options.Fonts);
        var drawing = Options.Pages(score, shaper, cancellationToken);
        PdfPages.Write(drawing, Options.Fonts, destination, cancellationToken);
    }
}
