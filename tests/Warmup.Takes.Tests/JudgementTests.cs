namespace Warmup.Takes.Tests;

/// <summary>Whether a take is its drill: what decides it, one thing at a time.</summary>
public class JudgementTests
{
    // Eight notes of which six were heard, one after the other, of all that was sung.
    private static readonly TakeFacts Facts = new(Heard: 6, Sung: 8, Explained: 0.75, Foreign: 0, Trouble: 0.38, Evidence: 10, IsOwnTonic: true);

    /// <summary>Any tune can be moved until it fits: beside the drill's own tonic more has to agree.</summary>
    [Theory]
    [InlineData(0, true, true)]
    [InlineData(0, false, false)]
    [InlineData(4, false, true)]
    [InlineData(-9, true, false)]
    public void Less_has_to_speak_for_a_drill_on_its_own_tonic(double evidence, bool isOwnTonic, bool isDrill) =>
        Assert.Equal(isDrill, TakeJudgement.OfAlignment(Facts with { Evidence = evidence, IsOwnTonic = isOwnTonic }) is null);

    /// <summary>What is sung outside the drill's notes speaks against it: where most is inside, a few notes with faults need not explain the take better than any melody.</summary>
    [Theory]
    [InlineData(0.75, true)]
    [InlineData(0.55, false)]
    public void Less_has_to_speak_for_a_drill_whose_notes_hold_most_of_the_singing(double explained, bool isDrill) =>
        Assert.Equal(isDrill, TakeJudgement.OfAlignment(Facts with { Evidence = -4, Explained = explained }) is null);

    [Theory]
    [InlineData(15, true)]
    [InlineData(-1210, true)]
    [InlineData(200, false)]
    [InlineData(600, false)]
    public void The_own_tonic_is_the_drill_s_or_an_octave_of_it(double shift, bool isOwn) => Assert.Equal(isOwn, TonicHypotheses.IsOwnTonic(shift));
}
