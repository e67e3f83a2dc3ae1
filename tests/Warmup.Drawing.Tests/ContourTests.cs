using System.Globalization;
using System.Xml.Linq;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>
/// Source: heights in proportion to cents (just thirds 5/4 and fifths 3/2), places in proportion to the score's seconds; contrast by WCAG 2.1,
/// success criterion 1.4.11 (3 to 1 for what is no text) with its definition of relative luminance.
/// </summary>
public class ContourTests
{
    private static readonly Drill Ladder = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("G3"),
        Title = "Ladder",
        Tuning = Tuning.Just,
        Tempo = 90,
        Delivery = Delivery.LineByLine,
    };

    private static NoteName Note(string text) => NoteName.Parse(text);

    private static double Y(XElement stroke) => Drawn.Number(stroke, "y1");

    private static double X(XElement stroke) => Drawn.Number(stroke, "x1");

    /// <summary>The line through two points, at a third place.</summary>
    private static double On((double X, double Y) a, (double X, double Y) b, double x) => a.Y + ((x - a.X) / (b.X - a.X) * (b.Y - a.Y));

    private static double Luminance(string colour)
    {
        double Part(int at)
        {
            var c = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return c <= 0.03928 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Part(1)) + (0.7152 * Part(3)) + (0.0722 * Part(5));
    }

    private static double Contrast(string a, string b) =>
        (Math.Max(Luminance(a), Luminance(b)) + 0.05) / (Math.Min(Luminance(a), Luminance(b)) + 0.05);

    [Fact]
    public void Notes_stand_at_their_seconds_and_their_cents()
    {
        // Two speeds and a rising tempo: seconds and aksharas part ways.
        var score = (Ladder with { Pattern = Pattern.Parse("run"), Delivery = Delivery.Continuous, Speeds = [Speed.First, Speed.Second], Tempo = new TempoRamp(60, 20, 100) }).ToScore();
        var section = score.Sections[0];
        Assert.False(section.TempoChanges.IsEmpty);
        var notes = new Drawn(score, new ContourOptions()).Of("note");
        Assert.Equal(section.Notes.Count, notes.Count);
        double Seconds(int n) => section.SecondsAt(section.Notes[n].Onset).ToDouble();
        double Cents(int n) => section.PitchOf(section.Notes[n]).Cents;
        for (var n = 0; n < notes.Count; n++)
        {
            Assert.Equal(On((Seconds(0), X(notes[0])), (Seconds(5), X(notes[5])), Seconds(n)), X(notes[n]), 0.02);
            Assert.Equal(On((Cents(0), Y(notes[0])), (Cents(5), Y(notes[5])), Cents(n)), Y(notes[n]), 0.02);
            Assert.Equal(Y(notes[n]), Drawn.Number(notes[n], "y2"), 0.001);
        }

        Assert.True(Y(notes[5]) < Y(notes[0]) - 100 && X(notes[5]) > X(notes[0]) + 50);
    }

    [Fact]
    public void The_svaras_have_lines_at_their_tuned_height_with_labels_and_cents()
    {
        var drawn = new Drawn(Ladder.ToScore(), new ContourOptions());

        // One strip or more, each with all lines; the drill reaches from S to the upper S.
        var lines = drawn.Of("svara").Take(6).Select(Y).ToArray();
        double[] cents = [0, 1200 * Math.Log2(9.0 / 8), 1200 * Math.Log2(5.0 / 4), 1200 * Math.Log2(3.0 / 2), 1200 * Math.Log2(5.0 / 3), 1200];
        for (var i = 0; i < 6; i++)
        {
            Assert.Equal(On((0, lines[0]), (1200, lines[5]), cents[i]), lines[i], 0.02);
        }

        Assert.Equal(["S", "R", "G", "P", "D", "S"], drawn.Texts("svara-label").Take(6));
        Assert.Equal(["0", "203.9", "386.3", "702", "884.4", "1200"], drawn.Texts("cents").Take(6));
        Assert.Equal(drawn.Of("svara").Count / 6, drawn.Of("octave above").Count);
    }

    [Theory]
    [InlineData("chromatic", "run.up-down", 1)]
    [InlineData("chromatic", "sarali-1", 3)]
    [InlineData("15", "alankara-1", 3)]
    [InlineData("15", "alankara-6", 3)]
    public void Labels_stand_on_their_lines_and_three_speeds_on_at_most_two_pages(string scale, string pattern, int speeds)
    {
        var score = (Ladder with
        {
            Scale = Catalogue.Default.Read(scale), Pattern = Repertoire.Find(pattern)?.Pattern ?? Pattern.Parse(pattern), Speeds = [.. Enumerable.Range(1, speeds).Select(k => new Speed(k))], Delivery = Delivery.Continuous, Tempo = 60,
        }).ToScore();
        var drawn = new Drawn(score, new ContourOptions());
        Assert.InRange(drawn.Pages.Count, 1, 2);
        foreach (var page in drawn.Pages)
        {
            List<XElement> Of(string kind) => [.. page.Elements().Where(e => e.Attribute("class")!.Value == kind)];

            // A label's baseline is 2.9 points below the middle of its line, whatever its neighbours.
            var lines = Of("svara").ConvertAll(Y);
            var labels = Of("svara-label").ConvertAll(l => Drawn.Place(l).Y - 2.9);
            Assert.NotEmpty(labels);
            Assert.All(labels, l => Assert.Contains(lines, y => Math.Abs(y - l) < 0.05));

            // Two labels are as far apart as their letters are high, and none is above the highest line.
            var high = labels.Order().ToList();
            Assert.All(high.Skip(1).Zip(high), pair => Assert.True(pair.First - pair.Second >= 7.4));

            // The legend stands on a page with a strip.
            Assert.True(Of("legend").Count == 0 || Of("note").Count > 0);
        }
    }

    [Fact]
    public void Breaths_are_gaps_with_their_sign_in_the_middle()
    {
        // Short enough for one strip, so that one measure holds for all.
        var score = (Ladder with { Pattern = Pattern.Parse("[1 2 3 / 2 3 4 / 3 4 5]") }).ToScore();
        var section = score.Sections[0];
        var drawn = new Drawn(score, new ContourOptions());
        var notes = drawn.Of("note");
        Assert.Equal(3, section.Breaths.Count);
        double Place(Rational aksharas) => On(
            (section.SecondsAt(section.Notes[0].Onset).ToDouble(), X(notes[0])),
            (section.SecondsAt(section.Notes[8].Onset).ToDouble(), X(notes[8])),
            section.SecondsAt(aksharas).ToDouble());
        for (var b = 0; b < 3; b++)
        {
            var breath = section.Breaths[b];
            var (from, to) = (Place(breath.Onset), Place(breath.Onset + breath.Length));
            Assert.True(to - from > 5);
            Assert.All(notes.Concat(drawn.Of("join")), n => Assert.True(Drawn.Number(n, "x2") <= from + 0.02 || X(n) >= to - 0.02));
            var (left, right) = drawn.Ink(drawn.Of("breath")[b]);
            Assert.Equal((from + to) / 2, (left + right) / 2, 0.5);
        }

        // Three notes a line are joined by two strokes, lines are not joined.
        Assert.Equal(6, drawn.Of("join").Count);
    }

    [Fact]
    public void A_singers_range_is_a_band_between_its_notes()
    {
        // On G3 in just tuning: B3 is 400 keyboard cents above, D4 is 700.
        var drawn = new Drawn(Ladder.ToScore(), new ContourOptions { Band = new PitchBand("Wren", Note("B3"), Note("D4")) });
        var (s, upper) = (Y(drawn.Of("svara")[0]), Y(drawn.Of("svara")[5]));
        var band = drawn.Of("range")[0];
        Assert.Equal(On((0, s), (1200, upper), 700), Drawn.Number(band, "y"), 0.02);
        Assert.Equal(On((0, s), (1200, upper), 400), Drawn.Number(band, "y") + Drawn.Number(band, "height"), 0.02);
        Assert.Contains("Wren (B3 to D4)", drawn.AllText, StringComparison.Ordinal);
        Assert.Empty(new Drawn(Ladder.ToScore(), new ContourOptions()).Of("range"));
    }

    [Fact]
    public void A_range_that_was_assumed_is_said_to_be()
    {
        var assumed = new PitchBand("Robin", Note("A3"), Note("C5")) { IsAssumed = true };
        Assert.Contains("assumed and not measured", new Drawn(Ladder.ToScore(), new ContourOptions { Band = assumed }).AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void Shades_differ_in_lightness_and_stand_out_from_paper_and_band()
    {
        var score = Ladder.ToScore();
        var drawn = new Drawn(score, new ContourOptions { Band = new PitchBand("Wren", Note("A3"), Note("E5")) });
        var shades = drawn.Of("note").Select(n => n.Attribute("stroke")!.Value).Distinct().ToArray();
        var band = drawn.Of("range")[0].Attribute("fill")!.Value;
        Assert.Equal(3, shades.Length);
        foreach (var shade in shades)
        {
            Assert.True(Contrast(shade, "#ffffff") >= 3);
            Assert.True(Contrast(shade, band) >= 3);
            Assert.All(shades.Where(s => s != shade), s => Assert.True(Contrast(s, shade) >= 1.8, $"{s} and {shade} look alike in grey"));
        }

        Assert.Equal(Enumerable.Range(1, score.Sections[0].Lines.Count).Select(i => i.ToString(CultureInfo.InvariantCulture)), drawn.Texts("line"));
    }

    [Fact]
    public void A_long_drill_fills_strips_and_pages_and_loses_no_time()
    {
        var score = (Ladder with { Pattern = Pattern.Parse("ladder.repeat(12)"), Delivery = Delivery.Continuous }).ToScore();
        var section = score.Sections[0];
        var drawn = new Drawn(score, new ContourOptions());
        var notes = drawn.Of("note");
        Assert.True(drawn.Pages.Count > 1);
        Assert.Equal(section.Notes.Count, notes.Count);

        // A second has one length within a strip, which fills the width of all svara lines; each stroke is a hair (0.8 points) shorter than its note.
        double From(int n) => section.SecondsAt(section.Notes[n].Onset).ToDouble();
        double To(int n) => section.SecondsAt(section.Notes[n].End).ToDouble();
        var (left, right) = (X(drawn.Of("svara")[0]), Drawn.Number(drawn.Of("svara")[0], "x2"));
        Assert.All(drawn.Of("svara"), s => Assert.Equal((left, right), (X(s), Drawn.Number(s, "x2"))));
        for (var n = 0; n < notes.Count;)
        {
            var last = n;
            while (last + 1 < notes.Count && X(notes[last + 1]) > X(notes[last]))
            {
                last++;
            }

            var second = (X(notes[last]) - X(notes[n])) / (From(last) - From(n));
            Assert.Equal((left, right), (X(notes[n]), Drawn.Number(notes[last], "x2") + 0.8), (a, b) => Math.Abs(a.Item1 - b.Item1) < 0.05 && Math.Abs(a.Item2 - b.Item2) < 0.05);
            for (; n <= last; n++)
            {
                Assert.Equal((To(n) - From(n)) * second, Drawn.Number(notes[n], "x2") - X(notes[n]) + 0.8, 0.05);
            }
        }

        Assert.All(notes, n => Assert.True(X(n) > 40 && Drawn.Number(n, "x2") < 842 - 40 && Y(n) > 40 && Y(n) < 595 - 50));
        Assert.Equal("297mm", drawn.Root.Attribute("width")!.Value);
    }

    [Fact]
    public void All_formats_draw_it_with_equal_bytes_and_its_cautions()
    {
        var options = new ContourOptions { Band = new PitchBand("Wren", Note("A3"), Note("E5")) };
        foreach (var format in (IScoreFormat[])[new SvgFormat(options), new PdfFormat(options), new PngFormat(options)])
        {
            Assert.Contains("contour", format.Name, StringComparison.Ordinal);
            Assert.Equal(Drawn.Bytes(format, Ladder.ToScore()), Drawn.Bytes(format, Ladder.ToScore()));
        }

        // Long paragraphs are broken into lines; the words stand in order.
        var text = new Drawn(Ladder.ToScore(), options).AllText;
        Assert.All(Cautions.All, c => Assert.Contains(c.Brief, text, StringComparison.Ordinal));
        Assert.Contains(TextSheetFormat.NotTheRaga, text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onload=\"x")]
    public void Titles_and_names_are_text_and_nothing_else(string text)
    {
        var drawn = new Drawn((Ladder with { Title = text }).ToScore(), new ContourOptions { Band = new PitchBand(text, Note("A3"), Note("E5")) });
        Assert.All(drawn.Root.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, (string[])["svg", "title", "desc", "defs", "path", "g", "use", "line", "rect", "circle"]));
        Assert.DoesNotContain(drawn.Root.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.Equal(text, drawn.Texts("title")[0]);
    }
}
