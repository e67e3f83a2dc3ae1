using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Warmup.Sheets.Tests;

/// <summary>
/// What stands in a practice page. Sources: Content Security Policy Level 3 for the policy and its hashes, the rules of delivery and the
/// signs of the legend (common practice) for the rows, which are written out by hand.
/// </summary>
public partial class HtmlPageTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    [Fact]
    public void The_policy_allows_nothing_but_the_pages_own_script_and_style()
    {
        var page = Text(Mohanam);
        var policy = Policy().Match(page).Groups[1].Value;
        var expected = $"default-src 'none'; script-src {Hash(page, "<script>", "</script>")}; style-src {Hash(page, "<style>", "</style>")}; media-src blob:; base-uri 'none'; form-action 'none'";
        Assert.Equal(expected, policy);
        Assert.True(page.IndexOf("Content-Security-Policy", StringComparison.Ordinal) < page.IndexOf("<style>", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_in_it_comes_from_elsewhere()
    {
        var page = Text(Mohanam);
        Assert.DoesNotContain("http:", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("https:", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch(@"\s(src|href|style|on[a-z]+)=", page[page.IndexOf("<body>", StringComparison.Ordinal)..page.IndexOf("<script", StringComparison.Ordinal)]);
    }

    [Fact]
    public void A_title_that_is_markup_stays_text()
    {
        const string title = "</title></script><script>alert(1)</script><!--<b a=\"x\" b='y'>&amp;";
        var page = Text(Mohanam with { Title = title });
        Assert.Equal(2, Regex.Count(page, "<script", RegexOptions.IgnoreCase));
        Assert.Equal(2, Regex.Count(page, "</script", RegexOptions.IgnoreCase));
        Assert.DoesNotContain("<!--", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<b a=", page, StringComparison.Ordinal);
        Assert.Equal(title, System.Net.WebUtility.HtmlDecode(Between(page, "<h1>", "</h1>")));
        Assert.Equal(title, Json(page).GetProperty("title").GetString());
    }

    [Fact]
    public void Letters_of_other_scripts_stand_as_they_are() =>
        Assert.Contains("<h1>\u092E\u094B\u0939\u0928\u092E\u094D \u0BAE\u0BCB\u0B95\u0BA9\u0BAE\u0BCD</h1>", Text(Mohanam with { Title = "\u092E\u094B\u0939\u0928\u092E\u094D \u0BAE\u0BCB\u0B95\u0BA9\u0BAE\u0BCD" }), StringComparison.Ordinal);

    [Fact]
    public void Line_by_line_each_line_fills_its_avartana_with_a_hold_and_a_breath()
    {
        // Adi at 60: the last note is held to 7, the breath lasts from 7 to 8.
        var rows = Rows(Text(Mohanam with { Delivery = Delivery.LineByLine }));
        Assert.Equal("S R , , | , , | , v ||", rows[0]);
        Assert.Equal("S R G P | D S\u0307 | , v ||", rows[4]);
    }

    [Fact]
    public void Lines_that_run_on_share_the_row_of_their_avartana_each_with_its_number()
    {
        // Two, three, four, five and six notes one after the other in avartanas of eight.
        var page = Text(Mohanam);
        Assert.Equal(["S R S R | G S | R G ||", "P S R G | P D | S R ||", "G P D S\u0307 | . . | . . ||"], Rows(page));
        Assert.Equal(["1 2 3", "4 5", string.Empty], LineRows().Matches(page).Select(row => string.Join(' ', Number().Matches(row.Value).Select(n => n.Groups[1].Value))));

        // The first stands before its row, the others under the akshara that follows in the text.
        Assert.Equal(["before", "p1 f0", "p1 f0", "p1 f0", "p1 f0"], Start().Matches(page).Select(m => m.Groups[1].Value));
        Assert.Matches("class=\"start p1 f0\"><button[^>]*>5</button><span class=\"said\">S, R, G, P, D, upper S</span></span><span class=\"a p1[^\"]*\" data-a=\"7\"", page);
    }

    [Fact]
    public void In_free_rhythm_each_line_has_a_row_of_its_own()
    {
        // In second speed the first line takes one akshara, the second one and a half, so that the third begins inside an akshara.
        var rows = Rows(Text(Mohanam with { Meter = Meter.Free, Speeds = [Speed.Second] }));
        Assert.Equal(["S R", "S R G", "S R G P", "S R G P D", "S R G P D S\u0307"], rows.Select(r => r.Replace(" .", string.Empty, StringComparison.Ordinal).TrimStart('.', ' ')));
    }

    [Fact]
    public void The_time_of_an_answer_is_shaded_and_empty()
    {
        using var stream = new MemoryStream();
        new HtmlFormat().Write((Mohanam with { Pattern = Pattern.Ladder.Take(1) }).ToScore().WithAnswers(), stream);
        var page = Encoding.UTF8.GetString(stream.ToArray());
        Assert.Equal(2, Regex.Count(page, "<span class=\"a p1 answer[^\"]*\" data-a=\"[34]\" aria-hidden=\"true\"></span>"));
        Assert.Contains("shaded aksharas", page, StringComparison.Ordinal);
        Assert.DoesNotContain("shaded aksharas", Text(Mohanam), StringComparison.Ordinal);
    }

    [Fact]
    public void The_tonics_lie_two_octaves_to_each_side_as_far_as_there_are_tonics_each_with_its_name_and_kattai()
    {
        // G3 is 5 kattai; four semitones higher is B3, 7 kattai; C1 is the lowest tonic there is.
        var tonics = Json(Text(Mohanam)).GetProperty("tonics").EnumerateArray().ToDictionary(t => t[0].GetInt32(), t => t[1].GetString()!);
        Assert.Equal(Enumerable.Range(-24, 49), tonics.Keys.Order());
        Assert.Equal("S = G3 (kattai 5, 196.00 Hz)", tonics[0]);
        Assert.Equal("S = B3 (kattai 7, 246.94 Hz)", tonics[4]);
        Assert.Equal("S = G4 (kattai 5, 392.00 Hz)", tonics[12]);
        var low = Json(Text(Mohanam with { Tonic = Tonic.Parse("C2"), HasDrone = false })).GetProperty("tonics").EnumerateArray().Select(t => t[0].GetInt32());
        Assert.Equal(-12, low.Min());
    }

    [Fact]
    public void Octaves_are_dots_over_and_under_the_letter() =>
        Assert.StartsWith("D\u0323 S S\u0307", Rows(Text(Mohanam with { Pattern = Pattern.Figure(-1, 0, 5) }))[0], StringComparison.Ordinal);

    [Fact]
    public void In_Tamil_carets_stand_for_the_octaves_and_the_legend_says_why()
    {
        var page = Text(Mohanam with { Pattern = Pattern.Figure(-1, 0, 5), Syllables = Syllables.Tamil });
        Assert.StartsWith("\u0BA4\u032C \u0BB8 \u0BB8\u0302", Rows(page)[0], StringComparison.Ordinal);
        Assert.Contains("^ (not the pulli, which is a dot) over a letter is the upper octave; v under it the lower", page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_legend_has_the_signs_that_are_used_and_no_others()
    {
        var page = Legend(Mohanam);
        Assert.All((string[])["hold", "breathe", "silence", "speed", "under it", "shaded"], word => Assert.DoesNotContain(word, page, StringComparison.Ordinal));
        var full = Legend(Mohanam with { Pattern = Pattern.Figure(-1, 0, 5), Delivery = Delivery.LineByLine, Speeds = [Speed.Third] });
        Assert.All((string[])["hold", "breathe", "under it the lower", "two lines for the third speed"], word => Assert.Contains(word, full, StringComparison.Ordinal));

        static string Legend(Drill drill) => Regex.Match(Text(drill), "<p class=\"legend\">.*?</p>").Value;
    }

    [Fact]
    public void Short_bars_share_a_row_and_count_their_own_beats()
    {
        // Eight notes at two notes a beat fill a bar of 4/4, and their lines are two bars with the hold.
        var page = Text(Mohanam with { Meter = Meter.Parse("4/4"), Speeds = [Speed.Second], Pattern = Pattern.Parse("[S R G P D P G R S].fill(16)") });
        Assert.Equal(["S R G P D P G R || S , , , , , , , ||"], Rows(page));
        Assert.Equal("12341234", string.Concat(Regex.Matches(Regex.Match(page, "<div class=\"row head\".*").Value, "data-a=\"(\\d)\"").Select(m => m.Groups[1].Value)));
    }

    [Fact]
    public void A_screen_reader_hears_each_line_as_words()
    {
        var page = Text(Mohanam with { Pattern = Pattern.Figure(-1, 0, 5).Take(1), Delivery = Delivery.LineByLine });
        Assert.Contains("<span class=\"said\">lower D, S, upper S held, breathe</span>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_of_several_sections_are_told_apart_by_their_section()
    {
        var first = (Mohanam with { Title = "First" }).ToScore();
        var score = Score.Join(first.Title, [first, (Mohanam with { Title = "\"Second\"" }).ToScore()]);
        using var stream = new MemoryStream();
        new HtmlFormat().Write(score, stream);
        var page = Encoding.UTF8.GetString(stream.ToArray());
        var names = Regex.Matches(page, "aria-label=\"(Loop [^\"]*)\"").Select(m => System.Net.WebUtility.HtmlDecode(m.Groups[1].Value)).ToList();
        Assert.Equal(10, names.Distinct().Count());
        Assert.Equal("Loop line 1 of First", names[0]);
        Assert.Equal("Loop line 5 of \"Second\"", names[9]);
    }

    [Fact]
    public void It_says_what_the_text_sheet_says()
    {
        var drill = Mohanam with { Tonic = Tonic.FromHz(200), Tempo = new Rational(145, 2), Speeds = [Speed.Second] };
        using var stream = new MemoryStream();
        new TextSheetFormat().Write(drill.ToScore(), stream);
        var head = Encoding.UTF8.GetString(stream.ToArray()).Split("\n\n")[1].Split('\n');
        var page = System.Net.WebUtility.HtmlDecode(Text(drill));
        Assert.True(head.Length > 7);
        Assert.All(head, row => Assert.Contains($"<dd>{row[(row[0] == ' ' ? 13 : 8)..]}</dd>", page, StringComparison.Ordinal));
        Assert.Contains(TextSheetFormat.NotTheRaga, page, StringComparison.Ordinal);
        Assert.All(Cautions.All, caution => Assert.Contains(caution.Text, page, StringComparison.Ordinal));
    }

    [Fact]
    public void Beats_are_strongest_at_the_avartana_and_strong_at_the_anga()
    {
        var beats = Json(Text(Mohanam with { Meter = Meter.Parse("khanda chapu") })).GetProperty("beats").EnumerateArray().Select(b => b[1].GetInt32()).Take(6);
        Assert.Equal([2, 0, 1, 0, 0, 2], beats);
        Assert.All(Json(Text(Mohanam with { Meter = Meter.Free })).GetProperty("beats").EnumerateArray(), b => Assert.Equal(0, b[1].GetInt32()));
    }

    [Fact]
    public void Each_note_has_a_cell_to_be_lit_also_where_an_akshara_has_too_many_parts_to_show()
    {
        // In fourth speed with gati 9 an akshara has 18 parts; a breath of 1/24 brings more.
        foreach (var drill in (Drill[])[Mohanam, Mohanam with { Speeds = [new Speed(4, 9)], Delivery = Delivery.LineByLine }, Mohanam with { Speeds = SpeedSequences.ThreeSpeeds() }])
        {
            var page = Text(drill);
            var cells = Regex.Count(page, "<span class=\"n c[0-9]+\">");
            var notes = Json(page).GetProperty("notes").EnumerateArray().Select(n => n[3].GetInt32()).ToList();
            Assert.Equal(drill.ToScore().NoteCount, notes.Count);
            Assert.Equal(0, notes[0]);
            Assert.Equal(cells - 1, notes[^1]);
            Assert.All(notes.Zip(notes.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 0, 1));
        }
    }

    [Theory]
    [InlineData(60, 50, 150)]
    [InlineData(60, 80, 120, 48, 72)]
    [InlineData(70, 86, 128, 60, 90)]
    [InlineData(60, 100, 120, 65, 72)]
    [InlineData(60, 50, 100, 30, 40)]
    public void The_slider_covers_the_tempi_that_fit_and_the_written_one(int tempo, int slowest, int fastest, int from = 0, int to = 0)
    {
        var options = from == 0 ? HtmlOptions.Default : new HtmlOptions { Tempi = new TempoRange(from, to) };
        var page = Text(Mohanam with { Tempo = tempo }, options);
        Assert.Contains($"min=\"{slowest}\" max=\"{fastest}\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_outside_their_range_are_refused_with_the_range()
    {
        Assert.Contains("must be between 10 and 100, not 9", Assert.Throws<ArgumentOutOfRangeException>(() => new HtmlOptions { SlowestPercent = 9 }).Message, StringComparison.Ordinal);
        Assert.Contains("must be between 100 and 400, not 99", Assert.Throws<ArgumentOutOfRangeException>(() => new HtmlOptions { FastestPercent = 99 }).Message, StringComparison.Ordinal);
        Assert.Contains("must be between 0 and 64, not 65", Assert.Throws<ArgumentOutOfRangeException>(() => new HtmlOptions { CountInBeats = 65 }).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_score_that_is_too_long_is_refused_before_anything_is_written()
    {
        var score = (Mohanam with { Repetitions = 1000, Pattern = Pattern.Ladder + Pattern.Ladder }).ToScore();
        Assert.Equal(40_000, score.NoteCount);
        using var stream = new MemoryStream();
        Assert.Contains("at most 20000 notes, not 40000", Assert.Throws<ExportException>(() => new HtmlFormat().Write(score, stream)).Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void Equal_scores_give_equal_bytes_without_a_byte_order_mark_and_with_line_feeds_only()
    {
        var bytes = Bytes(Mohanam);
        Assert.Equal(bytes, Bytes(Mohanam with { Scale = Scale.Parse("S R2 G3 P D2 S'") }));
        Assert.Equal("<!DOCTYPE html>\n"u8.ToArray(), bytes[..16]);
        Assert.DoesNotContain((byte)'\r', bytes);
    }

    [Fact]
    public void A_score_without_a_drone_has_no_switch_for_it()
    {
        Assert.Contains("id=\"drone\"", Text(Mohanam), StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"drone\"", Text(Mohanam with { HasDrone = false }), StringComparison.Ordinal);
    }

    /// <summary>The rows of each line as text: empty aksharas before the last sign are dots, bars stand behind angas and avartanas.</summary>
    private static List<string> Rows(string page) => [.. LineRows().Matches(page).Select(line =>
    {
        var text = new StringBuilder();
        foreach (Match akshara in Akshara().Matches(line.Value))
        {
            var signs = string.Join(' ', Sign().Matches(akshara.Groups[2].Value).Select(s => System.Net.WebUtility.HtmlDecode(s.Groups[1].Value)));
            text.Append(signs.Length == 0 ? "." : signs);
            text.Append(akshara.Groups[1].Value.Contains("avartana", StringComparison.Ordinal) ? " || " : akshara.Groups[1].Value.Contains("anga", StringComparison.Ordinal) ? " | " : " ");
        }

        return text.ToString().Trim();
    })];

    private static string Hash(string page, string open, string close) =>
        $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Between(page, open, close))))}'";

    private static string Between(string page, string open, string close)
    {
        var start = page.IndexOf(open, StringComparison.Ordinal) + open.Length;
        return page[start..page.IndexOf(close, start, StringComparison.Ordinal)];
    }

    private static JsonElement Json(string page) => JsonDocument.Parse(Between(page, "id=\"score\">", "</script>")).RootElement;

    private static string Text(Drill drill, HtmlOptions? options = null) => Encoding.UTF8.GetString(Bytes(drill, options));

    private static byte[] Bytes(Drill drill, HtmlOptions? options = null)
    {
        using var stream = new MemoryStream();
        new HtmlFormat(options ?? HtmlOptions.Default).Write(drill.ToScore(), stream);
        return stream.ToArray();
    }

    [GeneratedRegex("Content-Security-Policy\" content=\"([^\"]+)\"")]
    private static partial Regex Policy();

    [GeneratedRegex("<div class=\"row(?: inside)?\">.*")]
    private static partial Regex LineRows();

    [GeneratedRegex("<span class=\"(a [^\"]*)\" data-a=\"[0-9]+\" aria-hidden=\"true\">((?:<span class=\"[nhb] c[0-9]+\">[^<]*</span>)*)</span>")]
    private static partial Regex Akshara();

    [GeneratedRegex("<span class=\"[nhb] c[0-9]+\">([^<]*)</span>")]
    private static partial Regex Sign();

    [GeneratedRegex("<button [^>]*>([0-9]+)</button>")]
    private static partial Regex Number();

    [GeneratedRegex("<span class=\"start ([^\"]*)\">")]
    private static partial Regex Start();
}
