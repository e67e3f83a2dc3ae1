using System.Text;
using Warmup.Drawing;

namespace Warmup.Drawing.Tests;

/// <summary>Source: the form that is given; A4 is 210 mm by 297 mm (ISO 216); the file signatures of PDF and PNG.</summary>
public class FormTests
{
    private static readonly PrintedForm Form = new("Measuring", ["singer", "date", "the lowest comfortable note", "tone (s)"])
    {
        Parts = [new FormPart("First", ["Listen.", "Write down what is easy, and stop as soon as it is not easy any more, even if the singer would like to go on and on and on, for as long as anybody listens."]), new FormPart("Then", ["Rest."])],
        Rows = [["Wren", "2026-12-01"], ["Robin"], []],
    };

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        Assert.True(stream.CanWrite, "the stream is not closed");
        return stream.ToArray();
    }

    private static Drawn Draw(PrintedForm form) => new(Bytes(s => form.WriteSvg(s)));

    [Fact]
    public void The_form_holds_its_steps_its_rows_and_all_cautions_with_their_sources()
    {
        var drawn = Draw(Form);
        Assert.Equal(["First", "Then"], drawn.Texts("part"));
        Assert.Equal(["1.", "2.", "1."], drawn.Texts("number"));
        Assert.Equal(string.Join(' ', Form.Parts.SelectMany(p => p.Steps)), string.Join(' ', drawn.Texts("step")));
        Assert.Equal(["Wren", "2026-12-01", "Robin"], drawn.Texts("cell"));
        Assert.Equal(string.Join(' ', Cautions.All.Select(c => $"{c.Text} ({c.Source})")), string.Join(' ', drawn.Texts("caution")));
        Assert.Equal("A form to fill in.", drawn.Root.Elements().Single(e => e.Name.LocalName == "desc").Value[..18]);
    }

    [Fact]
    public void Each_row_has_a_line_and_nothing_runs_over_the_edge_of_the_paper()
    {
        foreach (var form in (PrintedForm[])[Form, Form with { Rows = Enumerable.Repeat<ValueList<string>>(["a singer with a name that is as long as a name may well be"], 100).ToValueList() }])
        {
            var drawn = Draw(form);
            Assert.Equal(form.Rows.Count + drawn.Of("heading").Count(h => Drawn.Title(h) == "date"), drawn.Of("row").Count);
            foreach (var page in drawn.Pages)
            {
                foreach (var text in page.Elements().Where(e => e.Elements().Any(u => u.Name.LocalName == "use")))
                {
                    var (left, right) = drawn.Ink(text);
                    Assert.InRange(left, 40, 210 / 25.4 * 72);
                    Assert.InRange(right, 40, (210 / 25.4 * 72) - 40);
                    Assert.InRange(Drawn.Place(text).Y, 40, (297 / 25.4 * 72) - 12);
                }
            }
        }
    }

    [Fact]
    public void Rows_that_do_not_fit_go_on_under_the_headings_of_the_next_page()
    {
        var drawn = Draw(Form with { Rows = Enumerable.Repeat(default(ValueList<string>), 60).ToValueList() });
        Assert.True(drawn.Pages.Count > 1);
        Assert.Equal(drawn.Pages.Count, drawn.Texts("heading").Count(t => t == "date"));
    }

    [Fact]
    public void Equal_forms_give_equal_bytes_of_the_kind_that_was_asked_for()
    {
        Assert.Equal(Bytes(s => Form.WritePdf(s)), Bytes(s => (Form with { }).WritePdf(s)));
        Assert.StartsWith("%PDF", Encoding.ASCII.GetString(Bytes(s => Form.WritePdf(s)), 0, 4), StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], Bytes(s => Form.WritePng(s))[..4]);
    }

    [Fact]
    public void The_text_has_a_line_to_write_on_for_each_empty_cell()
    {
        var text = Encoding.UTF8.GetString(Bytes(Form.WriteText));
        Assert.Contains("\nWren      2026-12-01  ___________________________  ________\n", text, StringComparison.Ordinal);
        Assert.Contains("\n2. Write down what is easy", text, StringComparison.Ordinal);
        Assert.All(Cautions.All, c => Assert.Contains(c.Source, text, StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_too_much_for_a_form_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PrintedForm("a", []));
        Assert.Throws<ArgumentOutOfRangeException>(() => Form with { Rows = [["1", "2", "3", "4", "5"]] });
        Assert.Throws<ArgumentException>(() => Form with { Rows = [["a\tb"]] });
        Assert.Throws<ArgumentException>(() => new FormPart("a", [new string('x', 601)]));
    }
}
