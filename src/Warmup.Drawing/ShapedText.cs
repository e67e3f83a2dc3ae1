namespace Warmup.Drawing;

/// <summary>A glyph of a font at its place in a text; lengths in parts of the type size, y down.</summary>
internal readonly record struct PlacedGlyph(int Font, ushort Glyph, double X, double Y);

/// <summary>A text as glyphs. Lengths are in parts of the type size.</summary>
/// <param name="Text">The text, for screen readers.</param>
/// <param name="Glyphs">The glyphs from left to right; none is glyph 0.</param>
/// <param name="Width">How far the text advances.</param>
/// <param name="Top">How far its ink reaches above the baseline.</param>
/// <param name="Bottom">How far its ink reaches below the baseline.</param>
/// <param name="InkLeft">Where its ink begins.</param>
/// <param name="InkRight">Where its ink ends.</param>
internal sealed record ShapedText(string Text, PlacedGlyph[] Glyphs, double Width, double Top, double Bottom, double InkLeft, double InkRight)
{
    public double InkWidth => InkRight - InkLeft;

    public double InkMiddle => (InkLeft + InkRight) / 2;
}
