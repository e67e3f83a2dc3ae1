namespace Warmup.Tests;

/// <summary>
/// Lines that are written out, in letters, names and numbers: what docs/patterns.md says of each sign, up to the ends of the ranges. Each test
/// goes through a table, because each row is quick.
/// </summary>
public class WrittenLinesTests
{
    private const string Bhairavi = "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S";
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";
    private const string Punnagavarali = "N2_ S R1 G2 M1 P D1 N2 / N2 D1 P M1 G2 R1 S N2_";

    private static readonly (string Text, string Printed)[] Alike =
    [
        ("Sa Ri Ga Ma Pa Dha Ni", "[S R G M P D N]"),
        ("SA RI GA MA PA DHA NI", "[S R G M P D N]"),
        ("sa re ga ma pa da ni", "[S R G M P D N]"),
        ("do re mi fa so la ti", "[S R G M P D N]"),
        ("do re mi fa sol la ti", "[S R G M P D N]"),
        ("DO RE MI", "[S R G]"),
        ("Sa R Ga M", "[S R G M]"), // a name says the same in any case, and a letter beside it
        ("sa R ga M", "[S R G M]"),
        ("s p d n", "[S P D N]"),
        ("S", "[S]"),
        ("-1 1", "[-1 1]"),
        ("-28 29", "[-28 29]"),
        ("1|2||3", "[1 2 3]"),
        ("[S'' N__ S_ N_ D' P'' S'''']", "[S'' N__ S_ N_ D' P'' S'''']"),
        ("[S____ N____]", "[S____ N____]"), // four octaves below, and just above that
        ("[S\u2019 R\u2019\u2019]", "[S' R'']"), // the apostrophe of a text program
        ("[S'\u2019]", "[S'']"),
        ("s r S", "[S R S']"), // a capital after small letters is the upper tonic
        ("p S n", "[P S' N]"),
        ("[S ; ; , R]", "[S , , , , , R]"),
        ("[S - ; , R]", "[S - - - - R]"),
        ("[S - R ,]", "[S - R ,]"), // after a note '-' is over
        ("[S - / R ,]", "[S - / R ,]"),
        ("[1 - -1]", "[1 - -1]"), // a silence, then the note below the tonic
        ("[1 --1]", "[1 - -1]"),
        ("[ S | R || G ]", "[S R G]"),
    ];

    private static readonly (string Text, int Column, string Expected)[] Faults =
    [
        ("[S R / / G]", 8, "a written line has no notes"),
        ("[]", 2, "a written line has no notes"),
        ("[S /]", 5, "a written line has no notes"),
        ("[S / , R]", 6, "',' holds the note before it, and the line has no note yet"),
        ("[S / ; R]", 6, "';' holds the note before it"),
        ("[S / - R]", 6, "'-' is a silence after a note"),
        ("[1 30]", 4, "a place must be between -28 and 29, not '30'"),
        ("[1 -29]", 4, "a place must be between -28 and 29, not '-29'"),
        ("[1 99999999999]", 4, "a place must be between -28 and 29, not '99999999999'"),
        ("[1 00 2]", 4, "what counted from 0 is now 2 1 3"),
        ("[1 -0]", 4, "there is no 0"),
        ("[1 S]", 4, "letters and numbers are mixed"),
        ("[S -1]", 4, "letters and numbers are mixed"),
        ("[S R'''']", 4, "'R''''' lies too far away"),
        ("[S N_____]", 4, "at most 28 places above or below the tonic"),
        ("[S R_']", 4, "goes up and down at once; write ' for each octave up, or _ for each octave down"),
        ("[S R'_]", 4, "goes up and down at once"),
        ("[S R_\u2019]", 4, "goes up and down at once"),
        ("[S R__']", 4, "goes up and down at once"),
        ("s r S_", 5, "goes up and down at once"), // the upper tonic by its capital
        ("[S R1]", 4, "'R1' has the number of a variant"),
        ("[Sa Ri2]", 5, "'Ri2' has the number of a variant"),
        ("[S R x]", 6, "unexpected 'x'"),
        ("[S r G]", 4, "mixes small and capital letters"),
        ("[s R]", 4, "mixes small and capital letters"),
        ("[r g S]", 6, "mixes small and capital letters"), // the other tradition's S, for no small s or p was written
        ("S R .G", 5, "write G_ for the lower octave, G' for the upper"),
        ("S R .g", 5, "write G_ for the lower octave, G' for the upper"),
        ("S G. R", 3, "write G_ for the lower octave, G' for the upper"),
        ("S R .Ni", 5, "write N_ for the lower octave, N' for the upper"),
        (".G S", 1, "write G_ for the lower octave, G' for the upper"), // at the very beginning too
        ("S R . .", 5, "write N_ for the lower octave, N' for the upper"),
        ("sa ri.ga", 4, "a dot beside a letter"),
        ("S R .ends", 5, "put the lines in brackets: [S R G M].ends"),
        ("S R.up-down", 3, "put the lines in brackets: [S R G M].up-down"),
        ("1 2 .ends", 5, "put the lines in brackets: [S R G M].ends"),
        ("[S" + string.Concat(Enumerable.Repeat(" ;", 31)) + " , ,]", 68, "a written note must last 1 to 64 units, and the silence after it at most 64"),
    ];

