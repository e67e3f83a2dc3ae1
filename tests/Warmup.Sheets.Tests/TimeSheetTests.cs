using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Sheets.Tests;

/// <summary>
/// How the text sheet shows time. The expected rows are written out by hand from the signs of common practice: bars behind angas and
/// avartanas, one line over the letters for the second speed, two for the third.
/// </summary>
public class TimeSheetTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder.Take(3), Tonic = Tonic.Parse("G3") };

    [Fact]
    public void Svaras_stand_in_columns_under_the_aksharas_also_where_a_line_begins_inside_the_avartana() => Assert.Equal(
        """
           1 2 3 4 | 5 6 | 7 8 ||
        1  S R S R | G S | R G ||
               2       3
           P       |     |     ||
        """.ReplaceLineEndings("\n"),
        Rows(Mohanam));

    [Fact]
    public void The_second_speed_has_one_line_over_the_letters_the_third_two_the_fourth_three()
    {
        Assert.Equal(
            """
               1   2   3   4   | 5   6   | 7   8   ||
               --- --- --- ---   -
            1  S R S R G S R G | P       |         ||
                   2     3
            """.ReplaceLineEndings("\n"),
            Rows(Mohanam with { Speeds = [Speed.Second] }));
        Assert.Equal("=======", Rows(Mohanam with { Pattern = Pattern.Figure(0, 1, 2, 3).Take(1), Speeds = [Speed.Third] }).Split('\n')[1].Trim());
        Assert.Equal("≡≡≡≡≡≡≡", Rows(Mohanam with { Pattern = Pattern.Figure(0, 1, 2, 3).Take(1), Speeds = [new(4)] }).Split('\n')[0].Trim());
    }

    [Fact]
    public void Tisra_gati_has_three_letters_under_an_akshara() => Assert.Equal(
        """
           1     | 2     3     ||
           =====   ===== =====
        1  S R S | R G S R G P ||
               2       3
        """.ReplaceLineEndings("\n"),
        Rows(Mohanam with { Speeds = [new(3, 3)], Meter = Meter.Parse("1+2/4") }));

    [Fact]
    public void A_breath_that_begins_inside_an_akshara_stands_behind_the_hold()
    {
        // A second at 30 is half an akshara: the hold goes on to 7.5.
        var rows = Rows(Mohanam with { Tempo = 30, Delivery = Delivery.LineByLine, Pattern = Pattern.Ladder.Take(1) }).Split('\n');
        Assert.Equal("1  S  R  ,  ,  | ,  ,  | ,  ,v ||", rows[1]);
    }

    [Fact]
    public void Speeds_one_after_the_other_are_announced_and_run_on_in_mid_avartana()
    {
        var text = Text(Mohanam with { Speeds = SpeedSequences.ThreeSpeeds() });
        Assert.Contains("speed 1 then speed 2 then speed 3", text, StringComparison.Ordinal);
        Assert.Contains("From here: speed 2, 60 aksharas a minute", text, StringComparison.Ordinal);

        // 2 + 3 + 4 notes are 9, 9/2 and 9/4 aksharas: 63/4 in all, 31/4 into the second avartana.
        Assert.Contains("Ends    7 3/4 aksharas into avartana 2\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ramp_is_announced_with_each_tempo()
    {
        var text = Text(Mohanam with { Tempo = new TempoRamp(60, 15, 90), CountIn = 1 });
        Assert.Contains("60 to 90 aksharas a minute, speed 1, continuous, 3 times", text, StringComparison.Ordinal);
        Assert.Contains("Time 2 of 3, speed 1, 75 aksharas a minute", text, StringComparison.Ordinal);
        Assert.Contains("Count   1 avartana before the first line", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_further_speed_that_begins_inside_the_avartana_stands_under_its_aksharas()
    {
        // Nine notes in the first speed: the second begins with akshara 2 of the second avartana.
        var rows = Text(Mohanam with { Speeds = [Speed.First, Speed.Second] }).Split('\n');
        var header = Array.FindLastIndex(rows, r => r.TrimStart().StartsWith("1   2   3   4   | 5", StringComparison.Ordinal));
        Assert.Equal("       --- --- ---   --- -", rows[header + 1]);
        var second = rows[header].IndexOf('2', StringComparison.Ordinal);
        Assert.Equal(('S', '4'), (rows[header + 2][second], rows[header + 3][second]));
    }

    [Fact]
    public void Times_that_are_alike_are_printed_once_with_how_often_they_are_sung()
    {
        var drill = Mohanam with { Delivery = Delivery.LineByLine, Repetitions = 4 };
        var text = Text(drill);
        Assert.Contains("Sing 4 times: speed 1, 60 aksharas a minute\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Time 2 of 4", text, StringComparison.Ordinal);

        // Only the lines of one time stand there.
        var once = Text(drill with { Repetitions = 1 });
        Assert.All(once.Split('\n').Where(l => l.StartsWith("1  ", StringComparison.Ordinal)), l => Assert.Contains(l.TrimStart('1'), text, StringComparison.Ordinal));
        var sheet = Sheet.Of(drill.ToScore()).Sections[0];
        Assert.Equal((4, 1, 4), (sheet.Blocks.Count, sheet.PrintedBlocks.Count, sheet.PrintedBlocks[0].Times));
    }

    [Fact]
    public void Further_speeds_and_further_tempi_of_repeated_times_say_so()
    {
        var drill = Mohanam with { Delivery = Delivery.LineByLine, Repetitions = 5, Speeds = [Speed.First, Speed.Second], Tempo = new TempoRamp(60, 10, 70) };
        Assert.Equal(
            [
                "Time 1 of 5, speed 1, 60 aksharas a minute", "Time 1 of 5, speed 2, 60 aksharas a minute",
                "Times 2 to 5 of 5: sing 4 times, with all speeds: speed 1, 70 aksharas a minute", "Then, each time: speed 2, 70 aksharas a minute",
            ],
            Sheet.Of(drill.ToScore()).Sections[0].PrintedBlocks.Select(b => b.Heading));
    }

    [Fact]
    public void A_time_signature_is_printed_in_beats_and_bars_with_do_and_without_kattai_and_raga()
    {
        // The words of solfege and of choirs; the raga's sentence and the kattais belong to the talas.
        var drill = Mohanam with { Meter = Meter.Parse("4/4"), Speeds = [Speed.Second, new Speed(3, 3)], CountIn = 1, Tonic = Tonic.Parse("C4") };
        var text = Text(drill);
        Assert.Contains("Tonic   do = C4 (261.63 Hz)\n", text, StringComparison.Ordinal);
        Assert.Contains("60 beats a minute, 2 notes a beat then 3 notes a beat", text, StringComparison.Ordinal);
        Assert.Contains("Count   1 bar before the first line", text, StringComparison.Ordinal);
        Assert.Contains("  up    S R2", text, StringComparison.Ordinal);
        foreach (var word in (string[])["akshara", "avartana", "anga", "kattai", "Kriya", "arohana", TextSheetFormat.NotTheRaga])
        {
            Assert.DoesNotContain(word, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_tala_is_printed_in_its_own_words()
    {
        var text = Text(Mohanam);
        foreach (var word in (string[])["  arohana    S R2", "  avarohana  S' D2", "60 aksharas a minute", "Kriya   I4 O O", "end of an avartana", TextSheetFormat.NotTheRaga])
        {
            Assert.Contains(word, text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("beats a minute", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("adi", "Kriya   I4 O O: clap little ring middle | clap wave | clap wave")]
    [InlineData("misra-jati jhampa", "Kriya   I7 U O: clap little ring middle index thumb little | clap | clap wave")]
    [InlineData("khanda chapu", "Kriya   clap . | clap clap .")]
    [InlineData("rupaka-chapu", "Kriya   clap clap wave")]
    public void The_head_says_what_the_hand_does(string tala, string expected) =>
        Assert.Contains(expected + "\n", Text(Mohanam with { Meter = Meter.Parse(tala) }), StringComparison.Ordinal);

    [Fact]
    public void The_head_says_which_repetition_ends_on_the_first_beat_or_that_none_does()
    {
        Assert.Contains("Ends    on the first beat, after 9 avartanas", Text(Mohanam with { Repetitions = 8 }), StringComparison.Ordinal);
        var never = Mohanam with { Pattern = Pattern.Figure(0, 1, 2, 3, 5), Delivery = Delivery.Continuous with { Fill = Fill.Anga } };
        Assert.Contains("it never ends on the first beat", Text(never), StringComparison.Ordinal);
    }

    /// <summary>Whatever the meter: a note on a beat begins in the column of that beat's number, if the sheet has a row of numbers.</summary>
    [Property(MaxTest = 200)]
    public Property Notes_on_a_beat_stand_under_its_number() => Prop.ForAll(
        (from meter in Gen.Elements<Meter>([.. Meter.Talas, .. Meter.Chapus, Meter.Parse("7/8"), Meter.Parse("12/8"), Meter.Parse("3+3+2/8")])
         from kalam in Gen.Choose(1, 4)
         from gati in Gen.Elements(3, 4, 5, 7, 9)
         select Mohanam with { Pattern = Pattern.Ladder, Meter = meter, Speeds = [new Speed(kalam, gati)] }).ToArbitrary(),
        drill =>
        {
            var section = drill.ToScore().Sections[0];
            var rows = Rows(drill).Split('\n');
            var numbers = rows[0] + " ";
            Assert.Equal(section.Notes.Count, rows.Sum(r => r.Count(char.IsAsciiLetterUpper)));
            if (numbers.Any(c => !char.IsAsciiDigit(c) && c is not (' ' or '|')))
            {
                return;
            }

            // A row of letters for each avartana, or for as many bars as the numbers count, in order.
            var (beats, written) = (drill.Meter.Beats * numbers.Split("||").Length - drill.Meter.Beats, rows.Where(r => r.Any(char.IsAsciiLetterUpper)).ToList());
            Assert.Equal(section.Notes.Select(n => (n.Onset / beats).Floor()).Distinct().Count(), written.Count);
            foreach (var note in section.Notes.Where(n => n.Onset.IsInteger))
            {
                var (row, beat) = ((int)(note.Onset / beats).Floor(), (int)(note.Onset.Numerator % beats));
                var columns = Enumerable.Range(1, numbers.Length - 1).Where(c => char.IsAsciiDigit(numbers[c]) && numbers[c - 1] == ' ').ToList();
                Assert.Equal(section.SyllableOf(note)[0], written[row][columns[beat]]);
            }
        });

    /// <summary>The rows between the head and the legend.</summary>
    private static string Rows(Drill drill) => Text(drill).Split("\n\n")[2];

    private static string Text(Drill drill)
    {
        using var stream = new MemoryStream();
        new TextSheetFormat().Write(drill.ToScore(), stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
