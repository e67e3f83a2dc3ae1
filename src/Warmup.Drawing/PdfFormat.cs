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

    /// <summary>Writes several scores into one document, each beginning a page.</summary>
    /// <param name="title">The document's title.</param>
    /// <param name="scores">The scores, at least one.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ArgumentException">There are no scores, or one is <see langword="null"/>.</exception>
    /// <exception cref="ExportException">No font has a glyph for a character, or there is no such page.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void WriteAll(string title, ValueList<Score> scores, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(destination);
        Require.InRange(scores.Count, 1, int.MaxValue, "the number of scores");
        using var shaper = new TextShaper(Options.Fonts);
        var drawings = scores.ConvertAll(s => Options.Pages(Require.NotNull(s, nameof(scores)), shaper, cancellationToken));
        PdfPages.Write(new PageSet(title, drawings[0].Description, [.. drawings.SelectMany(d => d.Pages)]), Options.Fonts, destination, cancellationToken);
    }
}
