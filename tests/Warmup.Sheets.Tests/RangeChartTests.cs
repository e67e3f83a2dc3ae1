using System.Globalization;
using System.Text;
using System.Xml.Linq;

namespace Warmup.Sheets.Tests;

/// <summary>Source: SVG 1.1 for the elements; the places of bars against each other from the keyboard's semitones; the words of the rules.</summary>
public class RangeChartTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4"), Title = "Mohanam" };

    private static NoteName Note(string text) => NoteName.Parse(text);

    private static Singer Voice(string alias, string low, string high) => new(alias, Note(low), Note(high), 20);

    private static byte[] Bytes(ValueList<Singer> singers, Drill? drill = null, RangeChartOptions? options = null)
    {
        using var stream = new MemoryStream();
        RangeChart.Write((drill ?? Mohanam).ToScore(), singers, stream, options);
        Assert.True(stream.CanWrite, "the stream is not closed");
        return stream.ToArray();
    }

    private static XElement Chart(ValueList<Singer> singers, Drill? drill = null, RangeChartOptions? options = null) =>
        XDocument.Parse(Encoding.UTF8.GetString(Bytes(singers, drill, options))).Root!;

    private static string[] Texts(XElement chart) => [.. chart.Elements(Svg + "text").Select(t => t.Value)];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>The outlines of the singers' ranges: the only unfilled rectangles with a border above the legend.</summary>
    private static XElement[] Bars(XElement chart) =>
        [.. chart.Elements(Svg + "rect").Where(r => r.Attribute("fill")!.Value == "none" && r.Attribute("stroke") is not null && Number(r, "y") < 700)];

    [Fact]
    public void Bars_are_as_high_as_their_ranges()
    {
        var bars = Bars(Chart([Voice("a", "G3", "F#5"), Voice("b", "C3", "B3")]));

        // 24 and 12 notes; the octaves apart as B3 and G3 ask: b ends on the row above its B3, five rows above a's lower end.
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
    public void Who_fits_in_which_octave_and_who_does_not_is_written_below()
    {
        var texts = Texts(Chart([Voice("Wren", "A3", "E5"), Voice("Badger", "A2", "E4"), Voice("Robin", "C4", "A4")]));
        Assert.Contains("octave lower", texts);
        Assert.Contains("3 semitones", texts);
        Assert.Contains("too high", texts);
        Assert.Equal(2, texts.Count(t => t == "fits"));
        Assert.Contains("A3 to E5", texts);
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
        var assumed = Singer.FromVoice("Robin", VoiceTypes.Find("child 8-9")!, 12);
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
    public void More_singers_than_are_drawn_are_counted()
    {
        var many = Enumerable.Range(0, 10_000).Select(i => Voice($"voice {i}", "A3", "E5")).ToValueList();
        var chart = Chart(many);
        Assert.Equal(32, Bars(chart).Length);
        Assert.Contains(Texts(chart), t => t.Contains("9968 more are not drawn", StringComparison.Ordinal));
        Assert.Equal(60, Bars(Chart(many, options: new RangeChartOptions { MostSingers = 60 })).Length);
    }

    [Fact]
    public void Equal_input_gives_equal_bytes_without_a_mark_at_the_beginning()
    {
        ValueList<Singer> singers = [Voice("a", "A3", "E5")];
        Assert.Equal(Bytes(singers), Bytes(singers));
        Assert.StartsWith("<?xml", Encoding.UTF8.GetString(Bytes(singers)), StringComparison.Ordinal);
        Assert.DoesNotContain((byte)'\r', Bytes(singers));
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
    public void The_title_can_be_chosen_and_nobody_to_draw_is_refused()
    {
        Assert.Contains("Tuesday", Texts(Chart([Voice("a", "A3", "E5")], options: new RangeChartOptions { Title = "Tuesday" })));
        Assert.Throws<ArgumentException>(() => Bytes([]));
        Assert.Throws<ArgumentException>(() => new RangeChartOptions { Title = "a\nb" });
        Assert.Throws<ArgumentOutOfRangeException>(() => new RangeChartOptions { MostSingers = 61 });
    }
}
