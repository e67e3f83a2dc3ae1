using System.Globalization;

namespace Warmup.Drawing;

/// <summary>
/// Draws what was sung over what was to be sung, in strips of ten seconds below each other: the notes as steps, over them the course of the voice. Colour
/// never stands alone: every mark has its own kind of line and its sign.
/// </summary>
internal sealed class SungDrawing(ValueList<SungNote> notes, PageComposer composer)
{
    private const double StripSeconds = 10;
    private const double Axis = 26;
    private const double Semitone = 5.5;
    private const double Tallest = 200;
    private const double Around = 1.5;
    private const double Step = 7;
    private const double Under = 24;
    private const double Small = 6.5;

    // A name needs so much room from the one before it, and an axis' name from the one above it.
    private const double NameWidth = 13;
    private const double NameHeight = 7;

    // Seconds without a pitch over which a curve still goes on.
    private const double LongestGap = 0.05;

    private const string Grey = "#d8d8d8";
    private const string Faint = "#ececec";

    private readonly double _low = notes.Min(n => n.Semitones) - Around;
    private readonly double _high = notes.Max(n => n.Semitones) + Around;

    private double Height => Math.Min(Tallest, (_high - _low) * Semitone);

    private double Left => composer.Left + Axis;

    private double SecondWidth => (composer.Right - Left) / StripSeconds;

    /// <summary>Draws the picture from the composer's height on.</summary>
    public void Draw()
    {
        composer.Need(60 + Height + Under);
        composer.Y += 8;
        composer.Paragraph("part", "The drill's notes as steps, and over them what was sung", 10.5, most: 2);
        Key();
        var end = notes.Max(n => n.Onset + n.Seconds);
        for (var strip = 0; strip == 0 || strip * StripSeconds < end; strip++)
        {
            composer.Need(Height + Under);
            Strip(strip, composer.Y + 6);
            composer.Y += Height + Under;
        }
    }

    private static (string Colour, double Width, double Dash, string Words) Line(SungMark mark) => mark switch
    {
        SungMark.InTune => ("#00695c", 1.7, 0, "in tune"),
        SungMark.High => ("#b45309", 1.7, 5, "high"),
        SungMark.Low => ("#5b21b6", 1.7, 2.6, "low"),
        SungMark.AnotherNote => ("#b91c1c", 1.7, 1.3, "another note"),
        SungMark.Unsure => ("#555555", 1, 0.8, "unsure"),
        _ => ("#555555", 0.8, 0, "left out"),
    };

    private void Key()
    {
        composer.Y += 12;
        var (x, y) = (composer.Left, composer.Y - 3);
        composer.Add(new BoxShape("key", x, y - (Step / 2), 20, Step, Grey));
        x += 25 + composer.Put("key", x + 25, y + 2.5, "the drill", 8, PageComposer.Soft) + 14;
        foreach (var mark in Enum.GetValues<SungMark>())
        {
            var (colour, width, dash, words) = Line(mark);
            if (mark != SungMark.LeftOut)
            {
                composer.Add(new CurveShape("key", [(x, y), (x + 20, y)], width, colour, dash));
            }

            Sign(mark, x + 26, y);
            var wordsAt = x + (mark == SungMark.InTune ? 25 : 33);
            x = wordsAt + composer.Put("key", wordsAt, y + 2.5, words, 8, PageComposer.Soft) + 14;
        }

        composer.Y += 4;
    }

    private void Strip(int strip, double top)
    {
        var (from, bottom) = (strip * StripSeconds, top + Height);
        for (var s = 0; s <= StripSeconds; s += 2)
        {
            var x = Left + (s * SecondWidth);
            composer.Add(new StrokeShape("time", x, top, x, bottom, 0.5, Faint));
            composer.Put("seconds", x, bottom + 9, string.Create(CultureInfo.InvariantCulture, $"{from + s:0} s"), Small, PageComposer.Soft, s == 0 ? 0 : s < StripSeconds ? 0.5 : 1);
        }

        var above = top - NameHeight;
        foreach (var tone in notes.GroupBy(n => n.Semitones).OrderByDescending(t => t.Key))
        {
            var y = Y(tone.Key, bottom);
            composer.Add(new StrokeShape("tone", Left, y, composer.Right, y, 0.4, Faint));
            if (y - above >= NameHeight)
            {
                composer.Put("tone-name", Left - 5, y + 2.3, tone.First().Name, Small, PageComposer.Soft, 1);
                above = y;
            }
        }

        var (named, leftOut) = (0.0, 0);
        foreach (var note in notes)
        {
            var end = note.Onset + note.Seconds;
            leftOut = note.Mark == SungMark.LeftOut ? leftOut + 1 : 0;
            if (note.Mark == SungMark.LeftOut)
            {
                if (note.Onset >= from && note.Onset < from + StripSeconds)
                {
                    // Notes that were left out one after the other stand beside each other.
                    var x = Math.Min(Left + ((note.Onset - from) * SecondWidth) + (leftOut * 8), composer.Right - 4);
                    Sign(note.Mark, x, Y(note.Semitones, bottom));
                }
            }
            else if (note.Onset < from + StripSeconds && end > from)
            {
                named = Sung(note, from, bottom, named);
            }
        }
    }

