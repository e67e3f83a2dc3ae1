using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>Draws pages on a canvas of Skia's.</summary>
internal sealed class SkiaPage(SKCanvas canvas, Faces faces)
{
    public void Draw(Page page)
    {
        foreach (var mark in page.Marks)
        {
            switch (mark)
            {
                case TextMark text:
                    Text(text);
                    break;
                case StrokeMark stroke:
                    Stroke(stroke);
                    break;
                case BoxMark box:
                    using (var paint = Paint(box.Colour))
                    {
                        canvas.DrawRect((float)box.X, (float)box.Y, (float)box.Width, (float)box.Height, paint);
                    }

                    break;
                case DotMark dot:
                    using (var paint = Paint(dot.Colour))
                    {
                        canvas.DrawCircle((float)dot.X, (float)dot.Y, (float)dot.Radius, paint);
                    }

                    break;
            }
        }
    }

    private static SKPaint Paint(string colour) => new() { Color = SKColor.Parse(colour), IsAntialias = true };

    private void Text(TextMark mark)
    {
        using var paint = Paint(mark.Colour);
        var glyphs = mark.Text.Glyphs;
        for (var from = 0; from < glyphs.Length;)
        {
            var end = from;
            while (end < glyphs.Length && glyphs[end].Font == glyphs[from].Font)
            {
                end++;
            }

            var run = glyphs[from..end];
            using var font = faces.Font(run[0].Font, (float)mark.Size);
            using var builder = new SKTextBlobBuilder();
            builder.AddPositionedRun(
                Array.ConvertAll(run, g => g.Glyph),
                font,
                Array.ConvertAll(run, g => new SKPoint((float)(g.X * mark.Size), (float)(g.Y * mark.Size))));
            using var blob = builder.Build();
            if (blob is not null)
            {
                canvas.DrawText(blob, (float)mark.X, (float)mark.Y, paint);
            }

            from = end;
        }
    }

    private void Stroke(StrokeMark mark)
    {
        using var paint = Paint(mark.Colour);
        paint.Style = SKPaintStyle.Stroke;
        paint.StrokeWidth = (float)mark.Width;
        using var dash = mark.Dash > 0 ? SKPathEffect.CreateDash([(float)mark.Dash, (float)mark.Dash], 0) : null;
        paint.PathEffect = dash;
        canvas.DrawLine((float)mark.X1, (float)mark.Y1, (float)mark.X2, (float)mark.Y2, paint);
    }
}
