using System.Globalization;
using System.Net;
using System.Text;

namespace Warmup.Takes;

/// <summary>
/// Draws a take as SVG: the drill's notes as steps, and over them what was sung. Colour never stands alone: every kind has its own line and
/// sign.
/// </summary>
public static class TakePicture
{
    private const double RowSeconds = 12;
    private const double Left = 46;
    private const double SecondWidth = 62;
    private const double SemitoneHeight = 11;
    private const double RowGap = 34;
    private const double Head = 64;
    private const double KeyWidth = 112;

    // Seconds without a pitch over which a curve still goes on.
    private const double LongestGap = 0.05;

    /// <summary>The style of the picture, for a page that holds it: the same for every take.</summary>
    public static string Style => ".step{fill:#d8d8d8}.sung{stroke-width:3.2;fill:none}.good{stroke:#00695c}.high{stroke:#b45309;stroke-dasharray:9 3}"
        + ".low{stroke:#5b21b6;stroke-dasharray:4 3}.other{stroke:#b91c1c;stroke-dasharray:2 3}.unsure{stroke:#555;stroke-dasharray:1 4}"
        + ".out{fill:none;stroke:#555}.say{font:11px sans-serif;fill:#222}.small{font:9px sans-serif;fill:#444}.time{stroke:#eee}";

    /// <summary>The pitch of each note of a drill, in semitones above MIDI note 0: the heights of the steps, for a picture of another kind.</summary>
    /// <param name="score">The drill.</param>
    public static ValueList<double> Semitones(Score score) => new DrillNotes(Require.NotNull(score)).Notes.Select(n => n.Cents / 100).ToValueList();

