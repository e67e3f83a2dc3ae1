using System.Globalization;
using SkiaSharp;

namespace Warmup.Drawing;

/// <summary>The fonts as Skia reads them, in the shaper's order.</summary>
internal sealed class Typefaces : IDisposable
{
    private readonly List<SKTypeface> _typefaces = [];

    public Typefaces(ValueList<FontFile> fonts)
    {
        foreach (var font in fonts)
        {
            using var data = SKData.CreateCopy(font.Content.Span);
            _typefaces.Add(SKTypeface.FromData(data));
        }
    }

    /// <summary>A font at a size, without hints, so that its outlines are the same at every size.</summary>
    public SKFont Font(int index, float size) => new(_typefaces[index], size)
    {
        Hinting = SKFontHinting.None,
        Edging = SKFontEdging.Antialias,
        Subpixel = true,
        LinearMetrics = true,
    };

    /// <summary>The units of a font's square, in which <see cref="Outline"/> is given.</summary>
    public int Units(int index) => _typefaces[index].UnitsPerEm;

    /// <summary>The outline of a glyph as SVG path data in the font's units, y down; empty for a space.</summary>
    public string Outline(int index, ushort glyph)
    {
        using var font = Font(index, Units(index));
        using var path = font.GetGlyphPath(glyph);
        return path is null || path.IsEmpty ? string.Empty : path.ToSvgPathData();
    }

    /// <summary>The name of a glyph in an SVG document.</summary>
    public static string Id(int index, ushort glyph) => string.Create(CultureInfo.InvariantCulture, $"g{index}-{glyph}");

    public void Dispose() => _typefaces.ForEach(f => f.Dispose());
}