    private static readonly (string Scale, string Text, string Tones)[] Forms =
    [
        (Bhairavi, "[D]", "D2"), // alone it stands in the ascent
        (Bhairavi, "[D D]", "D2 D2"),
        (Bhairavi, "[P D D]", "P D2 D2"), // the last note takes the form of the run that arrives
        (Bhairavi, "[N D D]", "N2 D1 D1"),
        (Bhairavi, "[D D P]", "D1 D1 P"), // a repeated note waits for the direction
        (Bhairavi, "[D D N]", "D2 D2 N2"),
        (Bhairavi, "[D P D N]", "D1 P D2 N2"),
        (Bhairavi, "[D_ S D_]", "D2_ S D1_"),
        (Bhairavi, "[D].swapped", "D1"),
        (Bhairavi, "[D D P].swapped", "D2 D2 P"),
        (Bilahari, "[S R G M P D N S'].swapped", "S R2 G3 M1 P D2 N3 S'"), // the whole line from the descent
        (Bilahari, "[1 2 3 4 5 6]", "S R2 G3 P D2 S'"), // numbers count the notes of the ascent
        (Bilahari, "[1 2 3 4 5 6 7 8].swapped", "S R2 G3 M1 P D2 N3 S'"),
        (Bilahari, "[1 -1 -2 7]", "S D2_ P_ R2'"),
        (Bilahari, "[S D P G]", "S D2 P G3"),
        (Bilahari, "[N__ S_]", "N3__ S_"),
        (Punnagavarali, "[S N_ S]", "S N2_ S"),
    ];

    [Fact]
    public void Ways_of_writing_are_read_alike_and_printed_in_one_form() => Assert.All(Alike, row =>
    {
        Assert.Equal((row.Text, row.Printed), (row.Text, Pattern.Parse(row.Text).ToString()));
        Assert.Equal(Pattern.Parse(row.Text), Pattern.Parse(row.Printed));
    });

    [Fact]
    public void A_fault_is_told_at_its_place() => Assert.All(Faults, row =>
    {
        Assert.False(Pattern.TryParse(row.Text, out _, out var error), row.Text);
        Assert.Contains(row.Expected, error!.Message, StringComparison.Ordinal);
        Assert.Equal((row.Text, row.Column), (row.Text, error.Column));
    });

    [Fact]
    public void Letters_take_the_form_of_their_direction_and_numbers_count_places() => Assert.All(
        Forms, row => Assert.Equal((row.Text, row.Tones), (row.Text, Pattern.Parse(row.Text).Expand(Scale.Parse(row.Scale)).ToTones())));

    [Fact]
    public void A_note_and_its_silence_last_64_units_at_most()
    {
        var commas = string.Concat(Enumerable.Repeat(" ,", 63));
        var dashes = string.Concat(Enumerable.Repeat(" -", 64));
        Assert.Equal(128, Pattern.Parse($"[S{commas}{dashes}]").Expand(Scale.Parse(Bilahari)).Lines[0].Units);
        Assert.False(Pattern.TryParse($"[S{commas} ,]", out _, out _));
        Assert.False(Pattern.TryParse($"[S{dashes} -]", out _, out _));
        Assert.False(Pattern.TryParse($"[S{dashes} ,]", out _, out _));
    }

    [Fact]
    public void Lines_of_10000_characters_are_the_longest()
    {
        Assert.Equal(Pattern.Parse("[S]"), Pattern.Written("S".PadRight(10_000)));
        var error = Assert.Throws<WarmupFormatException>(() => Pattern.Written("S".PadRight(10_001))).Error;
        Assert.Equal((10_001, "written lines must be at most 10000 characters long, not 10001"), (error.Column, error.Message));
        Assert.Equal(Pattern.Run, Pattern.Parse("run".PadRight(10_000)));
        Assert.False(Pattern.TryParse("run".PadRight(10_001), out _, out error!));
        Assert.Equal((10_001, "a pattern must be at most 10000 characters long, not 10001"), (error.Column, error.Message));
    }

    [Fact]
    public void A_letter_that_neither_list_has_and_one_beyond_the_highest_octave_refuse_the_line()
    {
        var mohanam = Scale.Parse("S R2 G3 P D2 S'");
        Assert.False(Pattern.Parse("[S N_]").TryExpand(mohanam, out _, out var refusal));
        Assert.Equal(FindingCode.PatternRefused, refusal.Code);
        Assert.EndsWith("has no N_, and the written line needs it", refusal.Message, StringComparison.Ordinal);
        Assert.False(Pattern.Parse("[S G''].transposed(24).transposed(24)").TryExpand(mohanam, out _, out refusal));
        Assert.Equal(FindingCode.BeyondScale, refusal.Code);
        Assert.EndsWith("does not go as far as the written line's G''", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_of_the_other_list_is_told_with_the_list_that_lacks_it()
    {
        static string Message(string scale, string text) => Assert.Single(Pattern.Parse(text).Expand(Scale.Parse(scale)).Findings.ToArray()).Message;
        Assert.EndsWith("has no N in its ascent: the written line takes it from the other list", Message(Bilahari, "[D N S']"), StringComparison.Ordinal);
        const string Garudadhvani = "S R2 G3 M1 P D2 N3 S' / S' D2 P G3 R2 S";
        Assert.EndsWith("has no M_ in its descent: the written line takes it from the other list", Message(Garudadhvani, "[P_ M_ G_]"), StringComparison.Ordinal);
    }
}
