using System.Text;
using Warmup.Samples;

namespace Warmup.Cli.Tests;

/// <summary>Source: RFC 4180 for the table; the list of characters that spreadsheet programs take for a formula (OWASP, CSV injection).</summary>
public sealed class SingersCsvTests : IDisposable
{
    private const string Table = """
        alias,low,high,sustainedSeconds,trials,trialRule,experience,voice,fullLow,fullHigh
        Wren,A3,E5,14.5,,,,,,
        "Finch, the second",G3,D5,,12 13.5 12.75,median,intermediate,mezzo-soprano,F3,A5
        Robin,,,9,,,,child 8-9,,
        """;

    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    private static ValueList<Singer> Read(string csv) => SingersCsv.Read(Encoding.UTF8.GetBytes(csv));

    private static NoteName Note(string text) => NoteName.Parse(text);

    private static string Written(ValueList<Singer> singers)
    {
        using var stream = new MemoryStream();
        SingersCsv.Write(singers, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    [Fact]
    public void A_table_is_read()
    {
        var singers = Read(Table);
        Assert.Equal(
            [
                new Singer("Wren", Note("A3"), Note("E5"), new Rational(29, 2)),
                new Singer("Finch, the second", Note("G3"), Note("D5"), [12, new Rational(27, 2), new Rational(51, 4)], TrialRule.Median, Experience.Intermediate)
                {
                    Voice = "mezzo-soprano",
                    FullLow = Note("F3"),
                    FullHigh = Note("A5"),
                },
                Singer.FromVoice("Robin", VoiceTypes.Find("child 8-9")!, 9),
            ],
            singers);
    }

    [Fact]
    public void Columns_may_stand_in_any_order_and_case_and_be_left_out() =>
        Assert.Equal(new Singer("Wren", Note("A3"), Note("E5"), 14), Assert.Single(Read("HIGH,Alias,sustainedseconds,low\r\nE5,Wren,14,A3\r\n").ToArray()));

    [Fact]
    public void What_is_written_is_read_back() => Assert.Equal(Read(Table), Read(Written(Read(Table))));

    [Fact]
    public void Rows_with_a_date_are_measurements_of_the_singer_with_that_alias()
    {
        var singers = Read("""
            alias,date,low,high,sustainedSeconds,trials,experience,voice
            Robin,2026-06-02,B3,C5,,9 9.5 8,,child 8-9
            Wren,,A3,E5,14,,intermediate,
            robin,2026-03-01,C4,A4,8,,beginner,
            Wren,2026-05-01,A3,F5,15,,,
            """);
        Assert.Equal(
            [
                new Singer("Robin", new Measurement(new DateOnly(2026, 6, 2), Note("B3"), Note("C5"), [9, new Rational(19, 2), 8]), Experience.Beginner) { Voice = "child 8-9" }
                    .With(new Measurement(new DateOnly(2026, 3, 1), Note("C4"), Note("A4"), 8)),
                new Singer("Wren", Note("A3"), Note("E5"), 14, Experience.Intermediate).With(new Measurement(new DateOnly(2026, 5, 1), Note("A3"), Note("F5"), 15)),
            ],
            singers);
        Assert.Equal(singers, Read(Written(singers)));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("＝1")]
    [InlineData("=HYPERLINK(\"x\",\"y\")")]
    [InlineData("'quoted")]
    [InlineData("'=already")]
    public void A_cell_that_a_spreadsheet_would_run_is_escaped_and_read_back(string alias)
    {
        ValueList<Singer> singers = [new Singer(alias, Note("A3"), Note("E5"), 14)];
        var line = Written(singers).Split('\n')[1];
        Assert.StartsWith("'", line.TrimStart('"'), StringComparison.Ordinal);
        Assert.Equal(singers, Read(Written(singers)));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("alias,low,high,seconds\nWren,A3,E5,14", "seconds")]
    [InlineData("alias;low;high;sustainedSeconds\nWren;A3;E5;14", "commas")]
    [InlineData("alias,alias\na,b", "twice")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5,long", "line 2")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5", "line 2")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,E5,A3,14", "swap")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5,0", "between 1 and 120")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5,400", "between 1 and 120")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5,14\nwren,A3,E5,14", "twice")]
    [InlineData("alias,low,high,sustainedSeconds\n,A3,E5,14", "alias")]
    [InlineData("alias,low,high,sustainedSeconds\nWren,A3,E5,", "sustainedSeconds")]
    [InlineData("alias,low,high,sustainedSeconds\nWr\"en,A3,E5,14", "line 2")]
    [InlineData("alias,date,low,high,sustainedSeconds\nWren,1.3.2026,A3,E5,14", "2026-12-01")]
    [InlineData("alias,date,low,high,sustainedSeconds\nWren,2026-03-01,A3,E5,14\nWren,2026-03-01,A3,E5,14", "two measurements of 2026-03-01")]
    [InlineData("alias,date,low,high,sustainedSeconds,voice\nWren,2026-03-01,A3,E5,14,alto\nWren,2026-04-01,A3,E5,14,tenor", "line 3")]
    public void A_broken_table_is_refused_with_the_place_or_the_singer(string csv, string expected)
    {
        File.WriteAllText(_shell.At("class.csv"), csv);
        var (code, _, error) = Shell.Run("singers", "--singers", _shell.At("class.csv"));
        Assert.Equal(2, code);
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Contains("class.csv", error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public void A_table_that_is_not_UTF8_or_too_large_is_refused()
    {
        File.WriteAllBytes(_shell.At("class.csv"), [.. Encoding.UTF8.GetBytes("alias,low\nM"), 0xFC, .. "ller,A3"u8]);
        Assert.Contains("UTF-8", Shell.Run("singers", "--singers", _shell.At("class.csv")).Error, StringComparison.Ordinal);
        File.WriteAllBytes(_shell.At("class.csv"), new byte[SingersFile.LargestFile + 1]);
        Assert.Contains("8000000", Shell.Run("singers", "--singers", _shell.At("class.csv")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_program_turns_one_form_into_the_other_and_back()
    {
        File.WriteAllText(_shell.At("class.csv"), Table);
        Assert.Equal(0, Shell.Run("singers", "--singers", _shell.At("class.csv"), "--out", _shell.At("class.json")).Code);
        Assert.Equal(Read(Table), SingersFile.Read(File.ReadAllBytes(_shell.At("class.json"))));
        Assert.Equal(0, Shell.Run("singers", "--singers", _shell.At("class.json"), "--out", _shell.At("again.csv")).Code);
        Assert.Equal(Read(Table), SingersCsv.Read(File.ReadAllBytes(_shell.At("again.csv"))));
        var (code, _, error) = Shell.Run("singers", "--singers", _shell.At("class.json"), "--out", _shell.At("again.csv"));
        Assert.Equal(2, code);
        Assert.Contains("--force", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Ten_thousand_singers_are_read()
    {
        var csv = new StringBuilder("alias,low,high,sustainedSeconds\n");
        for (var i = 0; i < 10_000; i++)
        {
            csv.Append(System.Globalization.CultureInfo.InvariantCulture, $"voice {i},A3,E5,14\n");
        }

        Assert.Equal(10_000, Read(csv.ToString()).Count);
    }
}
