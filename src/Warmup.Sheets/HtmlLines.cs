using System.Globalization;
using System.Text.Encodings.Web;

namespace Warmup.Sheets;

/// <summary>
/// Writes the lines of a section on a page: for the eye in columns under the aksharas, a row for each avartana; for a screen reader as a sentence.
/// </summary>
/// <param name="writer">Where the page goes.</param>
/// <param name="encoder">Encodes text.</param>
/// <param name="cells">Takes for each note the number of its cell on the page.</param>
internal sealed class HtmlLines(TextWriter writer, HtmlEncoder encoder, List<int> cells)
{
    // The letters side by side that still fit the width of a page.
    private const int MostInRow = 32;

    private int _cell = -1;
    private int _line;
    private string _place = string.Empty;

    /// <summary>Writes the lines of a section.</summary>
    /// <param name="section">The section.</param>
    /// <param name="isOneOfSeveral">Whether the line's number alone does not say which line it is.</param>
    /// <param name="cancellation">Stops the work.</param>
    public void Write(SheetSection section, bool isOneOfSeveral, CancellationToken cancellation)
    {
        _place = isOneOfSeveral ? $" of {section.Section.Title}" : string.Empty;
        foreach (var block in section.Blocks)
        {
            cancellation.ThrowIfCancellationRequested();
            if (section.Blocks.Count > 1)
            {
                writer.WriteLine($"<h3>{block.Title}</h3>");
            }

            WriteBlock(section.Section, block);
        }
    }

    private void WriteBlock(Section section, SheetBlock block)
    {
        var (meter, parts) = (section.Meter, block.Parts);
        var isLong = meter.IsFree || meter.Beats * parts > MostInRow;
        writer.WriteLine($"<div class=\"block{(isLong ? " long" : string.Empty)}\">");
        if (!isLong)
        {
            writer.Write("<div class=\"row head\" aria-hidden=\"true\">");
            for (var a = 0; a < meter.Beats; a++)
            {
                Open(meter, a, parts, 1, false);
                writer.Write("</span>");
            }

            writer.WriteLine("</span></div>");
        }

        foreach (var line in block.Lines)
        {
            WriteLine(section, line, parts);
        }

        writer.WriteLine("</div>");
    }

    private void WriteLine(Section section, SheetLine sheetLine, int parts)
    {
        var line = sheetLine.Line;
        var number = sheetLine.Number.ToString(CultureInfo.InvariantCulture);
        writer.WriteLine($"<div class=\"line\" id=\"line-{_line++}\"><button type=\"button\" class=\"loop\" aria-pressed=\"false\" aria-label=\"Loop line {number}{encoder.Encode(_place)}\">{number}</button>");
        writer.WriteLine($"<p class=\"said\">{encoder.Encode(Said(section, sheetLine))}</p>");
        writer.Write("<div class=\"rows\" aria-hidden=\"true\">");

        // The notes that begin in a part of an akshara; more than one only where an akshara has more parts than can be shown.
        var notes = Enumerable.Range(line.FirstNote, line.NoteCount).ToLookup(n => (section.Notes[n].Onset * parts).Floor());
        var signs = new LineCells(sheetLine, parts, t => t.Dotted).Cells;
        var meter = section.Meter;
        var sungAngas = meter.IsFree ? [] : signs.Keys.Select(slot => EndOfAnga(meter, (int)(slot / parts))).ToHashSet();
        var (from, to) = ((int)line.Onset.Floor(), (int)line.End.Ceiling());
        var first = meter.IsFree ? from : from / meter.Beats * meter.Beats;
        var end = meter.IsFree ? to : ((to + meter.Beats - 1) / meter.Beats) * meter.Beats;
        for (var row = first; row < end; row = meter.IsFree ? end : row + meter.Beats)
        {
            writer.Write("<div class=\"row\">");
            var last = meter.IsFree ? end : Math.Min(to, row + meter.Beats);
            for (var akshara = row; akshara < last; akshara++)
            {
                WriteAkshara(meter, line, akshara, akshara - row, parts, signs, notes, sungAngas);
            }

            writer.Write("</span></div>");
        }

        writer.WriteLine("</div></div>");
    }

    private void WriteAkshara(
        Meter meter, ScoreLine line, int akshara, int within, int parts, IReadOnlyDictionary<long, string> signs, ILookup<long, int> notes, HashSet<int> sungAngas)
    {
        var slots = Enumerable.Range(0, parts).Where(p => signs.ContainsKey(((long)akshara * parts) + p)).ToList();
        var isEmpty = !meter.IsFree && !sungAngas.Contains(EndOfAnga(meter, akshara));
        Open(meter, within, parts, slots.Count > 0 ? line.Speed.Kalam : 1, isEmpty);
        foreach (var part in slots)
        {
            var slot = ((long)akshara * parts) + part;
            var sign = signs[slot];
            var here = notes[slot];
            var kind = here.Any() ? "n" : sign == SheetSign.Breath ? "b" : "h";
            if (kind == "n")
            {
                _cell++;
                cells.AddRange(here.Select(_ => _cell));
            }

            writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"{kind} c{part + 1}\">{encoder.Encode(sign)}</span>"));
        }

        writer.Write("</span>");
    }

    /// <summary>Opens an akshara, and before it an anga where one begins: its parts, the lines of its speed, the bar after it, its number.</summary>
    private void Open(Meter meter, int within, int parts, int kalam, bool isEmpty)
    {
        var anga = isEmpty ? "<span class=\"g empty\">" : "<span class=\"g\">";
        var bar = meter.AccentOf(within + 1) switch
        {
            BeatAccent.Avartana => " avartana",
            BeatAccent.Anga => " anga",
            _ => string.Empty,
        };
        var speed = kalam > 1 ? string.Create(CultureInfo.InvariantCulture, $" k{kalam}") : string.Empty;
        writer.Write(within == 0 ? anga : meter.AccentOf(within) != BeatAccent.None ? $"</span>{anga}" : string.Empty);
        writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"a p{parts}{speed}{bar}\" data-a=\"{within + 1}\">"));
    }

    /// <summary>The end of the anga in which an akshara lies, in aksharas from the section's beginning.</summary>
    private static int EndOfAnga(Meter meter, int akshara) => akshara - (akshara % meter.Beats) + meter.AngaEnd(akshara % meter.Beats);

    private static string Said(Section section, SheetLine line)
    {
        var said = new List<string>();
        foreach (var sign in line.Signs)
        {
            if (sign.Tone is { } tone)
            {
                var octave = tone.Octave switch
                {
                    0 => string.Empty,
                    1 => "upper ",
                    -1 => "lower ",
                    > 1 => "far upper ",
                    _ => "far lower ",
                };
                said.Add($"{octave}{tone.Letter}{(section.Notes[sign.Note].IsHeld ? " held" : string.Empty)}");
            }
            else if (sign.Kind == SheetSignKind.Breath)
            {
                said.Add("breathe");
            }
        }

        if (line.Line.HasAnswer)
        {
            said.Add("then your answer");
        }

        return string.Join(", ", said);
    }
}
