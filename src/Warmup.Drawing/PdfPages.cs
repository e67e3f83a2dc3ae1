using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>Writes pages as a PDF document.</summary>
internal static class PdfPages
{
    // A PDF has a date; the time of writing would make every file differ.
    private static readonly DateTime Created = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    public static void Write(PageSet drawing, ValueList<FontFile> fonts, Stream destination, CancellationToken cancellation)
    {
        using var typefaces = new Typefaces(fonts);

        // Skia hides a stream's errors, so the document is made in memory, and a full disk shows when it is copied.
        using var memory = new MemoryStream();
        var metadata = SKDocumentPdfMetadata.Default;
        (metadata.Title, metadata.Subject, metadata.Creation, metadata.Modified) = (drawing.Title, drawing.Description, Created, Created);
        using (var document = SKDocument.CreatePdf(memory, metadata))
        {
            foreach (var page in drawing.Pages)
            {
                cancellation.ThrowIfCancellationRequested();
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
