using System.Text.Json;

namespace Warmup.Cli.Tests;

/// <summary>The program's promises to a person at a shell: exit codes, one-line errors with the fix, nothing half-written.</summary>
public sealed class ProgramTests : IDisposable
{
    private const string Class = """
        {"schema": "urn:warmup:singers:1", "singers": [
          {"alias": "Wren", "low": "A3", "high": "E5", "sustainedSeconds": 14},
          {"alias": "Badger", "low": "G2", "high": "D4", "sustainedSeconds": 16, "experience": "advanced"}]}
        """;

    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("a.mid")]
    [InlineData("a.musicxml")]
    [InlineData("a.mxl")]
    [InlineData("a.txt")]
    [InlineData("a.svg")]
    [InlineData("a.pdf")]
    [InlineData("a.png")]
    [InlineData("a.wav")]
    public void A_drill_is_written_by_the_ending_of_the_file(string name)
    {
        var (code, output, error) = Shell.Run(_shell.Drill(("--out", _shell.At(name))));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(name, output, StringComparison.Ordinal);
        Assert.Equal([name], _shell.Files);
        Assert.NotEqual(0, new FileInfo(_shell.At(name)).Length);
    }

    [Fact]
    public void A_sound_is_as_long_as_the_drill_and_its_count_in()
    {
        var (code, output, _) = Shell.Run(_shell.Drill(("--out", _shell.At("a.wav"))));
        Assert.Equal(0, code);
        Assert.Contains("WAV", output, StringComparison.Ordinal);
        var bytes = File.ReadAllBytes(_shell.At("a.wav"));
        Assert.Equal("RIFF", System.Text.Encoding.ASCII.GetString(bytes, 0, 4));
        Assert.Equal("data", System.Text.Encoding.ASCII.GetString(bytes, 36, 4));

        // 20 aksharas of notes are filled up to 24; 4 are counted in; 60 a minute, 44,100 frames of 4 bytes a second.
        Assert.Equal(28u * 44_100 * 4, System.Buffers.Binary.BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(40)));
    }

    [Theory]
    [InlineData("a.svg", "<?xml")]
    [InlineData("a.pdf", "%PDF-1.")]
    [InlineData("a.png", "\u0089PNG")]
    public void A_sheet_is_what_its_ending_says(string name, string beginning)
    {
        var (code, output, _) = Shell.Run(_shell.Drill(("--out", _shell.At(name)), ("--syllables", "tamil")));
        Assert.Equal(0, code);
        Assert.Contains("sheet", output, StringComparison.Ordinal);
        Assert.StartsWith(beginning, System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(_shell.At(name))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_no_font_has_is_an_error_that_names_it_and_leaves_nothing()
    {
        var (code, _, error) = Shell.Run(_shell.Drill(("--out", _shell.At("a.pdf")), ("--title", "\u7DF4")));
        Assert.NotEqual(0, code);
        Assert.Contains("U+7DF4", error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);
    }

    [Fact]
    public void Out_is_repeated_for_more_files()
    {
        var (code, _, _) = Shell.Run([.. _shell.Drill(), "--out", _shell.At("b.txt"), "--out", _shell.At("c.musicxml")]);
        Assert.Equal(0, code);
        Assert.Equal(["a.mid", "b.txt", "c.musicxml"], _shell.Files);
    }

    [Theory]
    [InlineData("--scale", "mohanim", "Mohanam")]
    [InlineData("--scale", "0", "between 1 and 72")]
    [InlineData("--scale", "73", "between 1 and 72")]
    [InlineData("--scale", "S R2 R2 G3 P S'", "twice")]
    [InlineData("--scale", "S G3 R2 P S'", "vakra:")]
    [InlineData("--scale", "S R2 H3 S'", "column 6")]
    [InlineData("--scale", "S R G P S'", "R1")]
    [InlineData("--scale", "", "empty")]
    [InlineData("--pattern", "lader", "ladder")]
    [InlineData("--pattern", "ladder.", "reversed")]
    [InlineData("--pattern", "ladder.repeat(9999)", "100000")]
    [InlineData("--pattern", "empty", "no lines")]
    [InlineData("--pattern", "", "expected")]
    [InlineData("--tonic", "H3", "C#3")]
    [InlineData("--tonic", "C9", "C7")]
    [InlineData("--tonic", "3.5", "kattai")]
    [InlineData("--tonic", "9000Hz", "5000")]
    [InlineData("--tempo", "0", "between 10 and 400")]
    [InlineData("--tempo", "-60", "between 10 and 400")]
    [InlineData("--tempo", "1e9", "between 10 and 400")]
    [InlineData("--tempo", "fast", "between 10 and 400")]
    [InlineData("--speed", "5", "1 or 2 or 3")]
    [InlineData("--tuning", "meantone", "equal or just")]
    [InlineData("--delivery", "staccato", "line-by-line")]
    [InlineData("--title", "a\nb", "control")]
    [InlineData("--singers", "nowhere.json", "nowhere.json")]
    [InlineData("--alias", "Wren", "--singers")]
    public void Wrong_input_is_one_line_with_the_fix_and_leaves_nothing(string option, string value, string expected)
    {
        var (code, _, error) = Shell.Run(_shell.Drill((option, value)));
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
        Assert.Empty(_shell.Files);
    }

    [Theory]
    [InlineData("drill", "--scale", "mohanam")]
    [InlineData("drill", "--unknown")]
    [InlineData("scales", "kalyani")]
    [InlineData("scales", "--find")]
    [InlineData("check")]
    [InlineData("demo")]
    [InlineData("nonsense")]
    public void Wrong_usage_exits_with_2_and_one_line(params string[] args)
    {
        var (code, _, error) = Shell.Run(args);
        Assert.Equal(2, code);
        Assert.Equal(1, error.Count(c => c == '\n'));
        Assert.Contains("--help", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_begins_with_an_at_sign_is_no_response_file()
    {
        File.WriteAllText(_shell.At("args"), "--force");
        var (code, _, error) = Shell.Run("scales", "@" + _shell.At("args"));
        Assert.Equal(2, code);
        Assert.Contains("args", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Existing_files_are_kept_unless_forced()
    {
        File.WriteAllText(_shell.At("b.txt"), "mine");
        string[] args = [.. _shell.Drill(), "--out", _shell.At("b.txt")];
        var (code, _, error) = Shell.Run(args);
        Assert.Equal(2, code);
        Assert.Contains("--force", error, StringComparison.Ordinal);
        Assert.Equal(["b.txt"], _shell.Files);
        Assert.Equal("mine", File.ReadAllText(_shell.At("b.txt")));

        Assert.Equal(0, Shell.Run([.. args, "--force"]).Code);
        Assert.StartsWith("Mohanam: each line starts on the tonic", File.ReadAllText(_shell.At("b.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing/a.mid", "does not exist")]
    [InlineData("a.docx", ".musicxml")]
    [InlineData("a", "no ending")]
    public void Files_that_cannot_be_written_are_refused_before_any_is(string name, string expected)
    {
        var (code, _, error) = Shell.Run([.. _shell.Drill(), "--out", _shell.At(name)]);
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_to_is_refused()
    {
        // Also root cannot make files below /proc.
        Assert.SkipUnless(Directory.Exists("/proc/self"), "there is no /proc on this system");
        var (code, _, error) = Shell.Run(_shell.Drill(("--out", "/proc/self/a.mid")));
        Assert.Equal(2, code);
        Assert.NotEmpty(error);
    }

    [Fact]
    public void Check_tells_who_fits_and_exits_with_1_when_somebody_does_not()
    {
        File.WriteAllText(_shell.At("class.json"), Class);
        string[] drill = ["--scale", "mohanam", "--pattern", "ladder", "--tonic", "A3", "--tempo", "60", "--delivery", "line-by-line", "--singers", _shell.At("class.json")];
        var (code, output, _) = Shell.Run(["check", .. drill, "--cautions"]);
        Assert.Equal(1, code);
        Assert.Contains("Badger", output, StringComparison.Ordinal);

        // Badger ends on D4; the drill on A3 goes up to A4, seven semitones above.
        Assert.Contains("7.0 semitones above", output, StringComparison.Ordinal);
        foreach (var caution in Cautions.All)
        {
            Assert.Contains(caution.Text[..30], output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Check_of_one_singer_whom_the_drill_fits_exits_with_0()
    {
        File.WriteAllText(_shell.At("class.json"), Class);
        string[] drill = ["--scale", "mohanam", "--pattern", "ladder.take(2)", "--tonic", "A3", "--tempo", "120", "--singers", _shell.At("class.json")];
        Assert.Equal(0, Shell.Run(["check", .. drill, "--alias", "wren"]).Code);
        var (code, _, error) = Shell.Run(["check", .. drill, "--alias", "Lark"]);
        Assert.Equal(2, code);
        Assert.Contains("Wren, Badger", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_speaks_JSON()
    {
        File.WriteAllText(_shell.At("class.json"), Class);
        var (code, output, _) = Shell.Run("check", "--scale", "mohanam", "--pattern", "ladder", "--tonic", "A3", "--tempo", "60", "--singers", _shell.At("class.json"), "--json");
        Assert.Equal(1, code);
        using var json = JsonDocument.Parse(output);
        Assert.Equal("urn:warmup:findings:2", json.RootElement.GetProperty("schema").GetString());
        var singers = json.RootElement.GetProperty("singers");
        Assert.Equal(2, singers.GetArrayLength());
        Assert.False(singers[1].GetProperty("fits").GetBoolean());
        Assert.Equal("range.above", singers[1].GetProperty("findings")[0].GetProperty("code").GetString());
    }

    [Fact]
    public void The_practice_pages_slider_keeps_to_the_singers_tempi()
    {
        // Finch is asked for 3 notes a second at most: 180 aksharas a minute, three times the written 60. Twenty notes on one breath of
        // 0.4 of 20 s = 8 s need 150, so that the slow end is the written tempo.
        File.WriteAllText(_shell.At("class.json"), """
            {"schema": "urn:warmup:singers:1", "singers": [{"alias": "Finch", "low": "F3", "high": "D5", "sustainedSeconds": 20}]}
            """);
        _ = Shell.Run(_shell.Drill(("--out", _shell.At("a.html")), ("--singers", _shell.At("class.json"))));
        var slider = File.ReadAllText(_shell.At("a.html")).Split('\n').Single(l => l.Contains("type=\"range\" id=\"tempo\"", StringComparison.Ordinal));
        Assert.Contains("min=\"100\"", slider, StringComparison.Ordinal);
        Assert.Contains("max=\"300\"", slider, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drill_that_does_not_fit_is_written_and_exits_with_1()
    {
        File.WriteAllText(_shell.At("class.json"), Class);
        var (code, _, _) = Shell.Run(_shell.Drill(("--singers", _shell.At("class.json"))));
        Assert.Equal(1, code);
        Assert.Contains("a.mid", _shell.Files);
    }

    [Theory]
    [InlineData("{", "column")]
    [InlineData("{\"schema\": \"urn:warmup:singers:2\", \"singers\": []}", "urn:warmup:singers:1")]
    [InlineData("{\"schema\": \"urn:warmup:singers:1\", \"singers\": [{\"alias\": \"Wren\", \"low\": \"E5\", \"high\": \"A3\", \"sustainedSeconds\": 14}]}", "E5")]
    public void A_broken_class_names_the_file_and_the_place(string content, string expected)
    {
        File.WriteAllText(_shell.At("class.json"), content);
        var (code, _, error) = Shell.Run(_shell.Drill(("--singers", _shell.At("class.json"))));
        Assert.Equal(2, code);
        Assert.Contains("class.json", error, StringComparison.Ordinal);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(["class.json"], _shell.Files);
    }

    [Fact]
    public void Scales_are_found_by_a_part_of_their_name_and_as_JSON()
    {
        var (code, output, _) = Shell.Run("scales", "--find", "Mōhan", "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(output);
        var names = json.RootElement.GetProperty("scales").EnumerateArray().Select(r => r.GetProperty("name").GetString()).ToList();
        Assert.Contains("Mohanam", names);
        Assert.DoesNotContain("Hindolam", names);

        var (tableCode, table, _) = Shell.Run("scales");
        Assert.Equal(0, tableCode);
        Assert.Contains("Kanakangi", table, StringComparison.Ordinal);
        Assert.Contains("Locrian", table, StringComparison.Ordinal);
    }

    [Fact]
    public void The_demo_writes_six_drills_five_ways_with_the_class_and_the_findings_and_exits_with_0()
    {
        var folder = _shell.At("out");
        var (code, output, error) = Shell.Run("demo", "--out", folder);
        Assert.Equal((0, string.Empty), (code, error));
        var files = _shell.Files;
        Assert.Equal(6, files.Count(f => f.EndsWith(".mid", StringComparison.Ordinal)));
        Assert.Equal(6, files.Count(f => f.EndsWith(".musicxml", StringComparison.Ordinal)));
        Assert.Equal(7, files.Count(f => f.EndsWith(".txt", StringComparison.Ordinal)));
        Assert.Contains(Path.Combine("out", "singers.json"), files);
        Assert.Equal(8, files.Count(f => f.EndsWith(".html", StringComparison.Ordinal)));
        Assert.Equal(6, files.Count(f => f.EndsWith(".pdf", StringComparison.Ordinal)));
        Assert.Contains($"Open first: {Path.Combine(folder, "index.html")}", output, StringComparison.Ordinal);

        // The index links every other file, and nothing else: of each drill first the practice page, then the sheet to print.
        var index = File.ReadAllText(Path.Combine(folder, "index.html"));
        var links = System.Text.RegularExpressions.Regex.Matches(index, "href=\"([^\"#]+)\"");
        Assert.Equal(["mohanam-level-1.html", "mohanam-level-1.pdf"], links.Select(l => l.Groups[1].Value).Where(l => l.StartsWith("mohanam-level-1", StringComparison.Ordinal)).Take(2));
        Assert.Equal(
            files.Select(f => Path.GetFileName(f)).Where(f => f != "index.html").Order(StringComparer.Ordinal),
            links.Select(l => Uri.UnescapeDataString(l.Groups[1].Value)).Order(StringComparer.Ordinal));
        Assert.Equal(6, SingersFile.Read(File.ReadAllBytes(Path.Combine(folder, "singers.json"))).Count);

        // Each drill has its picture, and says whom it fits. Level 1 of Mohanam goes from G3 to G4: within the range of all but Badger, whose highest
        // note is D4, and Robin, whose lowest is B3.
        Assert.Equal(6, System.Text.RegularExpressions.Regex.Count(index, "<svg "));
        var fits = index[index.IndexOf("Mohanam, level 1", StringComparison.Ordinal)..];
        fits = fits[..fits.IndexOf("</p>\n<ul>", StringComparison.Ordinal)];
        Assert.Matches("Not yet: .*Badger.*Robin", fits);
        Assert.Matches("Fits [^.]*Wren", fits);

        // Each drill fits somebody.
        var drills = File.ReadAllText(Path.Combine(folder, "findings.txt")).Split("\n\n").Where(d => d.Contains(", level ", StringComparison.Ordinal)).ToList();
        Assert.Equal(6, drills.Count);
        Assert.All(drills, d => Assert.Contains("): fits", d, StringComparison.Ordinal));

        // The page of findings says what the text says, and each drill that does not fit all links to its place there.
        var page = System.Net.WebUtility.HtmlDecode(File.ReadAllText(Path.Combine(folder, "findings.html")));
        var rows = File.ReadAllLines(Path.Combine(folder, "findings.txt")).Where(l => l.StartsWith("    - ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Contains($"<dd>{row[6..]}</dd>", page, StringComparison.Ordinal));
        Assert.All(
            System.Text.RegularExpressions.Regex.Matches(index, "findings.html#([^\"]+)").Select(m => m.Groups[1].Value),
            place => Assert.Contains($"id=\"{place}\"", page, StringComparison.Ordinal));

        var before = File.ReadAllBytes(Path.Combine(folder, "mohanam-level-1.mid"));
        Assert.Equal(2, Shell.Run("demo", "--out", folder).Code);
        Assert.Equal(0, Shell.Run("demo", "--out", folder, "--force").Code);
        Assert.Equal(before, File.ReadAllBytes(Path.Combine(folder, "mohanam-level-1.mid")));
    }

    [Fact]
    public void Help_exits_with_0() => Assert.Equal(0, Shell.Run("drill", "--help").Code);
}
