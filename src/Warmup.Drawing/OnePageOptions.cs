using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>
/// A whole score on one page of A4, for the music stand: what its sections have in common once, their lines in one or two columns, rounds and lines
/// that are the same once, and the cautions. Letters get smaller as far as 6 points; what does not fit even then goes on over further pages.
/// </summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record OnePageOptions : DrawingOptions
{
    // The sizes of letters in points that are tried for a number of columns, from the largest in steps of half a point; the project's own settings.
    private static readonly (int Columns, double Largest, double Smallest)[] Layouts = [(1, SheetLines.Size, 11), (2, 11, 6)];

    /// <summary>What is written for each note, as <see cref="SheetOptions.Letters"/>.</summary>
    public Syllables? Letters { get; init; }

    internal override string Subject => "sheet on one page";

    internal override PageSet Draw(Score score, TextShaper shaper, CancellationToken cancellation)
    {
        var sheet = Sheet.Of(score, Letters, cancellation);
        PageSet? pages = null;
        foreach (var (columns, largest, smallest) in Layouts)
        {
            for (var size = largest; size >= smallest; size -= 0.5)
            {
                pages = new OnePageDrawing(sheet, shaper, columns, size).Draw(cancellation);
                if (pages.Pages.Count == 1)
                {
                    return pages;
                }
            }
        }

        return pages!;
    }
}
