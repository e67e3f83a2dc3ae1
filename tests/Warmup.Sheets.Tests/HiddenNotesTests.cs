using System.Text;
using System.Text.RegularExpressions;

namespace Warmup.Sheets.Tests;

/// <summary>Sheets to listen with: blanks in place of notes, and a key after them. Expected lines are written out by hand.</summary>
public partial class HiddenNotesTests
{
    private static readonly Score Lesson = new Drill
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Parse("[S G R , P / D S' D_ P ,]"), Tonic = Tonic.Parse("G3"), Delivery = Delivery.LineByLine, Title = "Hear me",
    }.ToScore();

    private static string Written(IScoreFormat format)
    {
        using var file = new MemoryStream();
        format.Write(Lesson, file);
        return Encoding.UTF8.GetString(file.ToArray());
    }

    [Fact]
    public void The_text_sheet_has_blanks_for_the_notes_and_the_key_on_another_page()
    {
        var pages = Written(new TextSheetFormat(new TextSheetOptions { HasHiddenNotes = true })).Split('\f');
        Assert.Equal(2, pages.Length);
        var (question, key) = (pages[0].Split('\n').Select(l => Spaces().Replace(l.Trim(), " ")).ToList(), pages[1]);
        Assert.Single(question, l => l.StartsWith("1 _ _ _ , | _", StringComparison.Ordinal));
        Assert.Single(question, l => l.StartsWith("2 _ _ _ _ | ,", StringComparison.Ordinal)); // no octave either
        Assert.Contains(question, l => l == "arohana S R2 G3 P D2 S'");
        Assert.Contains("the key is on the last page", pages[0], StringComparison.Ordinal);
        var plain = Written(new TextSheetFormat()).Split('\n');
        Assert.StartsWith("Key to Hear me\n", key, StringComparison.Ordinal);
        Assert.Equal(2, plain.Count(l => (l.StartsWith("1 ", StringComparison.Ordinal) || l.StartsWith("2 ", StringComparison.Ordinal)) && key.Split('\n').Contains(l)));
        Assert.Contains("D_", key, StringComparison.Ordinal);
        Assert.DoesNotContain("Stop at once", key, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_shows_blanks_and_no_picture_until_the_key_is_opened()
    {
        var page = Written(new HtmlFormat(new HtmlOptions { HasHiddenNotes = true }));
        var cells = Cell().Matches(page).Select(m => m.Groups["text"].Value).ToList();
        Assert.Equal(8, cells.Count);
        Assert.All(cells, c => Assert.Equal("_", c));
        Assert.Contains("<svg id=\"picture\" class=\"covered\"", page, StringComparison.Ordinal);
        Assert.Contains("a note, a note, a note", page, StringComparison.Ordinal);
        Assert.DoesNotContain("upper S", page, StringComparison.Ordinal);
        var key = page[page.IndexOf("<details class=\"key\">", StringComparison.Ordinal)..];
        Assert.Contains("<li value=\"1\">S G R , P", key, StringComparison.Ordinal);
        var plain = Written(new HtmlFormat());
        Assert.DoesNotContain("<details class=\"key\">", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("class=\"covered\"", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sheet_keeps_the_scale_and_hides_every_note()
    {
        var sheet = Sheet.Of(Lesson).WithHiddenNotes(TestContext.Current.CancellationToken);
        Assert.Equal("S R2 G3 P D2 S'", string.Join(' ', sheet.Sections[0].Ascent));
        Assert.All(sheet.Sections[0].Blocks.SelectMany(b => b.Lines).SelectMany(l => l.Signs).Where(s => s.Tone is not null), s => Assert.Equal(("_", 0, string.Empty), (s.Tone!.Letter, s.Tone.Octave, s.Tone.Variant)));
        Assert.Equal(Sheet.Of(Lesson).WithHiddenNotes(), sheet);
        Assert.NotEqual(Sheet.Of(Lesson), sheet);
    }

    [Fact]
    public void What_is_sung_is_not_told_where_it_names_the_notes()
    {
        var drill = new Drill { Scale = Lesson.Sections[0].Scale, Pattern = Pattern.Run, Tonic = Tonic.Parse("G3"), Syllables = Syllables.Custom("numbered", d => d.ToString()) };
        Assert.Contains(Sheet.Of(drill.ToScore()).Sections[0].Header, r => r.Text.Contains("G3 P D2", StringComparison.Ordinal));
        Assert.DoesNotContain(Sheet.Of(drill.ToScore()).WithHiddenNotes().Sections[0].Header, r => r.Text.Contains("G3 P D2", StringComparison.Ordinal));
    }

    [GeneratedRegex(" +")]
    private static partial Regex Spaces();

    [GeneratedRegex("<span class=\"n c\\d+\">(?<text>[^<]*)</span>")]
    private static partial Regex Cell();
}