    /// <summary>Draws a take.</summary>
    /// <param name="score">The drill.</param>
    /// <param name="report">What was heard of it.</param>
    /// <param name="isAlone">Whether the picture is a file of its own, with its style; a page brings <see cref="Style"/> itself.</param>
    /// <returns>The text of the picture, the same for equal reports.</returns>
    public static string Svg(Score score, TakeReport report, bool isAlone = true)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(report);
        var drill = new DrillNotes(score);
        var (low, high) = (drill.Notes.Min(n => n.Cents) - 150, drill.Notes.Max(n => n.Cents) + 150);
        var rows = Math.Max(1, (int)Math.Ceiling(report.Seconds / RowSeconds));
        var rowHeight = ((high - low) / 100 * SemitoneHeight) + RowGap;
        var (width, height) = (Left + (RowSeconds * SecondWidth) + 20, Head + (rows * rowHeight));
        var svg = new StringBuilder();
        Add(svg, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width:0.#} {height:0.#}\" width=\"{width:0.#}\" height=\"{height:0.#}\" role=\"img\" aria-label=\"The drill's notes as steps, and over them what was sung\">");
        Add(svg, $"{(isAlone ? $"<style>{Style}</style><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>" : string.Empty)}<text class=\"say\" x=\"{Left}\" y=\"18\">{WebUtility.HtmlEncode(OneLine.Cut(score.Title, 100))}</text>");
        Key(svg);
        for (var row = 0; row < rows; row++)
        {
            var bottom = Head + ((row + 1) * rowHeight) - RowGap;
            for (var s = 0; s <= RowSeconds; s += 2)
            {
                Add(svg, $"<line class=\"time\" x1=\"{Left + (s * SecondWidth):0.#}\" x2=\"{Left + (s * SecondWidth):0.#}\" y1=\"{bottom - (rowHeight - RowGap):0.#}\" y2=\"{bottom:0.#}\"/><text class=\"small\" x=\"{Left + (s * SecondWidth):0.#}\" y=\"{bottom + 12:0.#}\">{(row * RowSeconds) + s:0} s</text>");
            }
        }

        double Y(int row, double cents) => Head + ((row + 1) * rowHeight) - RowGap - ((Math.Clamp(cents, low, high) - low) / 100 * SemitoneHeight);
        var (last, leftOut) = (0.0, 0);
        foreach (var note in report.Notes)
        {
            if (note is { Onset: { } onset, End: { } end })
            {
                // A note that goes on over the end of a row goes on in the next one.
                for (var row = (int)(onset / RowSeconds); row * RowSeconds < end; row++)
                {
                    Part(svg, drill.Notes[note.Index], note, Y, row, Math.Max(onset, row * RowSeconds), Math.Min(end, (row + 1) * RowSeconds));
                }

                (last, leftOut) = (end, 0);
            }
            else
            {
                LeftOut(svg, drill.Notes[note.Index], note, Y, last, leftOut++);
            }
        }

        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>Draws an empty box for a note that was left out, beside those that were left out just before it.</summary>
    private static void LeftOut(StringBuilder svg, DrillNote wanted, TakeNote note, Func<int, double, double> y, double last, int before)
    {
        var row = (int)(last / RowSeconds);
        var x = Math.Min(Left + ((last - (row * RowSeconds)) * SecondWidth) + 5 + (9 * before), Left + (RowSeconds * SecondWidth) + 8);
        Add(svg, $"<rect class=\"out\" x=\"{x:0.#}\" y=\"{y(row, wanted.Cents) - 3:0.#}\" width=\"6\" height=\"6\"><title>{WebUtility.HtmlEncode($"{note.Tone} left out")}</title></rect>");
    }

    /// <summary>Draws what lies in a row of a note that was sung.</summary>
    private static void Part(StringBuilder svg, DrillNote wanted, TakeNote note, Func<int, double, double> y, int row, double from, double to)
    {
        var x = Left + ((from - (row * RowSeconds)) * SecondWidth);
        var width = Math.Max(2, ((to - from) * SecondWidth) - 1);
        Add(svg, $"<rect class=\"step\" x=\"{x:0.#}\" y=\"{y(row, wanted.Cents) - 5:0.#}\" width=\"{width:0.#}\" height=\"10\"/>");
        var kind = Kind(note);
        var sung = y(row, wanted.Cents + (note.Cents ?? 0));
        var course = note.Course.Where(c => c.Seconds >= from && c.Seconds <= to).ToList();
        Add(svg, $"<path class=\"sung {kind.Name}\" d=\"{Curve(course, wanted, y, row, x, sung, width)}\"><title>{WebUtility.HtmlEncode($"{note.Tone}: {note.Cents:+0;-0;0} cents {TakeMarks.Words(note)}")}</title></path>");
        // The name and the sign stand in the row of the note's middle.
        if ((int)((note.Onset!.Value + note.End!.Value) / 2 / RowSeconds) != row)
        {
            return;
        }

        Add(svg, $"<text class=\"small\" x=\"{x:0.#}\" y=\"{y(row, wanted.Cents) + 15:0.#}\">{WebUtility.HtmlEncode(note.Tone.ToString())}</text>");
        if (kind.Sign.Length > 0)
        {
            Add(svg, $"<text class=\"say\" x=\"{x + (width / 2) - 4:0.#}\" y=\"{sung - 5:0.#}\">{kind.Sign}</text>");
        }
    }

    /// <summary>The note's course; where none was heard for a while, it breaks off. Without one, its mean.</summary>
    private static string Curve(List<TakePoint> course, DrillNote wanted, Func<int, double, double> y, int row, double x, double mean, double width)
    {
        if (course.Count < 2)
        {
            return string.Create(CultureInfo.InvariantCulture, $"M{x:0.#} {mean:0.#}h{width:0.#}");
        }

        var path = new StringBuilder();
        for (var i = 0; i < course.Count; i++)
        {
            var (seconds, cents) = course[i];
            var isBroken = i == 0 || seconds - course[i - 1].Seconds > LongestGap;
            path.Append(CultureInfo.InvariantCulture, $"{(isBroken ? 'M' : 'L')}{Left + ((seconds - (row * RowSeconds)) * SecondWidth):0.#} {y(row, wanted.Cents + cents):0.#}");
        }

        return path.ToString();
    }

    private static (string Name, string Sign) Kind(TakeNote note) => note.Status switch
    {
        NoteStatus.OtherNote => ("other", "×"),
        NoteStatus.Unsure => ("unsure", "?"),
        _ when Math.Abs(note.Cents ?? 0) <= TakeMarks.InTune => ("good", string.Empty),
        _ => note.Cents > 0 ? ("high", "↑") : ("low", "↓"),
    };

    private static void Key(StringBuilder svg)
    {
        var x = Left;
        foreach (var (name, sign, words) in ((string, string, string)[])[("good", "", "in tune"), ("high", "↑", "high"), ("low", "↓", "low"), ("other", "×", "another note"), ("unsure", "?", "unsure")])
        {
            Add(svg, $"<path class=\"sung {name}\" d=\"M{x:0.#} 38h34\"/><text class=\"say\" x=\"{x + 38:0.#}\" y=\"42\">{sign} {words}</text>");
            x += KeyWidth;
        }

        Add(svg, $"<rect class=\"step\" x=\"{x:0.#}\" y=\"33\" width=\"34\" height=\"10\"/><text class=\"say\" x=\"{x + 38:0.#}\" y=\"42\">the drill</text>");
        x += KeyWidth;
        Add(svg, $"<rect class=\"out\" x=\"{x:0.#}\" y=\"35\" width=\"6\" height=\"6\"/><text class=\"say\" x=\"{x + 12:0.#}\" y=\"42\">left out</text>");
    }

    private static void Add(StringBuilder svg, FormattableString text) => svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
