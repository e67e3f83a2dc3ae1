using System.Globalization;
using SkiaSharp;

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
        var scale = Options.DotsPerInch / 72.0;
        var (width, height) = ((long)Math.Round(pages[0].Width * scale), (long)Math.Round(pages[0].Height * scale));
        if (width * height * pages.Count > MostDots)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"{pages.Count} pages at {Options.DotsPerInch} dots an inch are {width * height * pages.Count} dots; a PNG has at most {MostDots}: write a PDF or one page, or take fewer dots an inch"));
        }

        using var typefaces = new Typefaces(Options.Fonts);
        using var surface = SKSurface.Create(new SKImageInfo((int)width, (int)(height * pages.Count), SKColorType.Rgba8888, SKAlphaType.Opaque))
            ?? throw new ExportException("there is not enough memory for the picture; write a PDF, or take fewer dots an inch");
        surface.Canvas.Clear(SKColors.White);
        for (var p = 0; p < pages.Count; p++)
        {
            cancellationToken.ThrowIfCancellationRequested();
            surface.Canvas.Save();
            surface.Canvas.Translate(0, p * height);
            surface.Canvas.Scale((float)scale);
            new SkiaPage(surface.Canvas, typefaces).Draw(pages[p]);
            surface.Canvas.Restore();
        }

        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        data.AsStream().CopyTo(destination);
    }
}
