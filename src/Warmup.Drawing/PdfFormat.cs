using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>PDF with pages of A4. Its texts can be searched, and it embeds the fonts that it uses.</summary>
/// <param name="options">What is drawn.</param>
/// <remarks>The date of creation is fixed: equal scores give equal bytes on the same system.</remarks>
public sealed class PdfFormat(DrawingOptions options) : IScoreFormat
{
    // A PDF has a date; the time of writing would make every file differ.
    private static readonly DateTime Created = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

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
        using var typefaces = new Typefaces(Options.Fonts);

        // Skia hides a stream's errors, so the document is made in memory, and a full disk shows when it is copied.
        using var memory = new MemoryStream();
        var metadata = SKDocumentPdfMetadata.Default;
        (metadata.Title, metadata.Subject, metadata.Creation, metadata.Modified) = (drawing.Title, drawing.Description, Created, Created);
        using (var document = SKDocument.CreatePdf(memory, metadata))
        {
            foreach (var page in drawing.Pages)
            {
                cancellationToken.ThrowIfCancellationRequested();
                using var canvas = document.BeginPage((float)page.Width, (float)page.Height);
                new SkiaPage(canvas, typefaces).Draw(page);
                document.EndPage();
            }

            document.Close();
        }

        memory.Position = 0;
        memory.CopyTo(destination);
    }
}