    /// <summary>Draws the part of a note that lies in a strip.</summary>
    /// <returns>Where the last name ends.</returns>
    private double Sung(SungNote note, double from, double bottom, double named)
    {
        var (begin, end) = (Math.Max(note.Onset, from), Math.Min(note.Onset + note.Seconds, from + StripSeconds));
        var (x, right, y) = (X(begin, from), X(end, from), Y(note.Semitones, bottom));
        composer.Add(new BoxShape("step", x, y - (Step / 2), Math.Max(1, right - x - 0.5), Step, Grey));

        // The name and the sign stand where the note's middle lies.
        var middle = note.Onset + (note.Seconds / 2);
        var isMiddle = middle >= from && middle < from + StripSeconds;
        if (isMiddle && x >= named)
        {
            composer.Put("name", x, y + (Step / 2) + 6.5, note.Name, Small, PageComposer.Soft);
            named = x + NameWidth;
        }

        var (colour, width, dash, _) = Line(note.Mark);
        var (curve, before, highest) = (new List<(double X, double Y)>(), double.NegativeInfinity, y);
        foreach (var point in note.Course)
        {
            if (point.Seconds < begin || point.Seconds > end)
            {
                continue;
            }

            if (point.Seconds - before > LongestGap)
            {
                Curve();
            }

            curve.Add((X(point.Seconds, from), Y(point.Semitones, bottom)));
            highest = Math.Min(highest, curve[^1].Y);
            before = point.Seconds;
        }

        Curve();
        if (isMiddle)
        {
            Sign(note.Mark, (x + right) / 2, highest - 6);
        }

        return named;

        void Curve()
        {
            if (curve.Count > 1)
            {
                composer.Add(new CurveShape("sung", [.. curve], width, colour, dash));
            }

            curve.Clear();
        }
    }

    /// <summary>Draws the sign of a mark about a place: an arrow, a cross, a question mark or an empty box.</summary>
    private void Sign(SungMark mark, double x, double y)
    {
        var colour = Line(mark).Colour;
        switch (mark)
        {
            case SungMark.High or SungMark.Low:
                var up = mark == SungMark.High ? -1 : 1;
                Stroke(x, y - (3 * up), x, y + (3 * up));
                Stroke(x - 2, y + up, x, y + (3 * up));
                Stroke(x + 2, y + up, x, y + (3 * up));
                break;
            case SungMark.AnotherNote:
                Stroke(x - 2.2, y - 2.2, x + 2.2, y + 2.2);
                Stroke(x - 2.2, y + 2.2, x + 2.2, y - 2.2);
                break;
            case SungMark.Unsure:
                composer.Put("sign", x, y + 2.8, "?", 8, colour, 0.5);
                break;
            case SungMark.LeftOut:
                composer.Add(new CurveShape("sign", [(x - 2.5, y - 2.5), (x + 2.5, y - 2.5), (x + 2.5, y + 2.5), (x - 2.5, y + 2.5), (x - 2.5, y - 2.5)], 0.8, colour));
                break;
        }

        void Stroke(double x1, double y1, double x2, double y2) => composer.Add(new StrokeShape("sign", x1, y1, x2, y2, 0.9, colour));
    }

    private double X(double seconds, double from) => Left + ((seconds - from) * SecondWidth);

    private double Y(double semitones, double bottom) => bottom - ((Math.Clamp(semitones, _low, _high) - _low) / (_high - _low) * Height);
}
