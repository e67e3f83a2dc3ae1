using Warmup;
using Warmup.Sheets;

namespace Studio;

/// <summary>A sheet made in another assembly, on the page on adding an exporter.</summary>
public sealed class OwnSheetTests
{
    private static readonly Drill Drill = new()
    {
        Scale = Catalogue.Default.Read("Mohanam"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("A3"),
        Tempo = 60,
    };

    [Fact]
    public void A_sheet_has_the_signs_of_each_line()
    {
        var score = (Drill with { Delivery = Delivery.LineByLine }).ToScore();
        using var writer = new StringWriter { NewLine = "\n" };
        #region sheet of your own
        var sheet = Sheet.Of(score);
        foreach (var block in sheet.Sections[0].Blocks)
        {
            foreach (var line in block.Lines)
            {
                writer.WriteLine($"{line.Number}: {string.Join(' ', line.Signs.ConvertAll(sign => sign.Tone?.ToString() ?? sign.Text))}");
            }
        }
        #endregion

        // Adi at 60: S, R, held to 7.0, the breath from 7.0 to 8.0 (common practice, as docs/time.md has it).
        Assert.Equal("1: S R , , , , , v -", writer.ToString().Split('\n')[0]);
        Assert.StartsWith("5: S R G P D S'", writer.ToString().Split('\n')[4], StringComparison.Ordinal);
    }
}
