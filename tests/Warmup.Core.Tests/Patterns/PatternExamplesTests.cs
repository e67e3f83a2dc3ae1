namespace Warmup.Tests;

/// <summary>Worked lines of common practice, written out by hand; they are the rules' own examples, not this library's output.</summary>
public class PatternExamplesTests
{
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";
    private const string Mohanam = "S R2 G3 P D2 S'";
    private const string Garudadhvani = "S R2 G3 M1 P D2 N3 S' / S' D2 P G3 R2 S";
    private const string Kedaram = "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S";
    private const string Gowla = "vakra: S R1 M1 P N3 S' / S' N3 P M1 R1 G3 M1 R1 S";
    private const string Nadanamakriya = "S R1 G3 M1 P D1 N3 / N3 D1 P M1 G3 R1 S N3_";
    private const string Punnagavarali = "N2_ S R1 G2 M1 P D1 N2 / N2 D1 P M1 G2 R1 S N2_";

    [Theory]
    [InlineData(Shankarabharanam, "ladder", "S R / S R G / S R G M / S R G M P / S R G M P D / S R G M P D N / S R G M P D N S'")]
    [InlineData(Mohanam, "ladder", "S R / S R G / S R G P / S R G P D / S R G P D S'")]
    [InlineData(Mohanam, "ladder.reversed", "R S / G R S / P G R S / D P G R S / S' D P G R S")]
    [InlineData(Mohanam, "ladder.ends", "S R / S G / S P / S D / S S'")]
    [InlineData(Bilahari, "ladder", "S R / S R G / S R G P / S R G P D / S R G P D S'")]
    [InlineData(Bilahari, "ladder.reversed", "R S / G R S / M G R S / P M G R S / D P M G R S / N D P M G R S / S' N D P M G R S")]
    [InlineData(Bilahari, "ladder.backwards", "R S / G R S / P M G R S / D P M G R S / S' N D P M G R S")]
    [InlineData(Bilahari, "ladder.there-and-back", "S R S / S R G R S / S R G P M G R S / S R G P D P M G R S / S R G P D S' N D P M G R S")]
    [InlineData(Bilahari, "figure(1 2 3 4 3 2 1 2 3 2 1 2 3 4).take(1)", "S R G P G R S R G R S R G P")]
    [InlineData(Garudadhvani, "ladder.take(3).there-and-back", "S R S / S R G R S / S R G M G R S")]
    [InlineData(Kedaram, "ladder", "S M G M / S M G M P / S M G M P N / S M G M P N S'")]
    [InlineData(Gowla, "ladder.reversed.take(3)", "R S / M R G M R S / P M R G M R S")]
    [InlineData(Nadanamakriya, "ladder", "S R / S R G / S R G M / S R G M P / S R G M P D / S R G M P D N")]
    [InlineData(Punnagavarali, "ladder", "S R / S R G / S R G M / S R G M P / S R G M P D / S R G M P D N")]
    [InlineData(Mohanam, "figure(1 2 3 4)", "S R G P / R G P D / G P D S'")]
    [InlineData(Mohanam, "figure(1 2 3 4).up-down", "S R G P / R G P D / G P D S' / S' D P G / D P G R / P G R S")]
    [InlineData(Mohanam, "ladder.mirrored", "S' D / S' D P / S' D P G / S' D P G R / S' D P G R S")]
    public void Worked_lines(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Scale.Parse(scale)).ToLetters());

    [Theory]
    [InlineData("S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S", "ladder.drop(4).take(1).there-and-back", "S R2 G2 M1 P D1 P M1 G2 R2 S")] // Bhairavi
    [InlineData("S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S", "ladder.drop(5).take(1)", "S R2 G2 M1 P D2 N2")]
    [InlineData("vakra: S R2 M1 P N3 S' / S' N2 D2 N2 P M1 G2 R2 S", "ladder.mirrored.take(1).there-and-back", "S' N3 S'")] // Kapi
    [InlineData("vakra: S R2 M1 P N3 S' / S' N2 D2 N2 P M1 G2 R2 S", "ladder.drop(3).take(1).there-and-back", "S R2 M1 P N2 P M1 G2 R2 S")]
    [InlineData("S R2 G2 M1 P D2 N3 S' / S' N2 D1 P M1 G2 R2 S", "ladder.drop(4).take(1).there-and-back", "S R2 G2 M1 P D1 P M1 G2 R2 S")] // melodic minor: G A-flat G
    [InlineData("S R2 G2 M1 P D2 N3 S' / S' N2 D1 P M1 G2 R2 S", "ladder.mirrored.take(1).there-and-back", "S' N3 S'")] // C B C
    public void A_turning_note_takes_the_form_of_the_run_that_leaves_it(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Pattern.Parse(pattern).Expand(Scale.Parse(scale)).ToTones());

    [Theory]
    [InlineData(Shankarabharanam, "ladder", 7, 35)]
    [InlineData(Shankarabharanam, "ladder.ends", 7, 14)]
    [InlineData(Mohanam, "ladder", 5, 20)]
    [InlineData(Mohanam, "ladder.ends", 5, 10)]
    [InlineData(Bilahari, "ladder", 5, 20)]
    [InlineData(Bilahari, "ladder.reversed", 7, 35)]
    [InlineData(Bilahari, "ladder.backwards", 5, 24)]
    [InlineData(Bilahari, "ladder.there-and-back", 5, 39)]
    [InlineData(Bilahari, "figure(1 2 3 4 3 2 1 2 3 2 1 2 3 4)", 3, 42)]
    [InlineData(Bilahari, "figure(1 2 3 4 3 2 1 2 3 2 1 2 3 4).mirrored", 5, 70)]
    public void Counts(string scale, string pattern, int lines, int notes)
    {
        var expansion = Pattern.Parse(pattern).Expand(Scale.Parse(scale));
        Assert.Equal((lines, notes), (expansion.Lines.Count, expansion.NoteCount));
    }

    [Fact]
    public void A_turning_note_that_the_descent_lacks_stays_and_a_finding_says_so()
    {
        var expansion = Pattern.Parse("ladder.take(3).there-and-back").Expand(Scale.Parse(Garudadhvani));
        var finding = Assert.Single(expansion.Findings.ToArray());
        Assert.Equal(FindingCode.NoteMissingFromList, finding.Code);
        Assert.Contains("M1", finding.Message, StringComparison.Ordinal);
    }

    // Nadanamakriya rises S R G M P D N and falls N D P M G R S N_: its own lists and no further.
    [Theory]
    [InlineData("figure(-1 1)", "does not go below its lowest note, and the pattern needs a note one step below the tonic")]
    [InlineData("run.below(2)", "does not go below its lowest note, and the pattern needs a note two steps below the tonic")]
    [InlineData("run.mirrored.below(2)", "does not go below its lowest note, and the pattern needs a note two steps below the tonic")] // N_ it has
    [InlineData("run.above(1)", "does not go beyond its highest note, and the pattern needs a note seven steps above the tonic")]
    [InlineData("run.mirrored.above(1)", "does not go beyond its highest note, and the pattern needs a note seven steps above the tonic")]
    [InlineData("figure(1 2 9)", "the figure goes eight steps above the note it starts from, and Nadanamakriya has only six steps from the first note to the last")]
    [InlineData("figure(1 8)", "the figure goes seven steps above the note it starts from, and Nadanamakriya has only six steps from the first note to the last")]
    [InlineData("run.span(4 -4)", "in Nadanamakriya the pattern would end two steps before it begins")]
    [InlineData("[S' N]", "Nadanamakriya has no S', and the written line needs it")]
    [InlineData("[S D_]", "Nadanamakriya has no D_, and the written line needs it")]
    public void Going_beyond_a_scale_without_an_upper_tonic_names_the_scale_and_the_note(string pattern, string message)
    {
        var scale = new Scale("Nadanamakriya", Scale.Parse(Nadanamakriya).Ascent, Scale.Parse(Nadanamakriya).Descent);
        var refused = Assert.Throws<PatternException>(() => Pattern.Parse(pattern).Expand(scale));
        Assert.Contains("Nadanamakriya", refused.Message, StringComparison.Ordinal);
        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("run.below(0)", "S R G M P D N")]
    [InlineData("run.mirrored.below(1)", "N D P M G R S N_")]
    [InlineData("figure(1 7)", "S N")] // as wide as the scale: one row
    [InlineData("run.span(3 -3)", "M")] // both ends on one note
    [InlineData("ladder.span(3 -3)", "")]
    [InlineData("[N_ S R]", "N_ S R")]
    [InlineData("run.drop(1).returning(20)", "")] // without a note the scale need not have the place
    public void What_just_fits_a_scale_without_an_upper_tonic_is_sung(string pattern, string lines) =>
        Assert.Equal(lines, Pattern.Parse(pattern).Expand(Scale.Parse(Nadanamakriya)).ToLetters());
}
