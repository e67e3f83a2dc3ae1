using System.Globalization;
using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>Writes pages as a PNG picture, one below the other on white.</summary>
internal static class PngPages
{
    public static void Write(List<Page> pages, ValueList<FontFile> fonts, int dotsPerInch, Stream destination, CancellationToken cancellation)
    {
        var scale = dotsPerInch / 72.0;
        var (width, height) = ((long)Math.Round(pages[0].Width * scale), (long)Math.Round(pages[0].Height * scale));
        if (width * height * pages.Count > PngFormat.MostDots)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"{pages.Count} pages at {dotsPerInch} dots an inch are {width * height * pages.Count} dots; a PNG has at most {PngFormat.MostDots}: write a PDF or one page, or take fewer dots an inch"));
        }

        using var typefaces = new Typefaces(fonts);
        using var surface = SKSurface.Create(new SKImageInfo((int)width, (int)(height * pages.Count), SKColorType.Rgba8888, SKAlphaType.Opaque))
            ?? throw new ExportException("there is not enough memory for the picture; write a PDF, or take fewer dots an inch");
        surface.Canvas.Clear(SKColors.White);
        for (var p = 0; p < pages.Count; p++)
        {
            cancellation.ThrowIfCancellationRequested();
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
