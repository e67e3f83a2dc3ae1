namespace Warmup.Tests;

/// <summary>
/// Lines turned round, note by note. What is a run is filled anew from the other list, what is a leap keeps its notes, a silence stays between
/// the same two notes, and the one at the line's end stays at the end. The lines are written out by hand after those four sentences.
/// </summary>
public class BackwardsTests
{
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";
    private const string Bilahari = "S R2 G3 P D2 S' / S' N3 D2 P M1 G3 R2 S";

    // Five notes up, all seven down, and between its S and G the descent has a note that the ascent has not.
    private const string Leaping = "S G3 P N3 S' / S' N3 D2 P M1 G3 R2 S";

    // Each line with silences of 0, 1, 2 ... units after its notes, and its runs left as they are.
    private static readonly Combinator Paused = new("paused", "each note with a longer silence after it", input => input.Lines.ConvertAll(
        line => new Line(line.Notes.Select((n, i) => n with { Rest = i }).ToValueList())));

    private static readonly PatternLanguage Language = PatternLanguage.Standard.With(Paused);

    private static Expansion Expand(string pattern, string scale) => Language.Parse(pattern).Expand(Scale.Parse(scale));

    private static string Notation(string pattern, string scale) => string.Join(" / ", Expand(pattern, scale).Lines.ConvertAll(l => l.ToNotation()));

    [Theory]
    [InlineData("run.each-note(2).backwards", "S' S' N D D P P M G G R R S S")] // nothing lies between a note and its repetition
    [InlineData("run.every-nth(2).backwards", "D G S")] // what is left are leaps
    [InlineData("run.ends.backwards", "S' S")]
    [InlineData("run.notes(3 5).backwards", "D P M G")] // part of a run is a run
    [InlineData("(run.notes(1 3) + run.notes(4 6)).join.backwards", "S' N D P G R S")] // from one line to the next is a leap: no M
    [InlineData("run.reversed.backwards", "S R G P D S'")] // a run over the descent is filled from the ascent
    [InlineData("run.reversed.ends.backwards", "S S'")]
    [InlineData("figure(1 4).backwards", "P S / D R / S' G")] // a figure has no runs
    [InlineData("run.there-and-back.backwards", "S R G P D S' N D P M G R S")] // a run up and a run down, each from the other list
    [InlineData("run.returning(1).backwards", "S S' S D S P S G S R S")]
    public void Runs_are_filled_anew_and_leaps_keep_their_notes(string pattern, string expected) =>
        Assert.Equal(expected, Expand(pattern, Bilahari).ToLetters());

    [Theory]
    [InlineData("[S].weave(run).backwards", "S' N D P M G S S")] // S G is woven with the other S before it; G P N S' is what is left of the run
    [InlineData("run.weave([S]).backwards", "S' N D P M G S S")]
    [InlineData("run.weave(run).backwards", "S' S' N N P P G G S S")] // all woven: nothing lies between
    [InlineData("run.weave([S S S S S]).backwards", "S S' S N S P S G S S")]
    public void Between_woven_notes_nothing_lies_and_what_is_left_of_a_run_stays_one(string pattern, string expected) =>
        Assert.Equal(expected, Expand(pattern, Leaping).ToLetters());

    [Theory]
    [InlineData("[S R - G].backwards", "G - R S")]
    [InlineData("[S R - G , - -].backwards", "G , - R S - -")]
    [InlineData("[S -].backwards", "S -")]
    [InlineData("run.notes(1 4).paused.backwards", "M - - G - R S - - -")] // silences 0 1 2 between the notes, 3 at the end
    [InlineData("run.notes(1 2).paused.backwards", "R S -")]
    [InlineData("run.notes(1 4).paused.reversed", "M - - G - R S - - -")]
    [InlineData("run.notes(1 3).rest(2).there-and-back", "S R G R S - -")]
    [InlineData("[S - R].rest(2).there-and-back", "S - R - S - -")]
    public void A_silence_stays_between_its_two_notes(string pattern, string expected) =>
        Assert.Equal(expected, Notation(pattern, Shankarabharanam));

    [Theory]
    [InlineData(Shankarabharanam, "run.notes(1 4).rhythm(2 1).backwards", "M G , R S ,")] // as many notes: each keeps its length
    [InlineData(Shankarabharanam, "run.notes(1 4).rhythm(1 2 3 4).backwards", "M , , , G , , R , S")]
    [InlineData(Bilahari, "run.rhythm(2 1).backwards", "S' N , D , P , M , G , R , S ,")] // more notes: those between are as long as the second note, D
    [InlineData(Bilahari, "run.paused.backwards", "S' N D P M G R S - - - - -")] // and no silence has its place any more
    [InlineData(Bilahari, "run.reversed.rhythm(1 2).backwards", "S , R G P D S'")] // fewer notes, as long as R
    public void Notes_of_a_run_keep_their_lengths_where_they_are_as_many(string scale, string pattern, string expected) =>
        Assert.Equal(expected, Notation(pattern, scale));

    [Fact]
    public void Notes_that_are_new_in_a_run_have_no_word_of_their_own()
    {
        static string?[] Sung(string pattern, string scale) => [.. Expand(pattern, scale).Lines[0].Notes.Select(n => n.Sung)];
        Assert.Equal(["e", "i", "a", "e", "i", "a"], Sung("run.notes(1 6).sung(a i e).backwards", Shankarabharanam));
        Assert.Equal(["e", null, null, null, null, null, null, "a"], Sung("run.sung(a e).backwards", Bilahari));
    }

    [Theory]
    [InlineData("S R2 G3 M1 P D2 N3 S' / S' D2 P G3 R2 S", "ladder.take(3).there-and-back", "has no M in its descent: M1 stays as it is and the line goes on from the next note of the descent")]
    [InlineData(Bilahari, "ladder.mirrored.take(1).there-and-back", "has no N in its ascent: N3 stays as it is and the line goes on from the next note of the ascent")]
    public void A_note_that_the_other_list_lacks_is_told_with_the_list(string scale, string pattern, string message)
    {
        var finding = Assert.Single(Expand(pattern, scale).Findings.ToArray());
        Assert.Equal((FindingCode.NoteMissingFromList, Severity.Note), (finding.Code, finding.Severity));
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_finding_is_told_once() => Assert.Single(Expand("[D N S' / D N S'] + [N]", Bilahari).Findings.ToArray());

    [Theory]
    [InlineData("run")]
    [InlineData("run.reversed")]
    [InlineData("run.there-and-back")]
    [InlineData("run.notes(2 5)")]
    [InlineData("run.windows(3)")]
    [InlineData("run.split(2)")]
    [InlineData("ladder.join.backwards")]
    [InlineData("run.each-note(3).reversed")]
    [InlineData("run.weave(run.reversed)")]
    public void A_lines_first_note_is_reached_by_a_leap(string pattern) => // as Approach says
        Assert.All(Expand(pattern, Bilahari).Lines.ToArray(), l => Assert.Equal(Approach.Leap, l.Notes[0].Approach));

    [Fact]
    public void A_run_below_the_tonic_is_filled_in_its_own_octave()
    {
        // From the low P up to G: P_ D_ S R G; back over the descent, which has M not between G and S, and N between S and D_.
        Assert.Equal("G R S N_ D_ P_", Expand("run.below(2).notes(1 5).backwards", Bilahari).ToLetters());
        Assert.Equal("G' R' S' N D P M G R S", Expand("run.above(2).backwards", Bilahari).ToLetters());
        Assert.Equal("R'' S'' N' D' P' M' G' R' S'", Expand("run.transposed(5).above(1).backwards", Bilahari).ToLetters());
    }
}
