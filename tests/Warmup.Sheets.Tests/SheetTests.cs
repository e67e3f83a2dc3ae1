namespace Warmup.Sheets.Tests;

/// <summary>
/// Source: the rules of the letters (the svara's letter, its variant, a sign for each octave), the angas of Adi (4 + 2 + 2) and the times of the score; holds
/// and silence counted in units of the speed by hand.
/// </summary>
public class SheetTests
{
    private static Drill Written(string pattern, string scale = "S R2 G3 M1 P D2 N3 S'") => new()
    {
        Scale = Scale.Parse(scale),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.Parse("G3"),
        Title = "Drill",
    };

    private static string Signs(SheetLine line) => string.Join(' ', line.Signs.ConvertAll(s => s.Tone?.ToString() ?? s.Text));

    [Fact]
    public void A_line_has_a_sign_for_each_note_and_each_further_unit()
    {
        // S for two units, R, a rest, G for three units.
        var line = Sheet.Of(Written("[S , R - G ; ,]").ToScore()).Sections[0].Blocks[0].Lines[0];
        Assert.Equal("S , R - G , , ,", Signs(line));
        Assert.Equal(Enumerable.Range(0, 8).Select(i => (Rational)i), line.Signs.Select(s => s.At));
        Assert.Equal([0, 0, 1, 1, 2, 2, 2, 2], line.Signs.Select(s => s.Note));
        Assert.Equal(1, line.Number);
    }

    [Fact]
    public void A_breath_has_its_sign_where_it_begins()
    {
        // Adi at 60: S, R, held to 7.0, the breath from 7.0 to 8.0.
        var score = (Written("[S R]") with { Delivery = Delivery.LineByLine }).ToScore();
        var breath = Assert.Single(Sheet.Of(score).Sections[0].Blocks[0].Lines[0].Signs, s => s.Kind == SheetSignKind.Breath);
        Assert.Equal(7, breath.At);
        Assert.Equal((score.Sections[0].Breaths[0].Onset, 1, "v"), (breath.At, breath.Note, breath.Text));
    }

    [Fact]
    public void Tones_have_their_letter_their_variant_and_their_octave()
    {
        var sheet = Sheet.Of(Written("[S]").ToScore());
        var (r, low, upper) = (sheet.ToneOf(new ScaleTone(new Degree(2))), sheet.ToneOf(new ScaleTone(new Degree(7), -1)), sheet.ToneOf(new ScaleTone(default, 2)));
        Assert.Equal(("R", "2", 0, "R2"), (r.Letter, r.Variant, r.Octave, r.ToString()));
        Assert.Equal(("N", "3", -1, "N3_"), (low.Letter, low.Variant, low.Octave, low.ToString()));
        Assert.Equal(("S", "", 2, "S''"), (upper.Letter, upper.Variant, upper.Octave, upper.ToString()));

        // Solfa and numbers tell the variants apart themselves.
        var solfa = Sheet.Of(Written("[S]").ToScore(), Syllables.Solfa).ToneOf(new ScaleTone(new Degree(2)));
        Assert.Equal(("re", ""), (solfa.Letter, solfa.Variant));
    }

