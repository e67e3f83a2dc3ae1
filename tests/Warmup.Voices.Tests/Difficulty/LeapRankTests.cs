namespace Warmup.Voices.Tests;

/// <summary>Ranks of intervals beyond the octave. Source: the documented order, and two ranks more for a compound interval, at least the octave's (the project's own proposal).</summary>
public class LeapRankTests
{
    [Theory]
    [InlineData("[S S]", 0)]
    [InlineData("[S R]", 1)]
    [InlineData("[S S']", 3)]
    [InlineData("[S R']", 5)] // a step, raised to the octave's three, and two
    [InlineData("[S G']", 5)]
    [InlineData("[S P']", 5)]
    [InlineData("[S M']", 6)] // a fourth has four
    [InlineData("[S D']", 6)]
    [InlineData("[S N']", 7)] // a seventh has five
    [InlineData("[S S'']", 5)]
    [InlineData("[S'' S]", 5)]
    public void The_rank_of_the_hardest_leap(string line, int rank) => Assert.Equal(rank, Of(line, "S R2 G3 M1 P D2 N3 S'").HardestLeapRank);

    [Fact]
    public void A_tritone_beyond_the_octave_is_the_hardest() => Assert.Equal(8, Of("[S M']", "S R2 G3 M2 P D2 N3 S'").HardestLeapRank);

    [Fact]
    public void The_measures_and_the_weights_are_said_in_words()
    {
        // S G R P: up 4, down 2, up 5; M D S': up 4, up 3: the hand count of the measures' own test.
        Assert.Equal(
            "span 12, largest leap 5, mean leap 3.60 semitones; 2 turns; 80 % rising; 50 % of lines start away from the tonic; 25 % of leaps land far from the drone; 1.00 notes a second; score 726",
            Of("[S G R P / M D S']", "S R2 G3 M1 P D2 N3 S'").ToString());
        Assert.Equal(
            "span 10, hardest leap 40, mean leap 100, turns 150, rising 20, starts away 60, far landings 80, notes a second 60", DifficultyWeights.Default.ToString());
    }

    private static Difficulty Of(string pattern, string scale) => Difficulty.Of(new Drill
    {
        Scale = Scale.Parse(scale), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Parse(pattern), Meter = Meter.Free, Tempo = 60,
    }.ToScore());
}
