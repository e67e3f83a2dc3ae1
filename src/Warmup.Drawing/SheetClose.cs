using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>What stands below the last line of a sheet: the signs, the remarks and the cautions.</summary>
internal sealed class SheetClose
{
    // The project's own settings: the sizes that are tried for the cautions in points, and the most rows they take.
    private static readonly double[] Sizes = [8, 7.5, 7, 6.5, 6];
    private const int MostRows = 5;
    private const double LineHeight = 1.35;

    private static readonly string[] LineCounts = [string.Empty, string.Empty, "one line", "two lines", "three lines"];
    private static readonly string[] SpeedNames = [string.Empty, "first", "second", "third", "fourth"];

    private readonly PageComposer _composer;
    private readonly List<(string Kind, List<string> Rows, double Size, string Colour)> _paragraphs = [];

    public SheetClose(PageComposer composer, Sheet sheet, bool hidesNotes, bool isDivided)
    {
        _composer = composer;
        Add("legend", Legend(sheet, hidesNotes, isDivided), [8], 12, PageComposer.Soft);
        foreach (var finding in sheet.Score.Findings)
        {
            Add("finding", $"Note: {finding.Describe()}.", [8.5], 12, PageComposer.Ink);
        }

        Add("caution", sheet.CautionText, Sizes, MostRows, PageComposer.Ink);
    }

    /// <summary>The height it needs, the space above included.</summary>
    public double Height => _paragraphs.Sum(p => p.Rows.Count * p.Size * LineHeight) + 16;

    public void Draw()
    {
        _composer.Need(Math.Min(Height, _composer.Bottom - PageComposer.Margin));
        _composer.Y += 8;
        foreach (var (kind, rows, size, colour) in _paragraphs)
        {
            _composer.Y += kind == "caution" ? 6 : 0;
            foreach (var row in rows)
            {
                _composer.Need(size * LineHeight);
                _composer.Y += size * LineHeight;
                _composer.Put(kind, _composer.Left, _composer.Y - (size * 0.3), row, size, colour);
            }
        }
    }

    /// <summary>What the signs mean that stand on the sheet, and no others.</summary>
    public static string Legend(Sheet sheet, bool hidesNotes, bool isDivided)
    {
        var (beat, group, bar) = sheet.Sections[0].TimeNames;
        var signs = sheet.Signs;
        string?[] all =
        [
            signs.HasHolds ? $"{SheetSign.Hold} hold one more unit" : null,
            signs.HasBreaths ? $"{SheetSign.Breath} (raised) breathe" : null,
            signs.HasSilences ? $"{SheetSign.Silence} one unit of silence" : null,
            signs.HasGroups ? $"a thin line ends {(group[0] is 'a' ? "an" : "a")} {group}" : null,
            signs.HasBars ? $"a double line the {bar}" : null,
            signs.HasUpperOctave ? $"{sheet.OctaveSign} over a letter is the upper octave" : null,
            signs.HasLowerOctave ? $"{(sheet.HasCarets ? "v" : "a dot")} under it the lower" : null,
            signs.HasBars ? $"small numbers over the letters count the {beat}s, those before or under them the lines" : "small numbers count the lines",
            isDivided ? $"\"from 5\" before a row: it begins with {beat} 5 of the {bar}" : null,
            signs.Speeds.IsEmpty ? null : $"over the letters of one {beat} " + string.Join(", ", signs.Speeds.ConvertAll(k => $"{LineCounts[k]} for the {SpeedNames[k]} speed")),
            sheet.VariantLegend.Length > 0 ? sheet.VariantLegend : null,
            hidesNotes ? "_ a note to hear and write down, the key is on the last page" : null,
            signs.HasAnswers ? "in a grey field the class answers" : null,
        ];
        return $"Signs:  {string.Join(";  ", all.Where(part => part is not null))}.";
    }

    /// <summary>Adds a paragraph in the largest size in which it keeps to its rows.</summary>
    private void Add(string kind, string text, double[] sizes, int most, string colour)
    {
        foreach (var size in sizes)
        {
            var rows = _composer.Broken(text, size, _composer.Right - _composer.Left, int.MaxValue);
            if (rows.Count <= most || size == sizes[^1])
            {
                _paragraphs.Add((kind, rows, size, colour));
                return;
            }
        }
    }
}
