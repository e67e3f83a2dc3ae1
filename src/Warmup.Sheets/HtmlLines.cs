using System.Globalization;
using System.Text.Encodings.Web;

namespace Warmup.Sheets;

/// <summary>
/// The lines of a section on a page: for the eye in columns under the aksharas, a row an avartana; for a screen reader as a sentence.
/// </summary>
internal sealed class HtmlLines(TextWriter writer, HtmlEncoder encoder, SungLetters letters, List<int> cells)
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
    public void Write(Section section, bool isOneOfSeveral, CancellationToken cancellation)
    {
        _place = isOneOfSeveral ? $" of {section.Title}" : string.Empty;
        var breaths = new Dictionary<int, Breath>(section.Breaths.Count);
        foreach (var breath in section.Breaths)
        {
            breaths[breath.AfterNote] = breath;
        }

        var runs = SpeedRun.Of(section);
        foreach (var run in runs)
        {
            cancellation.ThrowIfCancellationRequested();
            if (runs.Count > 1)
            {
                var time = section.Rounds > 1 ? $"Time {run.Round + 1} of {section.Rounds}, " : string.Empty;
                writer.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"<h3>{time}{run.Speed}, {section.TempoAt(section.Lines[run.First].Onset).ToDouble():0.###} aksharas a minute</h3>"));
            }

            var parts = SvaraBlock.Parts(section, run.First, run.End);
            var beats = section.Meter.Beats;
            var isLong = section.Meter.IsFree || beats * parts > MostInRow;
            writer.WriteLine($"<div class=\"block{(isLong ? " long" : string.Empty)}\">");
            if (!isLong)
            {
                writer.Write("<div class=\"row head\" aria-hidden=\"true\">");
                for (var a = 0; a < beats; a++)
                {
                    Open(section.Meter, a, parts, 1, a == 0, false);
                    writer.Write("</span>");
                }

                writer.WriteLine("</span></div>");
            }

            for (var l = run.First; l < run.End; l++)
            {
                WriteLine(section, l, breaths, parts);
            }

            writer.WriteLine("</div>");
        }
    }

    private void WriteLine(Section section, int index, Dictionary<int, Breath> breaths, int parts)
    {
        var line = section.Lines[index];
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        writer.WriteLine($"<div class=\"line\" id=\"line-{_line++}\"><button type=\"button\" class=\"loop\" aria-pressed=\"false\" aria-label=\"Loop line {number}{encoder.Encode(_place)}\">{number}</button>");
        writer.WriteLine($"<p class=\"said\">{encoder.Encode(Said(section, line, breaths))}</p>");
        writer.Write("<div class=\"rows\" aria-hidden=\"true\">");

        // The notes that begin in a part of an akshara; more than one only where an akshara has more parts than can be shown.
        var notes = Enumerable.Range(line.FirstNote, line.NoteCount).ToLookup(n => (section.Notes[n].Onset * parts).Floor());
        var signs = new SvaraCells(section, line, breaths, parts, letters.WithDots).Cells;
        var meter = section.Meter;
        var sungAngas = meter.IsFree ? [] : signs.Keys.Select(slot => EndOfAnga(meter, (int)(slot / parts))).ToHashSet();
        var (from, to) = ((int)line.Onset.Floor(), (int)(line.Onset + line.Length).Ceiling());
        var first = meter.IsFree ? from : from / meter.Beats * meter.Beats;
        var end = meter.IsFree ? to : ((to + meter.Beats - 1) / meter.Beats) * meter.Beats;
        for (var row = first; row < end; row = meter.IsFree ? end : row + meter.Beats)
        {
            writer.Write("<div class=\"row\">");
            var last = meter.IsFree ? end : Math.Min(to, row + meter.Beats);
            for (var akshara = row; akshara < last; akshara++)
            {
                Akshara(meter, line, akshara, akshara - row, parts, signs, notes, sungAngas);
            }

            writer.Write("</span></div>");
        }

        writer.WriteLine("</div></div>");
    }

    private void Akshara(
        Meter meter, ScoreLine line, int akshara, int within, int parts, IReadOnlyDictionary<long, string> signs, ILookup<long, int> notes, HashSet<int> sungAngas)
    {
        var slots = Enumerable.Range(0, parts).Where(p => signs.ContainsKey(((long)akshara * parts) + p)).ToList();
        var isEmpty = !meter.IsFree && !sungAngas.Contains(EndOfAnga(meter, akshara));
        Open(meter, within, parts, slots.Count > 0 ? line.Speed.Kalam : 1, within == 0, isEmpty);
        foreach (var part in slots)
        {
            var slot = ((long)akshara * parts) + part;
            var sign = signs[slot];
            var here = notes[slot];
            var kind = here.Any() ? "n" : sign switch
            {
                SvaraCells.Breath => "b",
                _ => "h",
            };
            if (kind == "n")
            {
                _cell++;
                cells.AddRange(here.Select(_ => _cell));
            }

            writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"{kind} c{part + 1}\">{encoder.Encode(sign)}</span>"));
        }

        writer.Write("</span>");
    }

    /// <summary>Opens an akshara, and before it an anga where one begins: its parts, the lines of its speed, the bar behind it, its number.</summary>
    private void Open(Meter meter, int within, int parts, int kalam, bool isFirst, bool isEmpty)
    {
        var anga = isEmpty ? "<span class=\"g empty\">" : "<span class=\"g\">";
        var beginsAnga = isFirst || (!meter.IsFree && meter.AngaEnd(within - 1) == within);
        var endsAnga = !meter.IsFree && meter.AngaEnd(within) == within + 1;
        var bar = !endsAnga ? string.Empty : within + 1 == meter.Beats ? " avartana" : " anga";
        var speed = kalam > 1 ? string.Create(CultureInfo.InvariantCulture, $" k{kalam}") : string.Empty;
        writer.Write((beginsAnga, isFirst) switch
        {
            (true, true) => anga,
            (true, false) => $"</span>{anga}",
            _ => string.Empty,
        });
        writer.Write(string.Create(CultureInfo.InvariantCulture, $"<span class=\"a p{parts}{speed}{bar}\" data-a=\"{within + 1}\">"));
    }

    /// <summary>The end of the anga that an akshara lies in, in aksharas from the section's beginning.</summary>
    private static int EndOfAnga(Meter meter, int akshara) => akshara - (akshara % meter.Beats) + meter.AngaEnd(akshara % meter.Beats);

    private string Said(Section section, ScoreLine line, Dictionary<int, Breath> breaths)
    {
        var said = new List<string>();
        for (var n = line.FirstNote; n < line.FirstNote + line.NoteCount; n++)
        {
            var tone = section.PitchOf(section.Notes[n]).Tone;
            var octave = tone.Octave switch
            {
                0 => string.Empty,
                1 => "upper ",
                -1 => "lower ",
                > 1 => "far upper ",
                _ => "far lower ",
            };
            said.Add($"{octave}{letters.Of(tone)}{(section.Notes[n].IsHeld ? " held" : string.Empty)}");
            if (breaths.ContainsKey(n))
            {
                said.Add("breathe");
            }
        }

        if (line.Answer.Sign > 0)
        {
            said.Add("then your answer");
        }

        return string.Join(", ", said);
    }
}
