using System.Globalization;
using System.Text.Encodings.Web;

namespace Warmup.Sheets;

/// <summary>
/// Writes the lines of a section on a page. For the eye they stand in columns under the aksharas, a row for each avartana, which lines that run on
/// share; a line's number stands before its row, or under its first letter. A screen reader gets each line as a sentence with its number.
/// </summary>
/// <param name="writer">Where the page goes.</param>
/// <param name="encoder">Encodes text.</param>
/// <param name="cells">Takes for each note the number of its cell on the page.</param>
internal sealed class HtmlLines(TextWriter writer, HtmlEncoder encoder, List<int> cells)
{
    private int _cell = -1;
    private int _line;

    /// <summary>Writes the lines of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="isOneOfSeveral">Whether the line's number alone does not say which line it is.</param>
    /// <param name="cancellation">Stops the work.</param>
    public void Write(SheetSection section, bool isOneOfSeveral, CancellationToken cancellation)
    {
        var place = isOneOfSeveral ? $" of {section.Section.Title}" : string.Empty;
        var heading = isOneOfSeveral ? "h3" : "h2";
        foreach (var block in section.Blocks)
        {
            cancellation.ThrowIfCancellationRequested();
            if (section.Blocks.Count > 1)
            {
                writer.WriteLine($"<{heading} class=\"time\">{block.Title}</{heading}>");
            }

            WriteBlock(new HtmlBlock(section.Section, block), place);
        }
    }

    private void WriteBlock(HtmlBlock block, string place)
    {
        var (meter, parts) = (block.Meter, block.Parts);
        var isLong = block.IsLong;
        writer.WriteLine($"<div class=\"block w{block.Letters}{(block.HasWideLetters ? " wide" : string.Empty)}{(isLong ? " long" : string.Empty)}\">");
        if (!isLong)
        {
            writer.Write("<div class=\"row head\" aria-hidden=\"true\">");
            for (var a = 0; a < meter.Beats * block.Bars; a++)
            {
                OpenAnga(meter, a, isEmpty: false);
                OpenAkshara(meter, a, parts, string.Empty);
                writer.Write("</span>");
            }

            writer.WriteLine("</span></div>");
        }

        writer.WriteLine("<div class=\"rows\">");
        foreach (var row in block.Rows())
        {
            WriteRow(block, row, place);
        }

        writer.WriteLine("</div></div>");
    }

    private void WriteRow(HtmlBlock block, HtmlRow row, string place)
    {
        var inside = Enumerable.Range(row.Start, row.End - row.Start).SelectMany(a => block.LinesInside(row, a).Select(l => (Akshara: a, l.Part, l.Line))).ToLookup(l => l.Akshara);
        writer.Write($"<div class=\"row{(inside.Count > 0 ? " inside" : string.Empty)}\">");
        if (block.LineBefore(row) is { } before)
        {
            WriteNumber(block, before, place, "before");
        }

        for (var akshara = row.Start; akshara < row.End; akshara++)
        {
            OpenAnga(block.Meter, akshara - row.Start, block.IsEmptyAnga(akshara));
            var begins = inside.Contains(akshara);
            writer.Write(begins ? "<span class=\"with\">" : string.Empty);
            foreach (var (_, part, line) in inside[akshara])
            {
                WriteNumber(block, line, place, string.Create(CultureInfo.InvariantCulture, $"p{block.Parts} f{part}"));
            }

            WriteAkshara(block, row, akshara);
            writer.Write(begins ? "</span>" : string.Empty);
        }

        writer.WriteLine("</span></div>");
    }

    private void WriteNumber(HtmlBlock block, SheetLine line, string place, string position)
    {
        var number = line.Number.ToString(CultureInfo.InvariantCulture);
        writer.Write($"<span class=\"start {position}\"><button type=\"button\" class=\"loop\" id=\"line-{_line++}\" aria-pressed=\"false\" aria-label=\"Loop line {number}{encoder.Encode(place)}\">{number}</button>");
        writer.Write($"<span class=\"said\">{encoder.Encode(block.Said(line))}</span></span>");
    }

    private void WriteAkshara(HtmlBlock block, HtmlRow row, int akshara)
    {
        var slots = block.SlotsOf(row, akshara);
        var speed = slots.Count > 0 && slots[0].Kalam > 1 ? string.Create(CultureInfo.InvariantCulture, $" k{slots[0].Kalam}") : string.Empty;
        OpenAkshara(block.Meter, akshara - row.Start, block.Parts, block.IsAnswer(akshara) ? $"{speed} answer" : speed);
        foreach (var slot in slots)
        {
            var kind = slot.NoteCount > 0 ? "n" : slot.Sign == SheetSign.Breath ? "b" : "h";
            if (kind == "n")
            {
                _cell++;
                cells.AddRange(Enumerable.Repeat(_cell, slot.NoteCount));
            }

            writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"{kind} c{slot.Part + 1}\">{encoder.Encode(slot.Sign)}</span>"));
        }

        writer.Write("</span>");
    }

    /// <summary>Closes the anga before and opens the next, where one begins.</summary>
    private void OpenAnga(Meter meter, int within, bool isEmpty)
    {
        if (within == 0 || meter.AccentOf(within) != BeatAccent.None)
        {
            writer.Write($"{(within == 0 ? string.Empty : "</span>")}<span class=\"g{(isEmpty ? " empty" : string.Empty)}\">");
        }
    }

    /// <summary>Opens an akshara: its parts, the lines of its speed, the bar after it, its number.</summary>
    private void OpenAkshara(Meter meter, int within, int parts, string more)
    {
        var bar = meter.AccentOf(within + 1) switch
        {
            BeatAccent.Avartana => " avartana",
            BeatAccent.Anga => " anga",
            _ => string.Empty,
        };
        writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"a p{parts}{more}{bar}\" data-a=\"{(meter.IsFree ? within : within % meter.Beats) + 1}\" aria-hidden=\"true\">"));
    }
}
