using System.Text;

namespace Warmup.Sheets.Tests;

/// <summary>The text sheet's lines, written out by hand from the rules of delivery and the signs of its legend (common practice).</summary>
public class TextSheetTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Fact]
    public void Line_by_line_each_line_fills_its_avartana_with_a_hold_and_a_breath()
    {
        // Adi at 60: the last note is held to 7, the breath lasts from 7 to 8.
        var lines = Lines(Mohanam with { Delivery = Delivery.LineByLine });
        Assert.Equal("1 S R , , | , , | , v ||", lines[0]);
        Assert.Equal("3 S R G P | , , | , v ||", lines[2]);
        Assert.Equal("5 S R G P | D S' | , v ||", lines[4]);
    }

    [Fact]
    public void Continuous_lines_run_over_the_bar_marks()
    {
        var lines = Lines(Mohanam);

        // Lines of 2, 3, 4, 5 and 6 notes: the third begins with akshara 6 and ends behind the first of the next avartana, and so on. Each avartana is a
        // row and closed; the last ends with akshara 4, and the rest of it is silent.
        Assert.Equal("1 S R S R | G S | R G ||", lines[0]);
        Assert.Contains("P S R G | P D | S R ||", Text(Mohanam).Split('\n').Select(Single));
        Assert.Contains("G P D S' | | ||", Text(Mohanam).Split('\n').Select(Single));

        // The numbers of the lines that begin inside the row stand under it.
        Assert.Contains("2 3", Text(Mohanam).Split('\n').Select(Single));
    }

    [Fact]
    public void Octave_marks_stand_behind_the_letter()
    {
        var lines = Lines(Mohanam with { Pattern = Pattern.Figure(-1, 0, 5) });
        Assert.Equal("1 D_ S S' | | ||", lines[0]);
    }

    [Fact]
    public void A_sheet_is_in_the_letters_that_are_sung_where_they_tell_the_notes_apart()
    {
        var figure = Mohanam with { Pattern = Pattern.Figure(-1, 0, 5) };
        Assert.Equal("1 la_ do do' | | ||", Lines(figure with { Syllables = Syllables.Solfa })[0]);
        Assert.Equal("1 6_ 1 1' | | ||", Text(figure with { Syllables = Syllables.Numbers }).Split('\n').Select(Single).First(l => l.StartsWith("1 6", StringComparison.Ordinal)));
        Assert.Contains(" \u0BA4_ \u0BB8 \u0BB8'", Single(Text(figure with { Syllables = Syllables.Tamil })), StringComparison.Ordinal);
        Assert.Contains("up do re mi sol la do'", Single(Text(figure with { Syllables = Syllables.Solfa })), StringComparison.Ordinal);

        // The scale is in the same letters; a svara of which there is one only has no number.
        Assert.Contains("arohana \u0BB8 \u0BB0\u0BBF2 \u0B953 \u0BAA \u0BA42 \u0BB8'", Single(Text(figure with { Syllables = Syllables.Tamil })), StringComparison.Ordinal);

        // A vowel is the same on every note, so the svaras are written.
        Assert.Equal("1 D_ S S' | | ||", Lines(figure with { Syllables = Syllables.Vowel() })[0]);
    }

    [Fact]
    public void The_head_says_what_is_sung_where_the_letters_do_not()
    {
        // One word a line in turn, on three lines; one vowel throughout; then words note by note, from the first again with each line.
        var lines = Pattern.Ladder.Take(3);
        Assert.Contains("Sung mi / me / mi", Heads(Mohanam with { Pattern = lines.SungByLine("mi", "me") }));
        Assert.Contains("Sung oo", Heads(Mohanam with { Pattern = lines, Syllables = Syllables.Vowel("oo") }));
        Assert.Contains("Sung i e / i e i / i e i e", Heads(Mohanam with { Pattern = lines.Sung("i", "e") }));

        // Names of the tones stand in the sheet's lines or are read off them.
        Assert.All(
            [Syllables.SvaraLetters, Syllables.SungSvaras, Syllables.SvaraNames, Syllables.Solfa, Syllables.Numbers],
            names => Assert.DoesNotContain(Heads(Mohanam with { Syllables = names }), row => row.StartsWith("Sung", StringComparison.Ordinal)));

        static List<string> Heads(Drill drill) => Text(drill).Split('\n').Select(Single).ToList();
    }

    [Fact]
    public void The_caller_can_ask_for_other_letters()
    {
        using var stream = new MemoryStream();
        new TextSheetFormat(new TextSheetOptions { Letters = Syllables.Solfa }).Write(Mohanam.ToScore(), stream);
        Assert.Contains("do re mi sol la do'", Single(Encoding.UTF8.GetString(stream.ToArray())), StringComparison.Ordinal);
    }

    [Fact]
    public void The_head_names_scale_tonic_tuning_and_time()
    {
        var text = Text(Mohanam with { Tonic = Tonic.FromHz(200), Tempo = new Rational(145, 2) });
        Assert.Contains("S R2 G3 P D2 S'", text, StringComparison.Ordinal);
        Assert.Contains("kattai 5", text, StringComparison.Ordinal);
        Assert.Contains("200.00 Hz", text, StringComparison.Ordinal);
        Assert.Contains("72.5 aksharas a minute", text, StringComparison.Ordinal);
        Assert.Contains("Adi (4+2+2)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_cautions_and_the_word_about_the_raga_stand_on_every_sheet()
    {
        var text = Text(Mohanam);
        Assert.Contains(TextSheetFormat.NotTheRaga, text, StringComparison.Ordinal);
        Assert.All(Cautions.All, caution => Assert.Contains(caution.Brief, text.ReplaceLineEndings(" "), StringComparison.Ordinal));

        // Paper has them in five rows at most and without working notes, also where slides, swells and short notes bring cautions of their own.
        foreach (var drill in (Drill[])[Mohanam, Mohanam with { Pattern = Pattern.Parse("ladder.glide + ladder.swell + ladder.staccato"), Syllables = Syllables.LipTrill }])
        {
            var rows = Text(drill).TrimEnd().Split('\n');
            Assert.InRange(rows.Length - Array.IndexOf(rows, TextSheetFormat.NotTheRaga) - 1, 1, 5);
            Assert.DoesNotContain("memory", Text(drill), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Equal_scores_give_equal_bytes_without_a_byte_order_mark_and_with_line_feeds_only()
    {
        var bytes = Bytes(Mohanam);
        Assert.Equal(bytes, Bytes(Mohanam with { Scale = Scale.Parse("S R2 G3 P D2 S'") }));
        Assert.NotEqual(0xEF, bytes[0]);
        Assert.DoesNotContain((byte)'\r', bytes);
    }

    /// <summary>The numbered lines with single spaces.</summary>
    private static string[] Lines(Drill drill) => [.. Text(drill).Split('\n')
        .Where(l => l.TrimStart().Split(' ', 2) is [var number, var rest] && int.TryParse(number, out _) && char.IsAsciiLetter(rest.TrimStart()[0]))
        .Select(l => string.Join(' ', l.Split(' ', StringSplitOptions.RemoveEmptyEntries)))];

    private static string Single(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static string Text(Drill drill) => Encoding.UTF8.GetString(Bytes(drill));

    private static byte[] Bytes(Drill drill)
    {
        using var stream = new MemoryStream();
        new TextSheetFormat().Write(drill.ToScore(), stream);
        return stream.ToArray();
    }
}
