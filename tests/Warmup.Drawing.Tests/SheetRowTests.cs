using System.Xml.Linq;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>
/// The rows of drawn sheets, measured: letters against beats, bars against letters, lines over aksharas, sizes, pages. The bars are those of the talas'
/// angas (35 suladi talas, common practice), places in proportion to the score's exact onsets.
/// </summary>
public class SheetRowTests
{
    private static readonly Drill Drill = new() { Scale = Catalogue.Default.Read("15"), Pattern = Repertoire.Find("sarali-1")!.Pattern, Tonic = Tonic.Parse("G3"), Title = "Rows" };

    public static TheoryData<string, int, int, string> Drills => new()
    {
        { "sarali-1", 1, 4, "svara" }, { "sarali-1", 2, 4, "svara" }, { "sarali-1", 3, 4, "svara" }, { "sarali-3", 3, 3, "svara" }, { "sarali-3", 3, 5, "svara" },
        { "alankara-1", 2, 4, "svara" }, { "alankara-2", 3, 4, "svara" }, { "alankara-3", 3, 4, "svara" }, { "alankara-4", 2, 4, "svara" }, { "alankara-5", 3, 4, "svara" },
        { "alankara-6", 2, 4, "svara" }, { "alankara-7", 3, 4, "svara" }, { "sarali-3", 3, 4, "tamil" }, { "sarali-3", 3, 4, "telugu" }, { "sarali-3", 3, 4, "malayalam" },
        { "choir-1", 2, 4, "solfa" },
    };

    [Theory]
    [MemberData(nameof(Drills))]
    public void Bars_have_room_on_both_sides_and_as_much_on_each(string pattern, int kalam, int gati, string syllables)
    {
        var drawn = new Drawn(Made(pattern, [new Speed(kalam, gati)], syllables));
        var bars = 0;
        foreach (var (page, y) in Rows(drawn))
        {
            var letters = Of(page, "note", "hold", "silence").Where(n => Drawn.Place(n).Y == y).Select(n => (Ink: drawn.Ink(n), Middle: drawn.Middle(n))).OrderBy(n => n.Middle).ToList();
            foreach (var bar in Of(page, "bar").Where(b => Drawn.Number(b, "y1") < y && Drawn.Number(b, "y2") > y))
            {
                bars++;
                var x = Drawn.Number(bar, "x1");
                Assert.All(letters, l => Assert.True(l.Ink.Right < x - 1 || l.Ink.Left > x + 1, $"a letter at {l.Ink} touches the bar at {x}"));

                // The middles of the letters on either side are equally far from a single bar; a double one has its strokes at 1 point from its place.
                if (letters.LastOrDefault(l => l.Middle < x) is { Middle: > 0 } before && letters.FirstOrDefault(l => l.Middle > x) is { Middle: > 0 } after)
                {
                    Assert.Equal(x - before.Middle, after.Middle - x, 2.1);
                }
            }
        }

        Assert.True(bars > 0);
    }

    [Theory]
    [MemberData(nameof(Drills))]
    public void The_line_over_an_akshara_is_one_from_its_first_letter_to_its_last(string pattern, int kalam, int gati, string syllables)
    {
        var score = Made(pattern, [new Speed(kalam, gati)], syllables);
        var sung = score.Sections[0].Notes.SelectMany(n => Enumerable.Range((int)n.Onset.Floor(), (int)(n.End.Ceiling() - n.Onset.Floor()))).Distinct().Count();
        var lines = new Drawn(score).Of("speed");

        // One line for each akshara in which a unit of a note begins, and one more for each further speed.
        var unit = score.Sections[0].Lines[0].Speed.Unit;
        var begun = score.Sections[0].Notes.SelectMany(n => Enumerable.Range(0, (int)(n.Length / unit).Ceiling()).Select(u => (n.Onset + (unit * u)).Floor())).Distinct().Count();
        Assert.True(begun <= sung);
        Assert.Equal(begun * (kalam - 1), lines.Count);
    }

    [Theory]
    [InlineData("tamil")]
    [InlineData("telugu")]
    [InlineData("malayalam")]
    public void All_rows_have_letters_of_one_size(string syllables)
    {
        var drawn = new Drawn(Made("sarali-3", [Speed.First, Speed.Second, Speed.Third], syllables));
        Assert.Single(drawn.Of("note").Select(Size).Distinct());
    }

    [Theory]
    [InlineData("sarali-1", "svara")]
    [InlineData("sarali-3", "malayalam")]
    [InlineData("choir-1", "solfa")]
    [InlineData("ladder + ladder.reversed", "svara")]
    public void A_drill_of_ten_lines_stands_on_one_page_with_its_cautions(string pattern, string syllables)
    {
        var speeds = pattern.StartsWith("sarali", StringComparison.Ordinal) ? (ValueList<Speed>)[Speed.First, Speed.Second, Speed.Third] : default;
        Assert.Single(new Drawn(Made(pattern, speeds, syllables)).Pages);
    }

    [Theory]
    [InlineData("alankara-1")]
    [InlineData("alankara-6")]
    [InlineData("ladder.repeat(5)")]
    [InlineData("ladder.repeat(9)")]
    public void No_page_has_a_row_alone_or_cautions_alone(string pattern)
    {
        var drawn = new Drawn(Made(pattern, [Speed.First, Speed.Second], "svara"));
        Assert.All(drawn.Pages, page => Assert.True(Rows(drawn).Count(r => r.Page == page) >= 2));
    }

