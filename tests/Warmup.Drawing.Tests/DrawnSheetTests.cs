using System.Xml.Linq;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>
/// Source: SVG 1.1 for the elements; places from the score's exact onsets; the order of Devanagari vowel signs from The Unicode Standard,
/// chapter 12 (the sign I stands left of its consonant).
/// </summary>
public class DrawnSheetTests
{
    private static readonly Drill Mohanam = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("C4"),
        Title = "Mohanam",
        Delivery = Delivery.LineByLine,
    };

    public static TheoryData<string> Scripts => ["devanagari", "tamil", "telugu", "kannada", "malayalam"];

    private static Syllables Script(string name) => Syllables.TryParse(name, out var syllables, out _) ? syllables! : throw new ArgumentException(name);

    [Fact]
    public void Letters_stand_in_proportion_to_their_onsets_in_the_avartana()
    {
        var score = Mohanam.ToScore();
        var drawn = new Drawn(score);
        var notes = drawn.Of("note");
        var section = score.Sections[0];
        Assert.Equal(section.Notes.Count, notes.Count);

        // Adi has 8 aksharas: the numbers over the columns give the measure, and the middle of each letter's ink must agree with it.
        var numbers = drawn.Of("akshara").Take(8).Select(drawn.Middle).ToList();
        var akshara = (numbers[7] - numbers[0]) / 7;
        Assert.True(akshara > 20);
        for (var n = 0; n < notes.Count; n++)
        {
            Assert.Equal(numbers[0] + (section.Notes[n].Onset.ToDouble() % 8 * akshara), drawn.Middle(notes[n]), 0.3);
        }
    }

    [Fact]
    public void Holds_and_breaths_stand_where_the_score_has_them()
    {
        var score = Mohanam.ToScore();
        var section = score.Sections[0];
        var drawn = new Drawn(score);
        var (s, r) = (drawn.Middle(drawn.Of("note")[0]), drawn.Middle(drawn.Of("note")[1]));
        var akshara = r - s;

        // Line 1: S R held to the breath. A hold for each further akshara, the breath at its onset.
        var breath = section.Breaths[0].Onset.ToDouble();
        var held = section.Notes[1].Length.Ceiling() - 1;
        Assert.Equal(s + (breath * akshara), drawn.Middle(drawn.Of("breath")[0]), 0.1);
        Assert.Equal(section.Breaths.Count, drawn.Of("breath").Count);
        for (var h = 0; h < held; h++)
        {
            Assert.Equal(s + ((2 + h) * akshara), drawn.Middle(drawn.Of("hold")[h]), 0.1);
        }
    }

    [Fact]
    public void Hidden_notes_are_blanks_on_the_sheet_and_stand_on_the_keys_page()
    {
        var score = new Drill { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Written("S G R P / D S' D_ P"), Tonic = Tonic.Parse("G3") }.ToScore();
        var drawn = new Drawn(score, new SheetOptions { HasHiddenNotes = true });
        Assert.Equal([.. Enumerable.Repeat("_", 8), "S", "G", "R", "P", "D", "S", "D", "P"], drawn.Texts("note"));
        Assert.Equal(2, drawn.Pages.Count);
        Assert.Equal(8, drawn.Pages[1].Elements().Count(e => e.Attribute("class")!.Value == "note"));
    }

    [Fact]
    public void Octave_dots_stand_over_upper_and_under_lower_letters()
    {
        var score = (Mohanam with { Pattern = Pattern.Parse("[1 2 3 4 5 6 7 / 1 -1 -2]") }).ToScore();
        var section = score.Sections[0];
        int Dots(int sign) => section.Notes.Sum(n => Math.Max(0, sign * section.PitchOf(n).Tone.Octave));
        var drawn = new Drawn(score);
        Assert.True(Dots(1) > 0 && Dots(-1) > 0);

        // The scale's own two lists each end on the upper S.
        Assert.Equal(Dots(1) + 2, drawn.Of("octave above").Count);
        Assert.Equal(Dots(-1), drawn.Of("octave below").Count);
    }

    [Theory]
    [MemberData(nameof(Scripts))]
    public void Every_script_is_drawn_in_its_own_letters_without_a_missing_glyph(string script)
    {
        var score = (Mohanam with { Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Syllables = Script(script) }).ToScore();
        var drawn = new Drawn(score);
        Assert.Equal(score.Sections[0].Notes.Select(score.Sections[0].SyllableOf), drawn.Texts("note"));
        Assert.All(drawn.Of("note"), n => Assert.NotEmpty(Drawn.Glyphs(n)));
        Assert.All(drawn.Pages.Descendants().Where(e => e.Name.LocalName == "use"), u => Assert.DoesNotMatch("-0$", u.Attributes().First(a => a.Name.LocalName == "href").Value));

        // Seven letters, seven different pictures.
        Assert.Equal(7, drawn.Of("note").Select(n => string.Join(' ', Drawn.Glyphs(n))).Distinct().Count());
    }

    [Fact]
    public void Solfa_is_drawn_as_it_is_sung_and_its_syllables_have_no_variant()
    {
        var score = (Mohanam with { Scale = Scale.Parse("S R1 G2 M2 P D1 N2 S'"), Syllables = Syllables.Solfa }).ToScore();
        var drawn = new Drawn(score);
        Assert.Equal(score.Sections[0].Notes.Select(score.Sections[0].SyllableOf), drawn.Texts("note"));
        Assert.Empty(drawn.Of("variant"));
        Assert.NotEmpty(new Drawn(score, new SheetOptions { Letters = Syllables.SvaraLetters }).Of("variant"));
    }

    [Fact]
    public void The_vowel_sign_i_stands_left_of_its_consonant_in_Devanagari()
    {
        var options = new SheetOptions { Letters = Syllables.Custom("two", ["र", "रि", "रा", "र", "र", "र", "र"]) };
        var notes = new Drawn(Mohanam.ToScore(), options).Of("note");
        var ra = Assert.Single(Drawn.Glyphs(notes[0]));
        var (ri, raa) = (Drawn.Glyphs(notes[1]), Drawn.Glyphs(notes[4]));
        Assert.Equal(2, ri.Length);
        Assert.Equal(ra, ri[1]);
        Assert.Equal(2, raa.Length);
        Assert.Equal(ra, raa[0]);
    }

    [Theory]
    [InlineData(1, 4, "adi", "tamil")]
    [InlineData(2, 4, "adi", "malayalam")]
    [InlineData(3, 5, "misra-jati jhampa", "malayalam")]
    [InlineData(4, 9, "rupaka", "telugu")]
    [InlineData(4, 7, "free", "kannada")]
    public void No_letter_touches_the_next_and_nothing_leaves_the_page(int kalam, int gati, string tala, string script)
    {
        var score = (Mohanam with
        {
            Speeds = [new Speed(kalam, gati)],
            Meter = Meter.Parse(tala),
            Delivery = Delivery.Continuous,
            Syllables = Script(script),
            Pattern = Pattern.Parse("ladder + ladder.reversed"),
        }).ToScore();
        var drawn = new Drawn(score);
        foreach (var page in drawn.Pages)
        {
            foreach (var row in page.Elements().Where(e => e.Attribute("class")!.Value == "note").GroupBy(e => Drawn.Place(e).Y))
            {
                var ink = row.Select(drawn.Ink).OrderBy(i => i.Left).ToList();
                Assert.All(ink.Skip(1).Zip(ink), pair => Assert.True(pair.First.Left > pair.Second.Right, $"{pair.Second} touches {pair.First}"));
                Assert.True(ink[^1].Right < 595.28 - 36);
                Assert.True(row.Key < 842 - 50);
            }
        }

        Assert.Equal(score.NoteCount, drawn.Of("note").Count);
    }

    [Fact]
    public void An_akshara_has_no_line_in_the_first_speed_one_in_the_second_and_two_in_the_third()
    {
        int Lines(int kalam) => new Drawn((Mohanam with { Pattern = Pattern.Parse("[1 2 3 4 5 6]"), Delivery = Delivery.Continuous, Speeds = [new Speed(kalam)] }).ToScore()).Of("speed").Count;

        // Six notes: six, three and one and a half aksharas.
        Assert.Equal([0, 3, 4], ((IEnumerable<int>)[1, 2, 3]).Select(Lines));
    }

    [Fact]
    public void The_sheet_says_what_is_sung_and_how_and_carries_the_cautions()
    {
        var drawn = new Drawn(Mohanam.ToScore());
        Assert.Equal("Mohanam", Assert.Single(drawn.Texts("title")));
        Assert.Equal(["S", "R", "G", "P", "D", "S"], drawn.Texts("scale-up"));
        Assert.Equal(["S", "D", "P", "G", "R", "S"], drawn.Texts("scale-down"));
        var head = string.Join('\n', drawn.Texts("head"));
        Assert.Contains("S = C4 (kattai 1, 261.63 Hz)", head, StringComparison.Ordinal);
        Assert.Contains("Adi (4+2+2), 60 aksharas a minute", head, StringComparison.Ordinal);
        Assert.Contains(TextSheetFormat.NotTheRaga, drawn.Texts("foot"));
        Assert.All(Cautions.All, c => Assert.Contains(c.Brief, drawn.AllText, StringComparison.Ordinal));
        Assert.InRange(drawn.Of("caution").Count, 1, 5);
        Assert.DoesNotContain("memory", drawn.AllText, StringComparison.Ordinal);
    }

    [Fact]
    public void A_warm_up_of_several_drills_has_all_of_them_on_pages_of_their_size()
    {
        var (a, b) = ((Mohanam with { Title = "First" }).ToScore(), (Mohanam with { Title = "Second", Pattern = Pattern.Parse("ladder.repeat(9)") }).ToScore());
        var score = Score.Join("Both", [a, b]);
        var drawn = new Drawn(score);
        Assert.Equal(["First", "Second"], drawn.Texts("section-title"));
        Assert.Equal(score.NoteCount, drawn.Of("note").Count);
        Assert.True(drawn.Pages.Count > 1);
        Assert.Equal($"{drawn.Pages.Count * 297}mm", drawn.Root.Attribute("height")!.Value);
        Assert.Equal("210mm", drawn.Root.Attribute("width")!.Value);
        Assert.Equal(drawn.Pages.Count, drawn.Texts("foot").Count(t => t == TextSheetFormat.NotTheRaga));
        Assert.Single(new Drawn(score, new SheetOptions { Page = 2 }).Pages);
        var refusal = Assert.Throws<ExportException>(() => new Drawn(score, new SheetOptions { Page = 99 }));
        Assert.Contains($"between 1 and {drawn.Pages.Count}", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drill_whose_head_says_nothing_new_has_its_title_and_its_notes()
    {
        // A plan may sing two drills of one kind after each other: scale, tonic, time and the number of lines have been said.
        var (a, b) = ((Mohanam with { Title = "First" }).ToScore(), (Mohanam with { Title = "Second", Pattern = Pattern.Parse("ladder.reversed") }).ToScore());
        var score = Score.Join("Both", [a, b]);
        var drawn = new Drawn(score);
        Assert.Equal(["First", "Second"], drawn.Texts("section-title"));
        Assert.Equal(new Drawn(a).Texts("head"), drawn.Texts("head"));
        Assert.Equal(score.NoteCount, drawn.Of("note").Count);
    }

    [Fact]
    public void A_field_is_left_for_each_answer()
    {
        var score = (Mohanam with { Delivery = Delivery.LineByLine }).ToScore();
        var drawn = new Drawn(score.WithAnswers());
        var answers = drawn.Of("answer");
        Assert.Equal(score.Sections[0].Lines.Count, answers.Count);
        Assert.Empty(drawn.Of("silence"));
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onload=\"x")]
    [InlineData("a & b ]]>")]
    [InlineData("மீரா Zoë सा తెలుగు ಕನ್ನಡ മലയാളം")]
    public void Titles_are_text_and_nothing_else(string title)
    {
        var drawn = new Drawn((Mohanam with { Title = title }).ToScore());
        Assert.All(drawn.Root.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, (string[])["svg", "title", "desc", "defs", "path", "g", "use", "line", "rect", "circle"]));
        Assert.DoesNotContain(drawn.Root.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.All(drawn.Root.Descendants().Attributes().Where(a => a.Name.LocalName == "href"), a => Assert.StartsWith("#g", a.Value, StringComparison.Ordinal));
        Assert.Equal(title, drawn.Root.Element(XName.Get("title", "http://www.w3.org/2000/svg"))!.Value);
        Assert.Equal(title, string.Join(' ', drawn.Texts("title")));
    }

    [Fact]
    public void A_long_title_is_broken_into_lines_and_ends_with_an_ellipsis()
    {
        var drawn = new Drawn((Mohanam with { Title = new string('m', 9_000) }).ToScore());
        Assert.Equal(4, drawn.Of("title").Count);
        Assert.EndsWith("\u2026", drawn.Texts("title")[^1], StringComparison.Ordinal);
        Assert.All(drawn.Of("title"), t => Assert.True(drawn.Ink(t).Right < 560));
    }

    [Fact]
    public void Everything_drawn_lies_on_its_page()
    {
        var a = (Mohanam with { Title = string.Join(' ', Enumerable.Repeat("a long title", 40)), Syllables = Syllables.Malayalam }).ToScore();
        var b = (Mohanam with { Speeds = [Speed.First, new Speed(4, 9)], Pattern = Pattern.Parse("figure(1 -1 5).repeat(5)") }).ToScore().WithAnswers();
        var c = (Mohanam with { Meter = Meter.Free, Speeds = [new Speed(3, 7)], Delivery = Delivery.Continuous, Tuning = Tuning.Pythagorean }).ToScore();
        var score = Score.Join(a.Title, [a, b, c]);
        var band = new PitchBand("Robin", NoteName.FromMidi(57), NoteName.FromMidi(72)) { IsAssumed = true };
        foreach (var (options, width, height) in ((DrawingOptions, double, double)[])[(new SheetOptions(), 595.28, 841.89), (new ContourOptions { Band = band }, 841.89, 595.28)])
        {
            var drawn = new Drawn(score, options);
            foreach (var mark in drawn.Pages.Elements().Where(e => e.Attribute("class")!.Value != "paper"))
            {
                var (left, right, top, bottom) = mark.Name.LocalName switch
                {
                    "g" => (drawn.Ink(mark).Left, drawn.Ink(mark).Right, Drawn.Place(mark).Y - 3, Drawn.Place(mark).Y + 3),
                    "line" => (Drawn.Number(mark, "x1"), Drawn.Number(mark, "x2"), Math.Min(Drawn.Number(mark, "y1"), Drawn.Number(mark, "y2")), Math.Max(Drawn.Number(mark, "y1"), Drawn.Number(mark, "y2"))),
                    "circle" => (Drawn.Number(mark, "cx"), Drawn.Number(mark, "cx"), Drawn.Number(mark, "cy"), Drawn.Number(mark, "cy")),
                    _ => (Drawn.Number(mark, "x"), Drawn.Number(mark, "x") + Drawn.Number(mark, "width"), Drawn.Number(mark, "y"), Drawn.Number(mark, "y") + Drawn.Number(mark, "height")),
                };
                Assert.True(left > 20 && right < width - 20 && left <= right && top > 20 && bottom < height - 8, $"{options.GetType().Name}: {mark}");
            }
        }
    }
}
