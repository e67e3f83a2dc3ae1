using System.Text;
using System.Xml.Linq;

namespace Warmup.Cli.Tests;

/// <summary>The options that say what the files hold; expectations from the standards' names of elements and events.</summary>
public sealed class FileOptionTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("--clef", "bass", "sign", "F")]
    [InlineData("--clef", "treble-8", "clef-octave-change", "-1")]
    [InlineData("--staff", "9", "millimeters", "9")]
    [InlineData("--second-voice", "-12", "part-name", "Low voices")]
    [InlineData("--beat-part", "gestures", "text", "clap")]
    [InlineData("--drone-part", "", "part-name", "Drone")]
    [InlineData("--verse", "numbers", "text", "1")]
    [InlineData("--verse", "words: lan- tern light", "text", "tern")]
    public void Each_option_shows_in_the_notation(string option, string value, string element, string expected)
    {
        var plain = Notation();
        Assert.DoesNotContain(plain.Descendants(element), e => e.Value == expected);
        var asked = Notation(value.Length == 0 ? [option] : [option, value]);
        Assert.Contains(asked.Descendants(element), e => e.Value == expected);
    }

    [Theory]
    [InlineData("Wren,A3,E5,14", null)]
    [InlineData("Robin,C3,C5,14", "-1")]
    [InlineData("Wren,A3,E5,14\nRobin,C3,C5,14", "by the tonic")]
    public void The_clef_is_that_of_the_singers_where_they_read_the_same(string singers, string? change)
    {
        File.WriteAllText(_shell.At("class.csv"), $"alias,low,high,sustainedSeconds\n{singers}\n");
        foreach (var (tonic, byTonic) in (ValueTuple<string, string?>[])[("E3", "-1"), ("F3", null)])
        {
            var (code, _, error) = Shell.Run([.. _shell.Drill(("--tonic", tonic), ("--out", _shell.At("c.musicxml"))), "--singers", _shell.At("class.csv"), "--force"]);
            Assert.True(code is 0 or 1, error);
            Assert.Equal(change == "by the tonic" ? byTonic : change, XDocument.Load(_shell.At("c.musicxml")).Descendants("clef-octave-change").SingleOrDefault()?.Value);
        }
    }

    [Fact]
    public void Letter_paper_is_8_and_a_half_by_11_inches()
    {
        // Millimetres a tenth: the scaling's millimeters / tenths; 11 inches are 279.4 mm.
        foreach (var (paper, width, height) in (ValueTuple<string, double, double>[])[("letter", 215.9, 279.4), ("a4", 210, 297)])
        {
            var notation = Notation("--paper", paper);
            double Number(string name) => double.Parse(notation.Descendants(name).First().Value, System.Globalization.CultureInfo.InvariantCulture);
            var tenth = Number("millimeters") / Number("tenths");
            Assert.Equal(width, Number("page-width") * tenth, 0.1);
            Assert.Equal(height, Number("page-height") * tenth, 0.1);
        }
    }

    [Theory]
    [InlineData("traditional", "-1")]
    [InlineData("accidentals", "0")]
    public void The_key_is_the_scales_own_or_none(string key, string fifths)
    {
        // F major has one flat.
        var (code, _, error) = Shell.Run([.. _shell.Drill(("--scale", "major"), ("--tonic", "F3"), ("--out", _shell.At("k.musicxml"))), "--key", key]);
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Equal(fifths, XDocument.Load(_shell.At("k.musicxml")).Descendants("fifths").First().Value);
    }

    [Fact]
    public void Syllables_in_an_Indic_script_go_into_MIDI_as_UTF_8_when_asked()
    {
        var (code, _, error) = Shell.Run(_shell.Drill(("--syllables", "tamil")));
        Assert.Equal(2, code);
        Assert.Contains("ASCII", error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);

        (code, _, error) = Shell.Run(_shell.Drill(("--syllables", "tamil"), ("--midi-text", "utf-8")));
        Assert.Equal((0, string.Empty), (code, error));

        // Tamil letter KA, U+0B95, is the third svara's.
        Assert.True(File.ReadAllBytes(_shell.At("a.mid")).AsSpan().IndexOf(Encoding.UTF8.GetBytes("\u0B95")) > 0);
    }

    [Fact]
    public void A_format_that_refuses_leaves_none_of_the_files()
    {
        // MIDI's text is ASCII unless UTF-8 is asked for; it stands last, behind formats that can write Tamil.
        string[] others = ["--out", _shell.At("a.txt"), "--out", _shell.At("a.html"), "--out", _shell.At("a.musicxml")];
        var refused = Shell.Run([.. _shell.Drill(("--syllables", "tamil"), ("--out", _shell.At("b.txt"))), .. others, "--out", _shell.At("a.mid")]);
        Assert.Equal(2, refused.Code);
        Assert.Contains("ASCII", refused.Error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);

        // Nor is a file replaced by half of what was asked for.
        File.WriteAllText(_shell.At("a.txt"), "kept");
        Assert.Equal(2, Shell.Run([.. _shell.Drill(("--syllables", "tamil"), ("--out", _shell.At("b.txt"))), .. others, "--out", _shell.At("a.mid"), "--force"]).Code);
        Assert.Equal("kept", File.ReadAllText(_shell.At("a.txt")));
        Assert.Equal(["a.txt"], _shell.Files);
    }

    [Theory]
    [InlineData("pitch-bend", 0xE0, true)]
    [InlineData("equal-only", 0xE0, false)]
    [InlineData("tuning-standard", 0xF0, true)]
    public void The_tuning_of_MIDI_is_by_the_messages_asked_for(string tuning, int status, bool has)
    {
        var (code, _, error) = Shell.Run([.. _shell.Drill(("--tuning", "just"), ("--drone", "none")), "--midi-tuning", tuning]);
        Assert.Equal((0, string.Empty), (code, error));
        using var bytes = File.OpenRead(_shell.At("a.mid"));
        var events = Events(bytes);
        Assert.Equal(has, events.Any(e => (status == 0xF0 ? e : e & 0xF0) == status));
    }

    [Fact]
    public void The_beat_is_clicked_throughout_when_asked()
    {
        int Clicks(params string[] more)
        {
            var (code, _, error) = Shell.Run([.. _shell.Drill(), .. more, "--force"]);
            Assert.Equal((0, string.Empty), (code, error));
            using var bytes = File.OpenRead(_shell.At("a.mid"));
            return Events(bytes).Count(e => e == 0x99);
        }

        // 20 aksharas of lines, then 4 to the end of the avartana; percussion is channel 10.
        Assert.Equal(0, Clicks());
        Assert.InRange(Clicks("--click", "throughout"), 20, 24);
    }

    [Fact]
    public void A_contour_is_drawn_beside_the_other_files_over_one_singers_range()
    {
        var (code, said, error) = Shell.Run([.. _shell.Drill(), "--contour", _shell.At("c.svg")]);
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("contour as SVG", said, StringComparison.Ordinal);
        Assert.Equal(["a.mid", "c.svg"], _shell.Files);

        (code, _, error) = Shell.Run([.. _shell.Drill(("--out", _shell.At("b.svg"))), "--contour", _shell.At("b.svg")]);
        Assert.Equal(2, code);
        Assert.Contains("both name", error, StringComparison.Ordinal);
        (code, _, error) = Shell.Run([.. _shell.Drill(("--out", _shell.At("b.svg"))), "--contour", _shell.At("c.svg")]);
        Assert.Equal(2, code);
        Assert.Contains("exists", error, StringComparison.Ordinal);
        Assert.Equal(["a.mid", "c.svg"], _shell.Files);
    }

    [Fact]
    public void A_contour_leaves_the_time_of_the_answers_silent_as_the_other_files_do()
    {
        // Line by line each of the five lines takes an avartana of 8 s; the answers double the 40 s, and a mark stands every few seconds.
        Assert.DoesNotContain(">60 s<", Contour(), StringComparison.Ordinal);
        Assert.Contains(">60 s<", Contour("--call-and-response"), StringComparison.Ordinal);

        string Contour(params string[] more)
        {
            var (code, _, error) = Shell.Run([.. _shell.Drill(("--delivery", "line-by-line")), "--contour", _shell.At("c.svg"), "--force", .. more]);
            Assert.Equal((0, string.Empty), (code, error));
            return File.ReadAllText(_shell.At("c.svg"));
        }
    }

    [Theory]
    [InlineData("--clef", "alto", "--clef must be by-pitch or treble or treble-8 or bass, not 'alto'")]
    [InlineData("--staff", "3", "--staff must be a whole number between 4 and 15, not '3'")]
    [InlineData("--second-voice", "25", "between -24 and 24, not '25'")]
    [InlineData("--verse", "klingon", "--verse, column 1: unknown syllables 'klingon'")]
    [InlineData("--verse", "words:", "1 to 10000 syllables")]
    [InlineData("--midi-text", "latin", "--midi-text must be ascii or utf-8, not 'latin'")]
    [InlineData("--contour", "c.mid", "--contour must end in .svg, .pdf or .png, not 'c.mid'")]
    [InlineData("--tempo", "60 to 70", "column 9: a ramp needs its step")]
    [InlineData("--repeat", "0", "--repeat must be a whole number between 1 and 1000, not '0'")]
    public void Wrong_values_are_refused_with_the_option_and_the_choices(string option, string value, string message)
    {
        var (code, _, error) = Shell.Run([.. _shell.Drill((option, value))]);
        Assert.Equal(2, code);
        Assert.Contains(message, error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);
    }

    [Fact]
    public void A_tempo_that_rises_and_repetitions_show_on_the_sheet()
    {
        var (code, _, error) = Shell.Run(_shell.Drill(("--tempo", "60 to 90 by 15"), ("--repeat", "4"), ("--out", _shell.At("a.txt"))));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("60 to 90 aksharas a minute", File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);
        Assert.Contains("4 times", File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);

        // The ladder of five notes takes 20 aksharas; twice are five avartanas of 8.
        (code, _, error) = Shell.Run([.. _shell.Drill(("--out", _shell.At("b.txt"))), "--end-on-first-beat"]);
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("2 times", File.ReadAllText(_shell.At("b.txt")), StringComparison.Ordinal);
    }

    private XDocument Notation(params string[] more)
    {
        var (code, _, error) = Shell.Run([.. _shell.Drill(("--out", _shell.At("n.musicxml")), ("--tonic", "C4")), .. more, "--force"]);
        Assert.Equal((0, string.Empty), (code, error));
        return XDocument.Load(_shell.At("n.musicxml"));
    }

    /// <summary>The status bytes of all events, read by the standard's own rules: delta time, status, data.</summary>
    private static List<int> Events(Stream file)
    {
        var found = new List<int>();
        var header = new byte[8];
        file.ReadExactly(header);
        file.Position += 6;
        while (file.Read(header) == 8)
        {
            var end = file.Position + (header[4] << 24 | header[5] << 16 | header[6] << 8 | header[7]);
            while (file.Position < end)
            {
                Quantity(file);
                var status = file.ReadByte();
                found.Add(status);
                Assert.InRange(status, 0x80, 0xFF);
                if (status == 0xFF)
                {
                    file.ReadByte();
                }

                var data = status switch
                {
                    0xFF or 0xF0 or 0xF7 => Quantity(file),
                    >= 0xC0 and < 0xE0 => 1,
                    _ => 2,
                };
                file.Position += data;
            }
        }

        return found;

        static int Quantity(Stream file)
        {
            var value = 0;
            int read;
            do
            {
                read = file.ReadByte();
                value = (value << 7) | (read & 0x7F);
            }
            while (read >= 0x80);

            return value;
        }
    }
}