    [Fact]
    public void Rows_of_a_long_avartana_begin_with_its_angas_and_say_so()
    {
        // Chatusra-jati dhruva has angas of 4, 2, 4 and 4 aksharas: rows can begin with 1, 5, 7 and 11.
        var drawn = new Drawn(Made("alankara-1", [Speed.Third], "svara"));
        Assert.All(drawn.Texts("row"), row => Assert.Contains(row, (string[])["from 5", "from 7", "from 11"]));
        Assert.NotEmpty(drawn.Texts("row"));
        Assert.Contains("\"from 5\" before a row: it begins with akshara 5 of the avartana", drawn.AllText, StringComparison.Ordinal);
        Assert.DoesNotContain("\"from 5\"", new Drawn(Made("alankara-1", [Speed.First], "svara")).AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_of_three_bars_has_a_row_and_not_a_row_a_bar()
    {
        var drawn = new Drawn(Made("choir-1", default, "solfa"));
        Assert.Equal(5, Rows(drawn).Count);
        Assert.Equal(["1", "2", "3", "4", "1", "2", "3", "4", "1", "2", "3", "4"], drawn.Texts("akshara"));
    }

    [Fact]
    public void The_legend_has_the_signs_that_are_used_and_no_others()
    {
        var plain = Legend(Made("sarali-1", [Speed.First], "svara"));
        Assert.All((string[])["hold", "breathe", "silence", "speed", "under it the lower", "variant", "answers"], word => Assert.DoesNotContain(word, plain, StringComparison.Ordinal));
        Assert.Contains("a thin line ends an anga", plain, StringComparison.Ordinal);
        var full = Legend((Drill with { Pattern = Pattern.Parse("figure(1 -1 5)"), Delivery = Delivery.LineByLine, Speeds = [Speed.Second] }).ToScore().WithAnswers());
        Assert.All((string[])["hold", "breathe", "one line for the second speed", "under it the lower", "answers"], word => Assert.Contains(word, full, StringComparison.Ordinal));
        Assert.DoesNotContain("third speed", full, StringComparison.Ordinal);
    }

    [Fact]
    public void In_Tamil_carets_stand_for_the_octaves_since_a_dot_is_the_pulli()
    {
        // The pulli: The Unicode Standard, chapter 12, Tamil (U+0BCD, a dot above).
        var tamil = new Drawn(Made("sarali-1", default, "tamil"));
        Assert.All(tamil.Of("octave above"), e => Assert.Equal("line", e.Name.LocalName));
        Assert.Contains("^ (not the pulli, which is a dot) over a letter is the upper octave", tamil.AllText, StringComparison.Ordinal);
        Assert.All(new Drawn(Made("sarali-1", default, "telugu")).Of("octave above"), e => Assert.Equal("circle", e.Name.LocalName));
    }

    [Theory]
    [InlineData("Bhairavi", "D", "1 2")]
    [InlineData("Kapi", "N", "2 3")]
    public void A_letter_at_two_pitches_has_its_variant_beside_it(string scale, string letter, string variants)
    {
        var drawn = new Drawn((Drill with { Scale = Catalogue.Default.Read(scale), Pattern = Pattern.Parse("ladder.there-and-back") }).ToScore());
        var note = drawn.Of("note")[0];
        var numbers = drawn.Of("variant").Where(v => Drawn.Place(v).Y > Drawn.Place(note).Y + 1).ToList();
        Assert.Equal(variants.Split(' '), numbers.Select(Drawn.Title).Distinct().Order());

        // Each stands right behind that letter, and only behind it.
        Assert.All(numbers, v => Assert.Single(drawn.Of("note"), n => Drawn.Title(n) == letter && drawn.Ink(v).Left - drawn.Ink(n).Right is > 0 and < 3 && Math.Abs(Drawn.Place(v).Y - Drawn.Place(n).Y) < 4));
        Assert.Equal(drawn.Texts("note").Count(t => t == letter), numbers.Count);
    }

    private static Score Made(string pattern, ValueList<Speed> speeds, string syllables)
    {
        // An exercise brings its own tala and speed.
        var drill = Drill with { Syllables = Syllables.Parse(syllables), Pattern = Repertoire.Find(pattern)?.Pattern ?? Pattern.Parse(pattern) };
        if (Repertoire.Find(pattern) is { } exercise)
        {
            drill = drill with { Meter = exercise.Meter, Speeds = [exercise.Speed] };
        }

        return (speeds.IsEmpty ? drill : drill with { Speeds = speeds }).ToScore();
    }

    private static string Legend(Score score) => string.Join(' ', new Drawn(score).Texts("legend"));

    private static string Size(XElement text) => text.Elements().First(e => e.Name.LocalName == "use").Attribute("transform")!.Value.Split("scale")[1];

    private static List<XElement> Of(XElement page, params string[] kinds) => [.. page.Elements().Where(e => kinds.Contains(e.Attribute("class")!.Value))];

    /// <summary>The rows of letters: their pages and baselines.</summary>
    private static List<(XElement Page, double Y)> Rows(Drawn drawn) =>
        [.. drawn.Pages.SelectMany(page => Of(page, "note", "hold").Select(n => (page, Drawn.Place(n).Y)).Distinct())];
}