    [Fact]
    public void Lines_of_one_speed_and_one_time_through_are_a_block()
    {
        var score = (Written("[S R / G M]") with { Speeds = [Speed.First, Speed.Second], Repetitions = 2, Tempo = new TempoRamp(60, 10, 70) }).ToScore();
        var sheet = Sheet.Of(score);
        Assert.Equal(
            ["Time 1 of 2, speed 1, 60 aksharas a minute", "Time 1 of 2, speed 2, 60 aksharas a minute", "Time 2 of 2, speed 1, 70 aksharas a minute", "Time 2 of 2, speed 2, 70 aksharas a minute"],
            sheet.Sections[0].Blocks.Select(b => b.Heading));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], sheet.Sections[0].Blocks.SelectMany(b => b.Lines).Select(l => l.Number));
        Assert.True(sheet.HasFasterSpeeds);
        Assert.Equal("From here: speed 1, 60 aksharas a minute", Assert.Single(Sheet.Of(Written("[S]").ToScore()).Sections[0].Blocks).Heading);
    }

    [Fact]
    public void Headers_and_scales_belong_to_the_section()
    {
        var section = Sheet.Of(Written("[S]", "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S").ToScore()).Sections[0];
        Assert.Equal("S R2 G3 P D2 S'", string.Join(' ', section.Ascent));
        Assert.Equal("S' N3 D2 P M1 G3 R2 S", string.Join(' ', section.Descent));
        Assert.Equal(["Tonic", "Tuning", "Time", "Kriya", "Ends", "Length"], section.Header.Select(r => r.Label));
        Assert.Equal("I4 O O: clap little ring middle | clap wave | clap wave", section.Header.Single(r => r.Label == "Kriya").Text);
    }

    [Theory]
    [InlineData(8, true, 8, "0-8")]
    [InlineData(7, false, 6, "0-6 6-8")]
    [InlineData(5, false, 4, "0-4 4-8")]
    [InlineData(3, false, 3, "0-3 3-6 6-8")]
    [InlineData(0, false, 1, "0-1 1-2 2-3 3-4 4-5 5-6 6-7 7-8")]
    public void Rows_end_where_angas_do_as_far_as_they_fit(int most, bool isWhole, int longest, string expected)
    {
        // With three aksharas Adi's first anga is divided: 3, then its last akshara and the next anga.
        var rows = new AvartanaRows(Meter.Adi, 10, (aksharas, _) => aksharas <= most);
        Assert.Equal((isWhole, longest), (rows.HasWholeAvartanas, rows.Longest));
        Assert.Equal(expected, string.Join(' ', Enumerable.Range(0, 8).Select(a => rows.RowOf(a, 8)).Distinct().Select(r => $"{r.Start}-{r.End}")));
        Assert.Equal((16 + rows.RowOf(5, 8).Start, 16 + rows.RowOf(5, 8).End), rows.RowOf(21, 24));
        Assert.Equal([4, 6, 8, 12, 14, 16], Enumerable.Range(0, 17).Where(rows.HasBar));
    }

    [Fact]
    public void Rows_begin_with_avartanas_wherever_their_lines_begin()
    {
        // A block of a further speed begins with akshara 10, inside the second avartana of Adi; two bars of 4/4 that begin with the second bar.
        Assert.Equal((8, 16), new AvartanaRows(Meter.Adi, 10, (_, _) => true, 1, 10).RowOf(10, 20));
        var bars = new AvartanaRows(Meter.Parse("4/4"), 10, (_, _) => true, 2, 6);
        Assert.Equal(2, bars.Avartanas);
        Assert.Equal([(4, 12), (4, 12), (12, 20)], [bars.RowOf(6, 20), bars.RowOf(11, 20), bars.RowOf(12, 20)]);
        Assert.Equal((0, 4), bars.RowOf(3, 20));
        Assert.Equal(1, new AvartanaRows(Meter.Parse("4/4"), 10, (beats, _) => beats <= 7, 2).Avartanas);
    }

    [Fact]
    public void Free_rhythm_has_rows_of_a_length_and_no_bars()
    {
        var rows = new AvartanaRows(Meter.Free, 5, (_, _) => false);
        Assert.True(rows.HasWholeAvartanas);
        Assert.Equal(5, rows.Longest);
        Assert.Equal((7, 12), rows.RowOf(7, 20));
        Assert.Equal((7, 9), rows.RowOf(7, 9));
        Assert.DoesNotContain(Enumerable.Range(0, 30), rows.HasBar);
    }

    [Fact]
    public void What_makes_no_sheet_is_refused()
    {
        Assert.Throws<ArgumentNullException>(() => Sheet.Of(null!));
        Assert.Throws<ArgumentNullException>(() => new AvartanaRows(null!, 1, (_, _) => true));
        Assert.Throws<ArgumentNullException>(() => new AvartanaRows(Meter.Adi, 1, null!));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AvartanaRows(Meter.Adi, 0, (_, _) => true));
        Assert.Throws<OperationCanceledException>(() => Sheet.Of(Written("[S]").ToScore(), null, new CancellationToken(canceled: true)));
    }
}
