using System.Text;
using System.Text.RegularExpressions;
using Warmup.Drawing;
using Warmup.Sheets;

namespace Warmup.Drawing.Tests;

/// <summary>Source: the score's own lines, breaths and rounds; A4 is 210 mm by 297 mm (ISO 216).</summary>
public partial class OnePageTests
{
    private static readonly Drill Ladder = new()
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Ladder,
        Tonic = Tonic.Parse("C4"),
        Title = "Ladder",
        Delivery = Delivery.LineByLine,
    };

    private static Drawn Draw(Score score) => new(score, new OnePageOptions());

    private static Score Warmup(params Drill[] drills) => Score.Join("Warm-up", [.. drills.Select(d => d.ToScore())]);

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(8)]
    public void A_warm_up_stands_on_one_page_with_every_note_of_one_round(int drills)
    {
        var score = Warmup([.. Enumerable.Range(0, drills).Select(d => Ladder with { Title = $"Ladder {d}", Pattern = d % 2 == 0 ? Pattern.Ladder : Pattern.Ladder.Reversed(), Repetitions = 1 + d })]);
        var drawn = Draw(score);
        Assert.Single(drawn.Pages);
        Assert.Equal(score.Sections.Select(s => s.Title), drawn.Texts("section-title"));
        Assert.Equal(score.Sections.Sum(s => s.Lines.Where(l => l.Round == 0).Sum(l => l.NoteCount)), drawn.Of("note").Count);
        Assert.All(Cautions.All, c => Assert.Contains(c.Brief, drawn.AllText, StringComparison.Ordinal));
        foreach (var text in drawn.Pages[0].Elements().Where(e => e.Elements().Any(u => u.Name.LocalName == "use")))
        {
            var (left, right) = drawn.Ink(text);
            Assert.InRange(left, 40, 210 / 25.4 * 72);
            Assert.InRange(right, 40, (210 / 25.4 * 72) - 36);
            Assert.InRange(Drawn.Place(text).Y, 40, (297 / 25.4 * 72) - 12);
        }
    }

    [Fact]
    public void Rounds_that_are_the_same_stand_once_and_say_how_often()
    {
        Assert.Equal(["sing 3 times"], Draw(Warmup(Ladder with { Repetitions = 3 })).Texts("run"));
        Assert.Empty(Draw(Warmup(Ladder)).Texts("run"));
    }

    [Fact]
    public void Rounds_of_different_speed_or_tempo_stand_each_for_itself()
    {
        var speeds = Warmup(Ladder with { Speeds = [Speed.First, Speed.Second] });
        Assert.Equal(speeds.Sections[0].Notes.Count, Draw(speeds).Of("note").Count);
        Assert.Equal(2, Draw(speeds).Of("run").Count);
        var ramp = Warmup(Ladder with { Tempo = new TempoRamp(60, 10, 80), Repetitions = 3 });
        Assert.Equal(ramp.Sections[0].Notes.Count, Draw(ramp).Of("note").Count);
        Assert.Equal(["60", "70", "80"], Draw(ramp).Texts("run").Select(t => Aksharas().Match(t).Groups["tempo"].Value));
    }

    [Fact]
    public void Lines_that_are_the_same_stand_once_with_the_numbers_of_all()
    {
        var drawn = Draw(Warmup(Ladder with { Pattern = Pattern.Parse("[1 2 3 / 1 2 3 / 1 2 3 / 3 2 1]") }));
        Assert.Equal(["1-3", "4"], drawn.Texts("line"));
        Assert.Equal(6, drawn.Of("note").Count);
    }

    [Fact]
    public void What_all_drills_share_stands_once_above_and_the_rest_with_each()
    {
        var drawn = Draw(Warmup(Ladder, Ladder with { Tonic = Tonic.Parse("C4"), Tempo = 80 }));
        Assert.Equal(1, drawn.Texts("label").Count(t => t == "Tonic"));
        Assert.Equal(2, drawn.Texts("label").Count(t => t == "Time"));
        Assert.Equal(1, drawn.Texts("label").Count(t => t == "Scale"));
        Assert.Equal(2, Draw(Warmup(Ladder, Ladder with { Scale = Scale.Parse("S R1 G3 M1 P D1 N3 S'") })).Texts("label").Count(t => t == "Scale"));
    }

    [Fact]
    public void What_is_too_long_for_a_page_goes_on_over_others_and_loses_nothing()
    {
        var score = Warmup([.. Enumerable.Range(0, 30).Select(d => Ladder with { Title = $"Ladder {d}" })]);
        var drawn = Draw(score);
        Assert.True(drawn.Pages.Count > 1);
        Assert.Equal(score.Sections.Sum(s => s.Notes.Count), drawn.Of("note").Count);
    }

    [Fact]
    public void Several_scores_make_one_document_with_a_page_for_each()
    {
        var format = new PdfFormat(new OnePageOptions());
        var scores = Enumerable.Range(1, 5).Select(d => Warmup(Ladder with { Title = $"Day {d}" })).ToValueList();
        using var stream = new MemoryStream();
        format.WriteAll("Five days", scores, stream);
        Assert.True(stream.CanWrite, "the stream is not closed");
        Assert.Equal(5, PdfPage().Count(Encoding.Latin1.GetString(stream.ToArray())));
        Assert.Throws<ArgumentOutOfRangeException>(() => format.WriteAll("none", [], Stream.Null));
    }

    [GeneratedRegex("(?<tempo>[0-9]+) aksharas")]
    private static partial Regex Aksharas();

    [GeneratedRegex("/Type\\s*/Page\\b(?!s)")]
    private static partial Regex PdfPage();

    [Theory]
    [InlineData(9)]
    [InlineData(12)]
    [InlineData(15)]
    [InlineData(22)]
    public void No_heading_stands_at_the_foot_of_a_column_without_two_rows(int drills)
    {
        // Uneven lines, so that headings fall anywhere in a column.
        var score = Warmup([.. Enumerable.Range(0, drills).Select(d => Ladder with
        {
            Title = $"Ladder {d}", Pattern = Pattern.Parse(d % 3 == 0 ? "run" : d % 3 == 1 ? "ladder.take(4)" : "figure(1 2 3)"), Speeds = d % 2 == 0 ? [Speed.First] : [Speed.First, Speed.Second], Delivery = Delivery.Continuous,
        })]);
        var drawn = Draw(score);
        foreach (var page in drawn.Pages)
        {
            var kinds = page.Elements().Select(e => (Kind: e.Attribute("class")!.Value, Element: e)).Where(e => e.Kind is "section-title" or "run" or "note").ToList();
            var places = kinds.ConvertAll(e => (e.Kind, Drawn.Place(e.Element).X, Drawn.Place(e.Element).Y));
            for (var i = 0; i < places.Count; i++)
            {
                if (places[i].Kind == "note")
                {
                    continue;
                }

                // What follows a heading on the page is a note below it in the same column.
                var next = places.Skip(i + 1).First(p => p.Kind == "note");
                Assert.True(next.Y > places[i].Y && Math.Abs(next.X - places[i].X) < 260, $"{places[i]} is parted from {next}");
            }
        }
    }

    [Fact]
    public void The_cautions_take_five_rows_over_the_width_of_the_page()
    {
        var cautions = Draw(Warmup(Ladder, Ladder, Ladder, Ladder, Ladder, Ladder, Ladder)).Of("caution");
        Assert.InRange(cautions.Count, 1, 5);
        Assert.Single(cautions.Select(c => Drawn.Place(c).X).Distinct());
    }
}
