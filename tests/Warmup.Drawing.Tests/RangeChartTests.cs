using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>Source: SVG 1.1 for the elements; the places of bars against each other from the keyboard's semitones; the words of the rules.</summary>
public class RangeChartTests
{
    // The chart's colours of a note inside and outside a range.
    private const string Sung = "#12496b";
    private const string Outside = "#d1495b";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Title = "Mohanam" };

    private static NoteName Note(string text) => NoteName.Parse(text);

    private static RangeBar Voice(string name, string low, string high) => new(new PitchBand(name, Note(low), Note(high))) { Verdict = ["fits"] };

    private static byte[] Bytes(ValueList<RangeBar> bars, Drill? drill = null, RangeChartOptions? options = null)
    {
        using var stream = new MemoryStream();
        RangeChart.Write((drill ?? Mohanam).ToScore(), bars, stream, options);
        Assert.True(stream.CanWrite, "the stream is not closed");
        return stream.ToArray();
    }

    private static XElement Chart(ValueList<RangeBar> bars, Drill? drill = null, RangeChartOptions? options = null) =>
        XDocument.Parse(Encoding.UTF8.GetString(Bytes(bars, drill, options))).Root!;

    private static string[] Texts(XElement chart) => [.. chart.Elements(Svg + "text").Select(t => t.Value)];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The outlines of the singers' ranges: the only unfilled rectangles with a border above the legend.</summary>
    private static XElement[] Bars(XElement chart) =>
        [.. chart.Elements(Svg + "rect").Where(r => r.Attribute("fill")!.Value == "none" && r.Attribute("stroke") is not null && Number(r, "y") < 700)];

    [Fact]
    public void Bars_are_as_high_as_their_ranges()
    {
        var bars = Bars(Chart([Voice("a", "G3", "F#5"), Voice("b", "C3", "B3") with { Octaves = -1 }]));

        // 24 and 12 notes; B3 lies four semitones above G3: b ends on the row above its B3, five rows above a's lower end.
        Assert.Equal(2, bars.Length);
        var (a, b) = (bars[0], bars[1]);
        var row = Number(a, "height") / 24;
        Assert.Equal(12, Number(b, "height") / row, 0.01);
        Assert.Equal(5, (Number(a, "y") + Number(a, "height") - Number(b, "y")) / row, 0.02);
    }

    [Fact]
    public void Every_note_and_its_seconds_stand_beside_the_keyboard()
    {
        // The ladder of five lines at 60: S 5, R 5, G 4, P 3, D 2, S' 1 seconds.
        var texts = Texts(Chart([Voice("a", "A3", "E5")]));
        Assert.All((string[])["S  5 s", "R2  5 s", "G3  4 s", "P  3 s", "D2  2 s", "S'  1 s"], t => Assert.Contains(t, texts));
    }

    [Fact]
    public void What_is_said_of_a_bar_its_octave_and_its_range_stand_below()
    {
        var texts = Texts(Chart(
        [
            Voice("Wren", "A3", "E5"), Voice("Badger", "A2", "E4") with { Octaves = -1 }, Voice("Robin", "C4", "A4") with { IsTooHigh = true, Verdict = ["3 semitones", "too high"] },
            Voice("Heron", "C2", "C3") with { Octaves = -2 },
        ]));
        Assert.Equal(3, texts.Count(t => t == "fits"));
        Assert.Contains("3 semitones", texts);
        Assert.Contains("too high", texts);
        Assert.Contains("octave lower", texts);
        Assert.Contains("2 octaves lower", texts);
        Assert.Contains("A3 to E5", texts);
    }

    [Fact]
    public void Only_notes_outside_the_range_of_a_bar_that_does_not_fit_stand_out()
    {
        // The ladder has S R2 G3 P D2 S' on C4: of its six notes C5 lies above A4. The words in the legend explain the colour.
        XElement[] Notes(RangeBar bar, string fill) =>
            [.. Chart([bar]).Elements(Svg + "rect").Where(r => r.Attribute("fill")!.Value == fill && Number(r, "x") > 400 && Number(r, "y") < 700)];
        var robin = Voice("Robin", "C4", "A4");
        Assert.Single(Notes(robin with { IsTooHigh = true }, Outside));
        Assert.Equal(5, Notes(robin with { IsTooHigh = true }, Sung).Length);
        Assert.Empty(Notes(robin, Outside));
        Assert.Equal(2, Notes(Voice("Wren", "E4", "E5") with { IsTooLow = true }, Outside).Length);
    }

    [Fact]
    public void Cautions_stand_on_the_sheet()
    {
        var text = string.Join('\n', Texts(Chart([Voice("a", "A3", "E5")])));
        Assert.Contains("teacher's ear overrules", text, StringComparison.Ordinal);
        Assert.Contains("Stop at once", text, StringComparison.Ordinal);
        Assert.Contains("doctor", text, StringComparison.Ordinal);
        Assert.Contains("NIDCD", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_assumed_range_is_dashed_and_said_to_be_assumed()
    {
        var assumed = new RangeBar(new PitchBand("Robin", Note("A3"), Note("C5")) { IsAssumed = true });
        Assert.NotNull(Bars(Chart([assumed])).Single().Attribute("stroke-dasharray"));
        Assert.Contains("assumed, not measured", Texts(Chart([assumed])));
        Assert.DoesNotContain("assumed, not measured", Texts(Chart([Voice("a", "A3", "E5")])));
    }

    [Fact]
    public void Nothing_lies_outside_the_sheet()
    {
        var low = Voice("a", "C1", "C2") with { FullLow = Note("C1"), FullHigh = Note("C5") };
        var chart = Chart([low, Voice("b", "C6", "C8"), Voice("c", "A3", "E5")]);
        foreach (var element in chart.Elements(Svg + "rect"))
        {
            Assert.InRange(Number(element, "x"), 0, 1188);
            Assert.InRange(Number(element, "y"), 0, 840);
            Assert.InRange(Number(element, "x") + Number(element, "width"), 0, 1188);
            Assert.InRange(Number(element, "y") + Number(element, "height"), 0, 840);
        }
    }

    [Fact]
    public void Bars_that_are_not_drawn_are_counted()
    {
        var many = Enumerable.Range(0, 10_000).Select(i => Voice($"voice {i}", "A3", "E5")).ToValueList();
        var chart = Chart(many);
        Assert.Equal(32, Bars(chart).Length);
        Assert.Contains(Texts(chart), t => t.Contains("9968 more are not drawn", StringComparison.Ordinal));
        Assert.Equal(60, Bars(Chart(many, options: new RangeChartOptions { MostBars = 60 })).Length);
    }

    [Fact]
    public void Equal_input_gives_equal_bytes_without_a_mark_at_the_beginning()
    {
        ValueList<RangeBar> bars = [Voice("a", "A3", "E5")];
        Assert.Equal(Bytes(bars), Bytes(bars));
        Assert.StartsWith("<?xml", Encoding.UTF8.GetString(Bytes(bars)), StringComparison.Ordinal);
        Assert.DoesNotContain((byte)'\r', Bytes(bars));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onload=\"x")]
    [InlineData("a & b ]]>")]
    [InlineData("மீரா 😀 Zoë")]
    public void Names_are_text_and_nothing_else(string alias)
    {
        var chart = Chart([Voice(alias, "A3", "E5")], Mohanam with { Title = alias });
        Assert.All(chart.Descendants(), e => Assert.Contains(e.Name.LocalName, (string[])["title", "desc", "rect", "line", "text"]));
        Assert.DoesNotContain(chart.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal) || a.Name.LocalName == "href");
        Assert.Equal(alias, chart.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void A_bar_that_cannot_be_drawn_is_refused()
    {
        var bar = Voice("a", "A3", "E5");
        Assert.Throws<ArgumentException>(() => bar with { FullLow = Note("B3") });
        Assert.Throws<ArgumentException>(() => bar with { FullHigh = Note("D5") });
        Assert.Throws<ArgumentOutOfRangeException>(() => bar with { Octaves = 11 });
        Assert.Throws<ArgumentOutOfRangeException>(() => bar with { Verdict = ["a", "b", "c", "d"] });
        Assert.Throws<ArgumentException>(() => bar with { Verdict = [new string('x', 41)] });
        Assert.Throws<ArgumentException>(() => bar with { Verdict = ["a\nb"] });
        Assert.Throws<ArgumentNullException>(() => new RangeBar(null!));
        Assert.Throws<ArgumentNullException>(() => Bytes([null!]));
    }

    [Fact]
    public void The_title_can_be_chosen_and_nobody_to_draw_is_refused()
    {
        Assert.Contains("Tuesday", Texts(Chart([Voice("a", "A3", "E5")], options: new RangeChartOptions { Title = "Tuesday" })));
        Assert.Throws<ArgumentException>(() => Bytes([]));
        Assert.Throws<ArgumentException>(() => new RangeChartOptions { Title = "a\nb" });
        Assert.Throws<ArgumentOutOfRangeException>(() => new RangeChartOptions { MostBars = 61 });
    }
}
