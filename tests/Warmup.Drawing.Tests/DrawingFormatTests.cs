using System.Buffers.Binary;
using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>Source: PNG (ISO/IEC 15948) for the header, PDF 1.4 for its objects and the creation date, A4 from ISO 216: 210 by 297 mm.</summary>
public class DrawingFormatTests
{
    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("C4"),
        Title = "Mohanam",
    };

    private static Score Long => (Mohanam with { Pattern = Pattern.Parse("ladder.repeat(30)") }).ToScore();

    private static (int Width, int Height) SizeOf(byte[] png)
    {
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        return (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
    }

    [Fact]
    public void Equal_scores_give_equal_bytes()
    {
        foreach (var format in (IScoreFormat[])[new SvgFormat(), new PdfFormat(), new PngFormat()])
        {
            Assert.Equal(Drawn.Bytes(format, Mohanam.ToScore()), Drawn.Bytes(format, Mohanam.ToScore()));
        }
    }

    [Fact]
    public void A_pdf_has_the_pages_of_the_drawing_and_a_fixed_date()
    {
        var text = Encoding.Latin1.GetString(Drawn.Bytes(new PdfFormat(), Long));
        Assert.StartsWith("%PDF-1.", text, StringComparison.Ordinal);
        var pages = new Drawn(Long).Pages.Count;
        Assert.True(pages > 1);
        Assert.Equal(pages, Regex.Count(text, @"/Type\s*/Page\b"));

        // A4 is 595.28 by 841.89 points; whole points are written.
        Assert.Equal(pages, Regex.Count(text, @"/MediaBox\s*\[0 0 595 842\]"));
        Assert.Matches(@"/CreationDate\s*\(D:20000101000000", text);
        Assert.Contains("/FontFile2", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_png_is_A4_at_its_dots_an_inch_and_has_ink_in_it()
    {
        var png = Drawn.Bytes(new PngFormat(), Mohanam.ToScore());

        // 210 / 25.4 * 150 = 1240.2, 297 / 25.4 * 150 = 1753.9.
        Assert.Equal((1240, 1754), SizeOf(png));
        Assert.Equal((298, 421), SizeOf(Drawn.Bytes(new PngFormat(new SheetOptions { DotsPerInch = 36 }), Mohanam.ToScore())));
        using var picture = SKBitmap.Decode(png);
        Assert.Equal(SKColors.White, picture.GetPixel(2, 2));
        Assert.Contains(Enumerable.Range(80, 300), x => picture.GetPixel(x, 125).Red < 90);
    }

    [Fact]
    public void Too_large_a_picture_is_refused_with_what_to_do()
    {
        var refusal = Assert.Throws<ExportException>(() => Drawn.Bytes(new PngFormat(new SheetOptions { DotsPerInch = 600 }), Long));
        Assert.Contains("write a PDF", refusal.Message, StringComparison.Ordinal);
        Assert.Equal((4961, 7016), SizeOf(Drawn.Bytes(new PngFormat(new SheetOptions { DotsPerInch = 600, Page = 1 }), Long)));
    }

    [Fact]
    public void A_character_no_font_has_is_named_and_nothing_is_left_behind()
    {
        var score = (Mohanam with { Title = "Dawn \u7DF4" }).ToScore();
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            foreach (var (format, ending) in ((IScoreFormat, string)[])[(new SvgFormat(), "svg"), (new PdfFormat(), "pdf"), (new PngFormat(), "png")])
            {
                var refusal = Assert.Throws<ExportException>(() => format.Save(score, Path.Combine(folder.FullName, "a." + ending)));
                Assert.Contains("U+7DF4", refusal.Message, StringComparison.Ordinal);
                Assert.Contains("NotoSans-Regular.ttf", refusal.Message, StringComparison.Ordinal);
                Assert.Empty(folder.GetFiles());
            }
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public void Without_its_font_a_script_is_refused_and_with_it_drawn()
    {
        var score = (Mohanam with { Syllables = Syllables.Tamil }).ToScore();
        var latin = new SheetOptions { Fonts = [DrawingFonts.Noto[0]] };
        Assert.Contains("U+0BB8", Assert.Throws<ExportException>(() => new Drawn(score, latin)).Message, StringComparison.Ordinal);
        Assert.Equal(score.NoteCount, new Drawn(score, latin with { Fonts = [DrawingFonts.Noto[0], DrawingFonts.Noto[2]] }).Of("note").Count);
        Assert.Throws<ArgumentException>(() => new Drawn(score, latin with { Fonts = [] }));
    }

    [Fact]
    public void A_missing_font_file_and_one_that_is_none_are_named()
    {
        Assert.Contains("no-such.ttf", Assert.Throws<FileNotFoundException>(() => DrawingFonts.Load("no-such.ttf")).Message, StringComparison.Ordinal);
        Assert.Contains("mine.ttf", Assert.Throws<ArgumentException>(() => FontFile.FromBytes("mine.ttf", "no font"u8)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_font_file_of_the_callers_is_read()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory().FullName, "mine.ttf");
        File.WriteAllBytes(path, DrawingFonts.Noto[0].Content.ToArray());
        var fonts = DrawingFonts.Load(path);
        Assert.Equal("mine.ttf", fonts[0].Name);
        var score = Mohanam.ToScore();
        Assert.Equal(Drawn.Bytes(new SvgFormat(), score), Drawn.Bytes(new SvgFormat(new SheetOptions { Fonts = fonts }), score));
        Directory.Delete(Path.GetDirectoryName(path)!, true);
    }

    [Fact]
    public void The_work_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        foreach (var format in (IScoreFormat[])[new SvgFormat(), new PdfFormat(), new PngFormat()])
        {
            using var stream = new MemoryStream();
            Assert.Throws<OperationCanceledException>(() => format.Write(Mohanam.ToScore(), stream, stop.Token));
            Assert.Equal(0, stream.Length);
        }
    }

    [Fact]
    public void Options_outside_their_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new SheetOptions { DotsPerInch = 35 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SheetOptions { DotsPerInch = 601 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new SheetOptions { Page = 0 });
        Assert.Equal(new SheetOptions(), new SheetOptions());
    }
}
