using System.Globalization;
using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts a sheet on as few pages as letters of a size allow: what the sections share above, their lines in columns.</summary>
internal sealed class OnePageDrawing(Sheet sheet, TextShaper shaper, int columns, double size)
{
    private const double Label = 40;
    private const double CautionSize = 6.5;

    // What the whole sheet has room for and one page has not: it can be read from the lines and the tempo.
    private static readonly string[] LeftOut = ["Hand", "Count", "Ends", "Length"];

    private readonly PageComposer _composer = new(shaper) { HasCarets = sheet.HasCarets };

    public PageSet Draw(CancellationToken cancellation)
    {
        var title = sheet.Score.Title;
        var first = sheet.Sections[0];
        var shared = first.Header.Where(r => !LeftOut.Contains(r.Label) && sheet.Sections.All(s => s.Header.Contains(r))).ToList();
        var isOneScale = sheet.Sections.All(s => s.Section.Scale == first.Section.Scale);
        var feet = Feet(isDivided: true);
        _composer.Reserve(feet.Count, CautionSize);
        _composer.Paragraph("title", title, 15, most: 2);
        if (isOneScale)
        {
            Scale(first);
        }

        foreach (var (label, text) in shared.Append(("Length", Length(sheet.Score.Seconds))))
        {
            Row(label, text, 9);
        }

        _composer.Y += 4;
        _composer.Divide(columns);
        foreach (var section in sheet.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            // A head keeps its first two rows.
            _composer.Need((size * 5.4) + 30 + HeadHeight(section, isOneScale, shared));
            _composer.Y += size * 0.6;
            _composer.Add(new StrokeShape("section", _composer.Left, _composer.Y, _composer.Right, _composer.Y, 0.8, PageComposer.Ink));
            _composer.Paragraph("section-title", section.Section.Title, Math.Max(7.5, size * 0.95), most: 3);
            if (!isOneScale)
            {
                Scale(section);
            }

            foreach (var (label, text) in section.Header.Where(r => !LeftOut.Contains(r.Label) && !shared.Contains(r)))
            {
                Row(label, text, Math.Max(6.5, size * 0.75));
            }

            Lines(section, cancellation);
        }

        _composer.PutReserved(Feet(_composer.Pages.Any(p => p.Shapes.Any(s => s.Kind == "row"))), CautionSize);
        var raga = sheet.IsSolfege ? string.Empty : TextSheetFormat.NotTheRaga;
        _composer.Feet(title, raga);
        return new PageSet(title, $"A whole warm-up on one page: the lines under the beats. {raga}".TrimEnd(), _composer.Pages);
    }

    /// <summary>What stands at the foot of the page over its whole width: the signs, and the cautions.</summary>
    private List<(string Kind, string Text)> Feet(bool isDivided) =>
    [
        .. _composer.BrokenWide(SheetClose.Legend(sheet, false, isDivided), CautionSize).Select(row => ("legend", row)),
        .. _composer.BrokenWide(sheet.CautionText, CautionSize).Select(row => ("caution", row)),
    ];

    /// <summary>The height of a section's head.</summary>
    private double HeadHeight(SheetSection section, bool isOneScale, List<(string Label, string Text)> shared)
    {
        var (title, row) = (Math.Max(7.5, size * 0.95), Math.Max(6.5, size * 0.75));
        var width = _composer.Right - _composer.Left;
        var rows = section.Header.Where(r => !LeftOut.Contains(r.Label) && !shared.Contains(r)).Sum(r => _composer.Broken(r.Text, row, width - Label, 4).Count);
        return (size * 0.6) + (((_composer.Broken(section.Section.Title, title, width, 3).Count * title) + (rows * row) + (isOneScale ? 0 : 18)) * 1.35);
    }

    private static string Length(Rational seconds)
    {
        var whole = seconds.Ceiling();
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00} minutes");
    }

    private void Scale(SheetSection section) =>
        Row("Scale", $"{section.Section.Scale.Name}:  {string.Join(' ', section.Ascent)}  /  {string.Join(' ', section.Descent)}", 9);

    private void Row(string label, string text, double letters)
    {
        var lines = _composer.Broken(text, letters, _composer.Right - _composer.Left - Label, 4);
        for (var l = 0; l < lines.Count; l++)
        {
            _composer.Need(letters * 1.35);
            _composer.Y += letters * 1.35;
            if (l == 0)
            {
                _composer.Put("label", _composer.Left, _composer.Y - 2, label, letters * 0.9, PageComposer.Soft);
            }

            _composer.Put("head", _composer.Left + Label, _composer.Y - 2, lines[l], letters);
        }
    }

    /// <summary>Draws each block that differs from those before it; a block that comes again is named with its number of times.</summary>
    private void Lines(SheetSection section, CancellationToken cancellation)
    {
        var comparer = new SameSigns(section.Section);
        var blocks = section.Blocks.GroupBy(b => b, comparer).ToList();
        foreach (var same in blocks)
        {
            var block = same.Key;
            if (blocks.Count > 1 || same.Count() > 1)
            {
                var speed = blocks.Count > 1 ? block.Pace : string.Empty;
                var times = same.Count() > 1 ? string.Create(CultureInfo.InvariantCulture, $"sing {same.Count()} times") : string.Empty;
                // A heading keeps its first two rows, the numbers over them and what a row with lines over its letters takes more.
                _composer.Need((size * 5.4) + 30);
                _composer.Paragraph("run", string.Join(": ", ((string[])[speed, times]).Where(t => t.Length > 0)), Math.Max(6.5, size * 0.8), PageComposer.Soft);
            }

            var lines = new List<(SheetLine Line, string Label)>();
            foreach (var run in Runs(block.Lines, comparer))
            {
                lines.Add((run[0], run.Count == 1 ? Number(run[0]) : $"{Number(run[0])}-{Number(run[^1])}"));
            }

            new SheetLines(_composer, section.Section, lines, new SheetStyle(size, 2, true)).Draw(0, cancellation);
        }
    }

    private static string Number(SheetLine line) => line.Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>The lines in groups of neighbours with the same signs.</summary>
    private static IEnumerable<List<SheetLine>> Runs(ValueList<SheetLine> lines, SameSigns comparer)
    {
        var run = new List<SheetLine>();
        foreach (var line in lines)
        {
            if (run.Count > 0 && !comparer.AreSame(run[^1], line))
            {
                yield return run;
                run = [];
            }

            run.Add(line);
        }

        yield return run;
    }
}
