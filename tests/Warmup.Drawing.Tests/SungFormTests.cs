using System.Globalization;
using System.Xml.Linq;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>Source: the notes that are given; the lengths of time and the semitones between them.</summary>
public class SungFormTests
{
    private static readonly PrintedForm Form = new("A take", ["line", "note", "what was heard"]) { WideColumn = 2 };

    private static SungNote Note(string name, double onset, double seconds, double semitones, SungMark mark) => new(name, onset, seconds, semitones, mark)
    {
        Course = mark == SungMark.LeftOut ? [] : [.. Enumerable.Range(0, (int)Math.Round(seconds / 0.02)).Select(i => new SungPoint(onset + (0.02 * i), semitones + 0.3))],
    };

    private static Drawn Draw(params SungNote[] notes)
    {
        using var stream = new MemoryStream();
        (Form with { Sung = [.. notes] }).WriteSvg(stream);
        return new Drawn(stream.ToArray());
    }

    private static List<(double X, double Y)> Points(XElement line) => [.. line.Attribute("points")!.Value.Split(' ').Select(p =>
        (double.Parse(p.Split(',')[0], CultureInfo.InvariantCulture), double.Parse(p.Split(',')[1], CultureInfo.InvariantCulture)))];

    [Fact]
    public void What_was_sung_lies_over_the_steps_as_far_as_it_was_off()
    {
        var drawn = Draw(Note("S", 1, 1, 48, SungMark.InTune), Note("P", 3, 2, 55, SungMark.InTune));
        var (steps, sung) = (drawn.Of("step"), drawn.Of("sung"));
        Assert.Equal([2, 2], [steps.Count, sung.Count]);

        // P lies 7 semitones above S, begins two seconds later and is twice as long; what was sung lies 0.3 semitones above each.
        var semitone = (Drawn.Number(steps[0], "y") - Drawn.Number(steps[1], "y")) / 7;
        var second = (Drawn.Number(steps[1], "x") - Drawn.Number(steps[0], "x")) / 2;
        Assert.True(semitone > 2 && second > 20);
        Assert.InRange(Drawn.Number(steps[1], "width") - Drawn.Number(steps[0], "width"), second - 0.1, second + 0.1);
        Assert.All(steps.Zip(sung), pair =>
        {
            var middle = Drawn.Number(pair.First, "y") + (Drawn.Number(pair.First, "height") / 2);
            Assert.All(Points(pair.Second), p => Assert.InRange((middle - p.Y) / semitone, 0.28, 0.32));
            Assert.InRange(Points(pair.Second)[0].X - Drawn.Number(pair.First, "x"), -0.01, 0.01);
        });
    }

    [Fact]
    public void Every_mark_has_its_colour_its_kind_of_line_and_but_for_in_tune_its_sign()
    {
        var marks = Enum.GetValues<SungMark>();
        string Looks(SungMark mark)
        {
            var drawn = Draw(Note("S", 2, 1, 48, mark));
            var sign = drawn.Of("sign").Skip(Draw(Note("S", 2, 1, 48, SungMark.InTune)).Of("sign").Count).ToList();
            var line = drawn.Of("sung").SingleOrDefault();
            Assert.Equal(mark == SungMark.InTune, sign.Count == 0);
            Assert.Equal(mark == SungMark.LeftOut, line is null);
            return line is null ? "box" : $"{line.Attribute("stroke-dasharray")?.Value} {line.Attribute("stroke-width")!.Value}";
        }

        Assert.Equal(marks.Length, marks.Select(Looks).Distinct().Count());
        Assert.Equal(marks.Length - 1, Draw(Note("S", 2, 1, 48, SungMark.InTune)).Of("key").Select(k => k.Attribute("stroke")?.Value).OfType<string>().Distinct().Count());
    }

    [Fact]
    public void A_note_goes_on_in_the_next_strip_and_has_its_name_and_sign_once()
    {
        var drawn = Draw(Note("S", 8, 3, 48, SungMark.High), Note("R2", 11, 1, 50, SungMark.InTune));
        var steps = drawn.Of("step");
        Assert.Equal(3, steps.Count);
        Assert.Equal(Drawn.Number(steps[0], "width"), 2 * Drawn.Number(steps[1], "width"), 1.0);
        Assert.True(Drawn.Number(steps[1], "y") > Drawn.Number(steps[0], "y"));
        Assert.Equal(["S", "R2"], drawn.Texts("name"));
        Assert.Equal(3, drawn.Of("sung").Count);
    }

    [Fact]
    public void A_pause_breaks_the_line_off_and_notes_left_out_stand_beside_each_other()
    {
        var parted = Note("S", 1, 1, 48, SungMark.InTune);
        parted = parted with { Course = [.. parted.Course.Where(p => p.Seconds is < 1.3 or > 1.5)] };
        var drawn = Draw(parted, new SungNote("R2", 2, 0, 50, SungMark.LeftOut), new SungNote("G3", 2, 0, 52, SungMark.LeftOut));
        Assert.Equal(2, drawn.Of("sung").Count);
        var boxes = drawn.Of("sign").Where(s => s.Attribute("points") is not null).Skip(1).ToList();
        Assert.Equal(2, boxes.Count);
        Assert.True(Points(boxes[1])[0].X > Points(boxes[0]).Max(p => p.X));
        Assert.True(Points(boxes[1])[0].Y < Points(boxes[0])[0].Y);
    }

    [Fact]
    public void A_long_cell_goes_on_in_further_lines_of_its_row()
    {
        const string Why = "unsure: the notes around it fit the drill in another way almost as well";
        using var stream = new MemoryStream();
        var columns = Enumerable.Range(1, 9).Select(c => $"column {c}").ToValueList();
        new PrintedForm("A take", columns) { WideColumn = 8, Rows = [["1", "1", "S", "", "", "", "", "", Why], ["2"]] }.WriteSvg(stream);
        var drawn = new Drawn(stream.ToArray());
        Assert.Equal($"1 1 S {Why} 2", string.Join(' ', drawn.Texts("cell")));
        var rows = drawn.Of("row").Select(r => Drawn.Number(r, "y1")).ToList();
        Assert.True(rows[1] - rows[0] > rows[2] - rows[1]);
    }

    [Fact]
    public void The_PDF_has_the_picture()
    {
        byte[] Pdf(PrintedForm form)
        {
            using var stream = new MemoryStream();
            form.WritePdf(stream);
            return stream.ToArray();
        }

        var form = Form with { Sung = [Note("S", 1, 1, 48, SungMark.Low)] };
        Assert.Equal(Pdf(form), Pdf(form with { }));
        Assert.True(Pdf(form).Length > Pdf(Form).Length);
    }

    [Fact]
    public void What_cannot_be_a_note_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new SungNote("S", double.NaN, 1, 0, SungMark.InTune));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SungNote("S", 0, -1, 0, SungMark.InTune));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SungNote("S", 0, 1, 0, (SungMark)9));
        Assert.Throws<ArgumentException>(() => new SungNote("a\tb", 0, 1, 0, SungMark.InTune));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SungNote("S", 0, 1, 0, SungMark.InTune) { Course = [new SungPoint(1, 0), new SungPoint(0.5, 0)] });
        Assert.Throws<ArgumentOutOfRangeException>(() => Form with { WideColumn = 3 });
    }
}
