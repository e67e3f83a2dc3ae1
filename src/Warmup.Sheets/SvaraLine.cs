using System.Text;

namespace Warmup.Sheets;

/// <summary>
/// A line in svara letters: one cell a unit, <c>,</c> for each further unit a note is held, <c>v</c> for a breath, <c>-</c> for silence,
/// <c>|</c> behind an anga and <c>||</c> behind an avartana (common practice, but for the breath sign, which is the project's own).
/// </summary>
internal static class SvaraLine
{
    public const string Hold = ",";
    public const string Breath = "v";
    public const string Silence = "-";
    public const string AngaEnd = "|";
    public const string AvartanaEnd = "||";

    /// <summary>The cells and bar marks of a line.</summary>
    public static List<string> Cells(Section section, int lineIndex)
    {
        var line = section.Lines[lineIndex];
        var cells = new List<string>();
        var unit = section.Speed.Unit;
        var end = line.Onset + line.Length;
        var note = line.FirstNote;
        var last = line.FirstNote + line.NoteCount - 1;
        var breathShown = false;
        for (var at = line.Onset; at < end;)
        {
            // A note that begins between two units gets a cell of its own, so that none is lost.
            var next = Rational.Min(end, NextUnit(at, line.Onset, unit));
            if (note <= last && section.Notes[note].Onset < next)
            {
                cells.Add(section.PitchOf(section.Notes[note]).Tone.ToLetterString());
                if (note < last && section.Notes[note + 1].Onset < next)
                {
                    next = section.Notes[note + 1].Onset;
                }

                note++;
            }
            else
            {
                var sung = section.Notes[note - 1].Onset + section.Notes[note - 1].Length;
                if (at < sung)
                {
                    cells.Add(Hold);
                }
                else
                {
                    cells.Add(!breathShown && BreathAt(section, note - 1) ? Breath : Silence);
                    breathShown = true;
                }
            }

            at = next;
            if (EndOf(section.Meter, at) is { } mark)
            {
                cells.Add(mark);
            }
        }

        return cells;
    }

    /// <summary>The cells padded to one width, so that the lines of a sheet stand in columns.</summary>
    public static string Join(List<string> cells, int width)
    {
        var text = new StringBuilder();
        foreach (var cell in cells)
        {
            text.Append(cell is AngaEnd or AvartanaEnd ? cell.PadRight(3) : cell.PadRight(width + 1));
        }

        return text.ToString().TrimEnd();
    }

    private static Rational NextUnit(Rational at, Rational from, Rational unit) => from + (unit * (((at - from) / unit).Floor() + 1));

    private static bool BreathAt(Section section, int afterNote)
    {
        foreach (var breath in section.Breaths)
        {
            if (breath.AfterNote == afterNote)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The bar mark at a point: behind an anga, behind an avartana, or none.</summary>
    private static string? EndOf(Meter meter, Rational at)
    {
        if (meter.IsFree || !at.IsInteger)
        {
            return null;
        }

        var beat = at.Numerator % meter.Beats;
        if (beat == 0)
        {
            return AvartanaEnd;
        }

        foreach (var group in meter.Groups)
        {
            beat -= group;
            if (beat == 0)
            {
                return AngaEnd;
            }
        }

        return null;
    }
}
