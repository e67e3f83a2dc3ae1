using System.Globalization;
using System.Text;
using HarfBuzzSharp;
using Buffer = HarfBuzzSharp.Buffer;

namespace Warmup.Drawing;

/// <summary>
/// Turns texts into glyphs: each part of a text in the first font that has all its characters, shaped by the rules of its script. A character that no font
/// has is an error, never a box.
/// </summary>
internal sealed class TextShaper : IDisposable
{
    private readonly List<Shape> _fonts = [];
    private readonly Dictionary<string, ShapedText> _known = [];
    private readonly Language _language = new("und");

    public TextShaper(ValueList<FontFile> fonts)
    {
        Files = fonts;
        foreach (var font in fonts)
        {
            _fonts.Add(new Shape(font));
        }
    }

    public ValueList<FontFile> Files { get; }

    /// <summary>The glyphs of a text.</summary>
    public ShapedText Of(string text)
    {
        if (!_known.TryGetValue(text, out var shaped))
        {
            shaped = ShapeText(text);
            _known[text] = shaped;
        }

        return shaped;
    }

    public double Width(string text, double size) => Of(text).Width * size;

    public void Dispose()
    {
        foreach (var font in _fonts)
        {
            font.Dispose();
        }
    }

    private ShapedText ShapeText(string text)
    {
        var glyphs = new List<PlacedGlyph>();
        double x = 0, top = 0, bottom = 0, left = double.MaxValue, right = 0;
        foreach (var (part, index) in Runs(text))
        {
            using var buffer = new Buffer();
            buffer.AddUtf16(part);

            // Without a language a buffer takes that of the process, which differs from machine to machine.
            buffer.Language = _language;
            buffer.GuessSegmentProperties();
            var font = _fonts[index];
            font.Font.Shape(buffer);
            var (infos, places) = (buffer.GlyphInfos, buffer.GlyphPositions);
            for (var g = 0; g < infos.Length; g++)
            {
                var glyph = infos[g].Codepoint;
                if (glyph is 0 or > ushort.MaxValue)
                {
                    throw Missing(part, part);
                }

                var y = -places[g].YOffset / font.Units;
                glyphs.Add(new PlacedGlyph(index, (ushort)glyph, x + (places[g].XOffset / font.Units), y));
                if (font.Font.TryGetGlyphExtents(glyph, out var ink) && ink.Height != 0)
                {
                    top = Math.Max(top, (ink.YBearing / font.Units) - y);
                    bottom = Math.Max(bottom, y - ((ink.YBearing + ink.Height) / font.Units));
                    var start = x + ((places[g].XOffset + ink.XBearing) / font.Units);
                    (left, right) = (Math.Min(left, start), Math.Max(right, start + (ink.Width / font.Units)));
                }

                x += places[g].XAdvance / font.Units;
            }
        }

        return new ShapedText(text, [.. glyphs], x, top, bottom, left < right ? left : 0, left < right ? right : x);
    }

    /// <summary>The parts of a text that one font draws; a letter, as a reader sees it, is never divided.</summary>
    private List<(string Text, int Font)> Runs(string text)
    {
        var runs = new List<(string Text, int Font)>();
        var letters = StringInfo.GetTextElementEnumerator(text);
        while (letters.MoveNext())
        {
            var letter = letters.GetTextElement();

            // Spaces and the like stay in the font of the text before them.
            var font = runs.Count > 0 && _fonts[runs[^1].Font].Has(letter) ? runs[^1].Font : _fonts.FindIndex(f => f.Has(letter));
            if (font > 0 && !char.IsWhiteSpace(letter[0]) && _fonts[0].Has(letter))
            {
                font = 0;
            }

            if (font < 0)
            {
                throw Missing(letter, text);
            }

            if (runs.Count > 0 && runs[^1].Font == font)
            {
                runs[^1] = (runs[^1].Text + letter, font);
            }
            else
            {
                runs.Add((letter, font));
            }
        }

        return runs;
    }

    private ExportException Missing(string letter, string text)
    {
        var codes = string.Join(' ', letter.EnumerateRunes().Take(4).Select(r => string.Create(CultureInfo.InvariantCulture, $"U+{r.Value:X4}")));
        var quoted = text.Length <= 40 ? text : text[..39] + "\u2026";
        return new ExportException($"no font has a glyph for {codes} in \"{quoted}\"; the fonts are {string.Join(", ", Files)}: give a font file that has it");
    }

    /// <summary>A font as the shaper reads it.</summary>
    private sealed class Shape : IDisposable
    {
        private readonly Blob _blob;
        private readonly Face _face;

        public Shape(FontFile file)
        {
            // The blob must own its bytes: one made from a stream points at an array that the collector may move.
            var pinned = file.Content.Pin();
            unsafe
            {
                _blob = new Blob((nint)pinned.Pointer, file.Content.Length, MemoryMode.Duplicate);
            }

            pinned.Dispose();
            _face = new Face(_blob, 0);
            Units = _face.UnitsPerEm;
            Font = new Font(_face);
            Font.SetScale(_face.UnitsPerEm, _face.UnitsPerEm);
            Font.SetFunctionsOpenType();
        }

        public Font Font { get; }

        public double Units { get; }

        public bool Has(string letter)
        {
            foreach (var rune in letter.EnumerateRunes())
            {
                // Joiners are instructions to the shaper, and need no glyph.
                if (rune.Value is not (0x200C or 0x200D) && !Font.TryGetNominalGlyph((uint)rune.Value, out _))
                {
                    return false;
                }
            }

            return true;
        }

        public void Dispose()
        {
            Font.Dispose();
            _face.Dispose();
            _blob.Dispose();
        }
    }
}
