using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>Draws pages on a canvas of Skia's.</summary>
internal sealed class SkiaPage(SKCanvas canvas, Typefaces typefaces)
{
    public void Draw(Page page)
    {
        foreach (var shape in page.Shapes)
        {
            switch (shape)
            {
                case TextShape text:
                    Text(text);
                    break;
                case StrokeShape stroke:
                    Stroke(stroke);
                    break;
                case CurveShape curve:
                    Curve(curve);
                    break;
                case BoxShape box:
                    using (var paint = Paint(box.Colour))
                    {
                        canvas.DrawRect((float)box.X, (float)box.Y, (float)box.Width, (float)box.Height, paint);
                    }

                    break;
                case DotShape dot:
                    using (var paint = Paint(dot.Colour))
                    {
                        canvas.DrawCircle((float)dot.X, (float)dot.Y, (float)dot.Radius, paint);
                    }

                    break;
            }
        }
    }

    private static SKPaint Paint(string colour) => new() { Color = SKColor.Parse(colour), IsAntialias = true };

    private void Text(TextShape shape)
    {
        using var paint = Paint(shape.Colour);
        var glyphs = shape.Text.Glyphs;
        for (var from = 0; from < glyphs.Length;)
        {
            var end = from;
            while (end < glyphs.Length && glyphs[end].Font == glyphs[from].Font)
            {
                end++;
            }

            var run = glyphs[from..end];
            using var font = typefaces.Font(run[0].Font, (float)shape.Size);
            using var builder = new SKTextBlobBuilder();
            builder.AddPositionedRun(
                Array.ConvertAll(run, g => g.Glyph),
                font,
                Array.ConvertAll(run, g => new SKPoint((float)(g.X * shape.Size), (float)(g.Y * shape.Size))));
            using var blob = builder.Build();
            if (blob is not null)
            {
                canvas.DrawText(blob, (float)shape.X, (float)shape.Y, paint);
            }

            from = end;
        }
    }

    private void Curve(CurveShape shape)
    {
        using var paint = Paint(shape.Colour);
        using var dash = Dash(shape.Dash);
        (paint.Style, paint.StrokeWidth, paint.PathEffect, paint.StrokeJoin) = (SKPaintStyle.Stroke, (float)shape.Width, dash, SKStrokeJoin.Round);
        using var builder = new SKPathBuilder();
        builder.AddPoly([.. shape.Points.Select(p => new SKPoint((float)p.X, (float)p.Y))], false);
        using var path = builder.Detach();
        canvas.DrawPath(path, paint);
    }

    private static SKPathEffect? Dash(double length) => length > 0 ? SKPathEffect.CreateDash([(float)length, (float)length], 0) : null;

    private void Stroke(StrokeShape shape)
    {
        using var paint = Paint(shape.Colour);
        paint.Style = SKPaintStyle.Stroke;
        paint.StrokeWidth = (float)shape.Width;
        using var dash = Dash(shape.Dash);
        paint.PathEffect = dash;
        canvas.DrawLine((float)shape.X1, (float)shape.Y1, (float)shape.X2, (float)shape.Y2, paint);
    }
}
