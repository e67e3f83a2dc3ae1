namespace Warmup.Tests;

/// <summary>
/// One worked line or more for each word. The lines are written out by hand from the words' meanings in docs/patterns.md; the extensions
/// below the tonic are the rules' own examples.
/// </summary>
public class PatternWordsTests
{
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";
    private const string Mohanam = "S R2 G3 P D2 S'";
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";
    private const string Bhairavi = "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S";
    private const string Kedaram = "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S";
    private const string Nadanamakriya = "S R1 G3 M1 P D1 N3 / N3 D1 P M1 G3 R1 S N3_";

    [Theory]
    [InlineData(Shankarabharanam, "run", "S R G M P D N S'")]
    [InlineData(Mohanam, "run.mirrored", "S' D P G R S")]
    [InlineData(Bilahari, "run.reversed", "S' N D P M G R S")]
    [InlineData(Bilahari, "run.swapped", "S R G M P D N S'")]
    [InlineData(Nadanamakriya, "run", "S R G M P D N")]
    [InlineData(Mohanam, "run.grow", "S R / S R G / S R G P / S R G P D / S R G P D S'")]
    [InlineData(Kedaram, "run.grow.take(3)", "S M / S M G / S M G M")] // literal prefixes, also inside the bend
    [InlineData(Mohanam, "ladder.mirrored.reversed", "D S' / P D S' / G P D S' / R G P D S' / S R G P D S'")] // grown from the top
    [InlineData(Mohanam, "run.windows(3)", "S R G / R G P / G P D / P D S'")]
    [InlineData(Mohanam, "[S R].windows(3)", "S R")]
    [InlineData(Mohanam, "run.pairs(2)", "S G / R P / G D / P S'")]
    [InlineData(Mohanam, "run.every-nth(2)", "S G D")]
    [InlineData(Mohanam, "run.every-nth(3)", "S P")]
    [InlineData(Mohanam, "run.notes(2 4)", "R G P")]
    [InlineData(Mohanam, "ladder.notes(4 9)", "P / P D / P D S'")]
    [InlineData(Mohanam, "run.returning(1)", "S R S G S P S D S S' S")]
    [InlineData(Mohanam, "run.returning(6)", "S S' R S' G S' P S' D S' S'")]
    [InlineData(Mohanam, "run.notes(1 3).returning(-1)", "S D_ R D_ G D_")]
    [InlineData(Mohanam, "run.each-note(2)", "S S R R G G P P D D S' S'")]
    [InlineData(Mohanam, "figure(1 2 3).each-note(3).take(1)", "S S S R R R G G G")]
    [InlineData(Mohanam, "figure(1 3).each-line(2).take(4)", "S G / S G / R P / R P")]
    [InlineData(Mohanam, "figure(1 4).repeat(2)", "S P / R D / G S' / S P / R D / G S'")]
    [InlineData(Mohanam, "figure(1 4).join", "S P R D G S'")]
    [InlineData(Mohanam, "run.split(4)", "S R G P / D S'")]
    [InlineData(Mohanam, "figure(1 4).last-first", "G S' / R D / S P")]
    [InlineData(Mohanam, "figure(1 4).rotate(1)", "R D / G S' / S P")]
    [InlineData(Mohanam, "figure(1 4).rotate(-1)", "G S' / S P / R D")]
    [InlineData(Mohanam, "figure(1 4).rotate(7)", "R D / G S' / S P")]
    [InlineData(Mohanam, "figure(1 4).order(3 1 2)", "G S' / S P / R D")]
    [InlineData(Mohanam, "figure(1 4).order(2 1)", "R D / S P / G S'")]
    [InlineData(Mohanam, "figure(1 4).order(4 2 1 3)", "R D / S P / G S'")]
    [InlineData(Mohanam, "figure(1 4).drop(3)", "")]
    [InlineData(Mohanam, "figure(1 4).alternate(figure(4 1))", "S P / P S / R D / D R / G S' / S' G")]
    [InlineData(Mohanam, "figure(1 4).alternate([S])", "S P / S / R D / G S'")]
    [InlineData(Mohanam, "run.weave(run.reversed)", "S S' R D G P P G D R S' S")]
    [InlineData(Mohanam, "figure(1 4).weave([S R G / S])", "S S P R G / R S D / G S'")]
    [InlineData(Mohanam, "run.transposed(1)", "R G P D S' R'")]
    [InlineData(Mohanam, "run.transposed(-2)", "P_ D_ S R G P")]
    [InlineData(Mohanam, "run.mirrored.transposed(1)", "R' S' D P G R")]
    [InlineData(Mohanam, "run.transposed(1).mirrored", "D P G R S D_")] // inside a mirrored pattern forward is down
    [InlineData(Mohanam, "run.above(2)", "S R G P D S' R' G'")]
    [InlineData(Mohanam, "run.below(2)", "P_ D_ S R G P D S'")]
    [InlineData(Mohanam, "ladder.below(2).take(2)", "P_ D_ / P_ D_ S")]
    [InlineData(Mohanam, "figure(1 2).below(2).take(3)", "P_ D_ / D_ S / S R")]
    [InlineData(Mohanam, "run.span(1 -1)", "R G P D")]
    [InlineData(Mohanam, "run.mirrored.below(2).notes(5 9)", "R S D_ P_")]
    [InlineData(Bilahari, "run.mirrored.below(3).notes(8 11)", "S N_ D_ P_")] // going down below the tonic takes the descent
    [InlineData(Bilahari, "run.below(2).notes(1 3)", "P_ D_ S")] // coming up takes the ascent
    [InlineData(Mohanam, "figure(1 2 3 1).ends.take(2)", "S S / R R")]
    [InlineData(Mohanam, "figure(-1 1).take(2)", "D_ S / S R")]
    public void Worked_lines(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Scale.Parse(scale)).ToLetters());

    private static readonly (string Pattern, string Lines)[] AtTheEnds =
    [
        ("figure(1 4).rotate(0)", "S P / R D / G S'"),
        ("figure(1 4).rotate(3)", "S P / R D / G S'"),
        ("figure(1 4).rotate(-4)", "G S' / S P / R D"),
        ("figure(1 4).drop(9).rotate(2)", ""),
        ("figure(1 4).drop(2)", "G S'"),
        ("figure(1 4).take(3)", "S P / R D / G S'"),
        ("figure(1 4).take(9)", "S P / R D / G S'"),
        ("figure(1 4).order(2 1 3 4)", "R D / S P / G S'"),
        ("figure(1 4).order(1)", "S P / R D / G S'"),
        ("run.windows(5)", "S R G P D / R G P D S'"),
        ("run.windows(6)", "S R G P D S'"), // as wide as the line
        ("run.windows(7)", "S R G P D S'"),
        ("run.windows(1)", "S / R / G / P / D / S'"),
        ("run.split(6)", "S R G P D S'"),
        ("run.split(3)", "S R G / P D S'"),
        ("run.split(5)", "S R G P D / S'"),
        ("run.notes(6 9)", "S'"),
        ("run.notes(7 9)", ""), // no line is left
        ("run.notes(1 1)", "S"),
        ("(run + [S R]).notes(3 6)", "G P D S'"),
        ("run.every-nth(5)", "S S'"),
        ("run.every-nth(6)", "S"),
        ("run.every-nth(1)", "S R G P D S'"),
        ("[S].grow", "S"),
        ("[S R].grow", "S R"),
        ("[S].ends", "S"),
        ("[S R].ends", "S R"),
        ("[S].join", "S"),
        ("[S].there-and-back", "S"),
        ("[S].backwards", "S"),
        ("[S R].alternate([G] + [P] + [D])", "S R / G / P / D"),
        ("([G] + [P] + [D]).alternate([S R])", "G / S R / P / D"),
        ("[S].weave([R G P])", "S R G P"),
        ("[R G P].weave([S])", "R S G P"),
        ("[S R].weave([G P / D])", "S G R P / D"),
        ("[S].repeat(1)", "S"),
        ("[S R].each-note(1)", "S R"),
        ("[S R].each-line(1)", "S R"),
        ("run.drop(1).returning(1)", ""),
        ("figure(1 6)", "S S'"), // as wide as the scale
        ("run.last-first", "S R G P D S'"),
        ("empty", ""),
        ("empty.join", ""),
        ("[D].returning(1)", "D S"),
        ("[S S R].returning(1)", "S S R S"), // the place itself is sung once
    ];

    [Fact]
    public void Worked_lines_at_the_ends_of_the_ranges() => Assert.All(
        AtTheEnds, row => Assert.Equal((row.Pattern, row.Lines), (row.Pattern, Pattern.Parse(row.Pattern).Expand(Scale.Parse(Mohanam)).ToLetters())));

    private static readonly (string Pattern, string Lines)[] LengthsAtTheEnds =
    [
        ("[S R G].rhythm(1 2)", "S R , G"),
        ("[S R G M].rhythm(2 1)", "S , R G , M"),
        ("[S R G].rhythm(3)", "S , , R , , G , ,"),
        ("[S , R].rhythm(2 3)", "S , , , R , ,"),
        ("[S R / G M].rhythm(2 1)", "S , R / G , M"), // each line from the first number again
        ("[S R G M P].fill(5)", "S R G M P"),
        ("[S R G M P].fill(4)", "S R G M P , , ,"),
        ("[S].fill(64)", "S" + string.Concat(Enumerable.Repeat(" ,", 63))),
        ("[S - -].fill(4)", "S , - -"), // the silence counts in the line's length
        ("[S R].hold(1).rest(1)", "S R , -"),
        ("[S - R -].stretch(2)", "S , - - R , - -"),
        ("[S - R].each-note(3)", "S S S - R R R"),
        ("[S - R - -].ends", "S R - -"),
        ("[S - R - G -].every-nth(2)", "S - G -"),
        ("[S , R].returning(3)", "S , G , R G"),
        ("[S R - - / G].join", "S R - - G"),
        ("[S - R].weave([G , -])", "S - G , - R"),
    ];

    [Fact]
    public void Lengths_and_silences_at_the_ends_of_the_ranges() => Assert.All(LengthsAtTheEnds, row => Assert.Equal(
        (row.Pattern, row.Lines), (row.Pattern, string.Join(" / ", Pattern.Parse(row.Pattern).Expand(Scale.Parse(Shankarabharanam)).Lines.ConvertAll(l => l.ToNotation())))));

    [Theory]
    [InlineData("[S R G M / R G M P]", "S R G M / R G M P")]
    [InlineData("[s r g m]", "S R G M")]
    [InlineData("[ S R G M | P , || D ; N' , N_ ]", "S R G M P , D , , N' , N_")]
    [InlineData("[S - R , - - G]", "S - R , - - G")]
    [InlineData("[S - ,]", "S - -")]
    [InlineData("[1 2 3 8 -1]", "S R G S' N_")]
    [InlineData("[1 , 9 -]", "S , R' -")]
    [InlineData("[S R G M].hold(2)", "S R G M , ,")]
    [InlineData("[S R G M P].fill(8)", "S R G M P , , ,")]
    [InlineData("[S R G M].fill(4)", "S R G M")]
    [InlineData("[S R G].stretch(2)", "S , R , G ,")]
    [InlineData("[S , R , , ,].shrink(2)", "S R ,")]
    [InlineData("[S R / G].rest(2)", "S R - - / G - -")]
    [InlineData("[S R - G].reversed", "G - R S")]
    [InlineData("[S R G - -].reversed", "G R S - -")]
    [InlineData("[S - R].each-note(2)", "S S - R R")]
    [InlineData("[S R , G].returning(1)", "S R , S , G S")]
    public void Lengths_and_silences(string pattern, string expected)
    {
        var lines = Pattern.Parse(pattern).Expand(Scale.Parse(Shankarabharanam)).Lines;
        Assert.Equal(expected, string.Join(" / ", lines.ConvertAll(l => l.ToNotation())));
    }

    [Fact]
    public void Parts_of_a_unit_are_exact()
    {
        var line = Assert.Single(Pattern.Parse("[S R , G].stretch(3 2).shrink(3)").Expand(Scale.Parse(Mohanam)).Lines.ToArray());
        Assert.Equal([new Rational(1, 2), Rational.One, new Rational(1, 2)], line.Notes.ConvertAll(n => n.Length).ToArray());
        Assert.Equal(2, line.Units);
    }

    [Theory]
    [InlineData(Bhairavi, "[P D N / N D P]", "P D2 N2 / N2 D1 P")] // rising takes the ascent's form, falling the descent's
    [InlineData(Bhairavi, "[P D D P]", "P D1 D1 P")] // a repeated note waits for the direction
    [InlineData(Bhairavi, "[G M P D]", "G2 M1 P D2")] // the last note takes the form of the run that arrives
    [InlineData(Bilahari, "[S' N D P]", "S' N3 D2 P")]
    [InlineData(Bilahari, "[D N S']", "D2 N3 S'")] // the ascent lacks N: it comes from the descent, and a finding says so
    [InlineData(Mohanam, "[S R G P D S' R']", "S R2 G3 P D2 S' R2'")]
    [InlineData(Nadanamakriya, "[S R G / G R S N_]", "S R1 G3 / G3 R1 S N3_")]
    public void Written_letters_take_the_form_of_their_direction(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Scale.Parse(scale)).ToTones());

    [Fact]
    public void A_written_letter_that_only_the_other_list_has_is_taken_from_there_and_a_finding_says_so()
    {
        var finding = Assert.Single(Pattern.Parse("[D N S']").Expand(Scale.Parse(Bilahari)).Findings.ToArray());
        Assert.Equal(FindingCode.NoteMissingFromList, finding.Code);
        Assert.Contains("no N in its ascent", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scale_without_a_written_letter_refuses_the_line_by_the_letter()
    {
        Assert.False(Pattern.Parse("[S R G M]").TryExpand(Catalogue.Default.Read("Mohanam"), out _, out var refusal));
        Assert.Contains("Mohanam has no M", refusal!.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[S R G M].mirrored", "S' N D P")]
    [InlineData("[S R G M].transposed(1)", "R G M P")]
    [InlineData("[S N_ S].mirrored", "S' R' S'")]
    [InlineData("[1 2 -1].mirrored", "S' N R'")]
    public void Written_lines_move_and_mirror_with_the_span(string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Scale.Parse(Shankarabharanam)).ToLetters());

    [Theory]
    [InlineData("figure(1 2 3).take(2).sung(a e)", "a e a / a e a")]
    [InlineData("figure(1 2 3).take(3).sung-by-line(ma me mi)", "ma ma ma / me me me / mi mi mi")]
    [InlineData("[S R].sung(brr)", "brr brr")]
    [InlineData("[S R].sung(ఆ, ఈ)", "ఆ ఈ")]
    public void Sung_words_go_note_by_note_or_line_by_line(string pattern, string expected)
    {
        var lines = Pattern.Parse(pattern).Expand(Scale.Parse(Shankarabharanam)).Lines;
        Assert.Equal(expected, string.Join(" / ", lines.ConvertAll(l => string.Join(' ', l.Notes.ConvertAll(n => n.Sung!)))));
    }

    [Fact]
    public void Silences_pass_time_and_sung_words_reach_the_score()
    {
        var drill = new Drill
        {
            Scale = Scale.Parse(Shankarabharanam), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Parse("[S R - - G ,].sung(a e)"),
        };
        var section = drill.ToScore().Sections[0];
        var notes = section.Notes;
        Assert.Equal([0, 1, 4], notes.ConvertAll(n => (int)n.Onset.Numerator).ToArray());
        Assert.Equal([1, 1, 2], notes.ConvertAll(n => (int)n.Length.Numerator).ToArray());
        Assert.Equal(["a", "e", "a"], section.Sung().ToArray());
    }
}
