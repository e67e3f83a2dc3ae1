using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Warmup.Testing;

namespace Warmup.Voices.Tests;

/// <summary>
/// The measures are counted by hand. The orderings compare pairs that differ in one feature: common practice, except the order of the
/// intervals, which is a proposal of the project after Dai, Mauch, Dixon 2015 (larger intervals are missed by more, the tritone by most).
/// </summary>
public class DifficultyTests
{
    private const string Kalyani = "S R2 G3 M2 P D2 N3 S'";
    private const string Shankarabharanam = "S R2 G3 M1 P D2 N3 S'";

    [Fact]
    public void The_measures_of_a_small_drill_are_those_of_a_hand_count()
    {
        // S G R P: up 4, down 2, up 5; M D S': up 4, up 3. One note a second at tempo 60.
        var difficulty = Of("[S G R P / M D S']", Shankarabharanam);
        Assert.Equal(12, difficulty.SpanSemitones);
        Assert.Equal(5, difficulty.LargestLeapSemitones);
        Assert.Equal(new Rational(18, 5), difficulty.MeanLeapSemitones);
        Assert.Equal(4, difficulty.HardestLeapRank); // the fourth from R to P
        Assert.Equal(new Rational(2 + 1 + 4 + 2 + 2, 5), difficulty.MeanLeapRank);
        Assert.Equal(2, difficulty.DirectionChanges);
        Assert.Equal(new Rational(2, 3), difficulty.TurnShare);
        Assert.Equal(new Rational(4, 5), difficulty.RisingShare);
        Assert.Equal(new Rational(1, 2), difficulty.StartsAwayShare);
        Assert.Equal(new Rational(1, 4), difficulty.FarLandingShare); // leaps to G, P, D and S'; only D2 lies far from every partial of P and S
        Assert.Equal(Rational.One, difficulty.NotesPerSecond);

        // 12 x 10 + 4 x 40 + 11/5 x 100 + 2/3 x 150 + 4/5 x 20 + 1/2 x 60 + 1/4 x 80 + 1 x 60
        Assert.Equal(120 + 160 + 220 + 100 + 16 + 30 + 20 + 60, difficulty.Score());
    }

    [Fact]
    public void Landings_are_far_where_no_partial_of_the_drone_is_near()
    {
        // Partials of S: S P G (386) 969; of P: P R (204) N (1088) 471: a harmonic series, computed. Equal tones within 25 cents are near.
        foreach (var (letter, far) in (IEnumerable<(string, bool)>)[("G", false), ("M", true), ("P", false), ("D", true), ("N", false), ("S'", false)])
        {
            Assert.Equal(far ? 1 : 0, Of($"[S {letter}]", Shankarabharanam).FarLandingShare);
        }
    }

    [Fact]
    public void The_drone_is_that_of_the_score()
    {
        // D (900) is far from all partials of P and S. The fifth partial of a string on M (498) lies at 884.
        var drill = new Drill { Scale = Scale.Parse(Shankarabharanam), Pattern = Pattern.Parse("[S D]"), Tonic = Tonic.Parse("C4"), Tuning = Tuning.Equal };
        Assert.Equal(1, Difficulty.Of(drill.ToScore()).FarLandingShare);
        Assert.Equal(0, Difficulty.Of((drill with { DroneStyle = DroneStyle.Tanpura with { First = Degree.Parse("M1") } }).ToScore()).FarLandingShare);
    }

    [Theory]
    [InlineData("[S' N D P]", "[S R G M]")] // a line with its mirror: falling is easier
    [InlineData("[S R G]", "[R G M]")] // a start on the tonic is easier; both span four semitones in Kalyani
    [InlineData("[S R G M P]", "[S R G M P].ends")] // a filled line is easier than its ends
    [InlineData("[S R G M P D N S']", "[S R G M P D N S'].ends")]
    [InlineData("ladder", "ladder.ends")]
    [InlineData("[S R G R S]", "[S G R G S]")] // steps are easier than thirds
    [InlineData("[S R G M]", "[S G R M]")]
    public void The_first_is_easier(string easier, string harder) => Assert.True(
        Of(easier, Kalyani).Score() < Of(harder, Kalyani).Score(), $"{Of(easier, Kalyani)}\n{Of(harder, Kalyani)}");

    [Fact]
    public void Leaps_follow_the_order_of_the_intervals_and_not_their_size()
    {
        // unison, step, third, fifth and octave, fourth and sixth, seventh, tritone
        int Score(string to, string scale = Shankarabharanam) => Of($"[S {to}]", scale).Score();
        var ranks = (int[][])[[Score("S")], [Score("R")], [Score("G")], [Score("P"), Score("S'")], [Score("M"), Score("D")], [Score("N")], [Score("M", Kalyani)]];
        for (var i = 1; i < ranks.Length; i++)
        {
            Assert.True(ranks[i - 1].Max() < ranks[i].Min(), $"rank {i}: {string.Join(' ', ranks[i - 1])} against {string.Join(' ', ranks[i])}");
        }
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 100)]
    public bool The_same_drill_slower_is_easier(Drill drill)
    {
        var free = drill with { Delivery = Delivery.Continuous };
        return !free.TryToScore(out var fast, out _)
            || Difficulty.Of((free with { Tempo = free.Tempo.Start / 2 }).ToScore()).Score() < Difficulty.Of(fast!).Score();
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 200)]
    public bool Neither_silence_nor_holds_between_the_lines_change_the_measures(Drill drill, bool lineByLine, byte fill, bool byRest, byte countIn)
    {
        // Breath is outside the score, and so is whatever stands between the lines: the same notes are as hard however the lines follow each other.
        var plain = drill with { Delivery = Delivery.Continuous, Meter = Meter.Adi };
        var delivery = (lineByLine ? Delivery.LineByLine : Delivery.Continuous) with { Fill = (Fill)(fill % 3), FillBy = byRest ? FillBy.Rest : FillBy.Hold };
        var other = plain with { Delivery = delivery, CountIn = countIn % 3 };
        return !plain.TryToScore(out var score, out _) || !other.TryToScore(out var spread, out _)
            || score.Sections[0].Lines.Any(l => l.NoteCount == 1)
            || Difficulty.Of(score) == Difficulty.Of(spread);
    }

    [Theory]
    [InlineData(Fill.None)]
    [InlineData(Fill.Anga)]
    [InlineData(Fill.Avartana)]
    public void Twice_the_speed_counts_double_however_much_silence_fills_the_lines(Fill fill)
    {
        var slow = new Drill
        {
            Scale = Scale.Parse(Kalyani), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Ladder, Tempo = 60,
            Delivery = Delivery.LineByLine with { Fill = fill, FillBy = FillBy.Rest },
        };
        var (first, second) = (Difficulty.Of(slow.ToScore()), Difficulty.Of((slow with { Speeds = [Speed.Second] }).ToScore()));
        Assert.Equal((1, 2), (first.NotesPerSecond, second.NotesPerSecond));
        Assert.Equal(first.Score() + 60, second.Score());
    }

    [Fact]
    public void Each_note_counts_with_its_own_pace()
    {
        // S , R G M: two, one and one seconds, so 1/2, 1 and 1 notes a second. A line of one note lasts its two seconds.
        Assert.Equal(new Rational(833, 1000), new Rational((Of("[S , R G M]", Kalyani).NotesPerSecond * 1000).Floor(), 1000));
        Assert.Equal(new Rational(1, 2), Of("[S ,]", Kalyani).NotesPerSecond);

        // Sung in two speeds each time counts for itself.
        var both = new Drill { Scale = Scale.Parse(Kalyani), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Run, Tempo = 60, Speeds = [Speed.First, Speed.Second] };
        Assert.Equal(new Rational(3, 2), Difficulty.Of(both.ToScore()).NotesPerSecond);
    }

    [Property(Arbitrary = [typeof(WarmupArbitraries)], MaxTest = 100)]
    public bool Shares_are_shares_and_the_score_is_not_negative(Score score)
    {
        var d = Difficulty.Of(score);
        return new[] { d.TurnShare, d.RisingShare, d.StartsAwayShare, d.FarLandingShare }.All(s => s >= Rational.Zero && s <= Rational.One) && d.Score() >= 0;
    }

    [Fact]
    public void Weights_are_the_callers_to_set()
    {
        var difficulty = Of("[R G M]", Kalyani);
        var only = new DifficultyWeights { Span = 0, HardestLeap = 0, MeanLeap = 0, Turns = 0, Rising = 0, StartsAway = 7, FarLandings = 0, NotesPerSecond = 0 };
        Assert.Equal(7, difficulty.Score(only));
        Assert.Contains("between 0 and 10000, not -1", Assert.Throws<ArgumentOutOfRangeException>(() => new DifficultyWeights { Span = -1 }).Message, StringComparison.Ordinal);
    }

    private static Difficulty Of(string pattern, string scale) => Difficulty.Of(new Drill
    {
        Scale = Scale.Parse(scale), Tonic = Tonic.Parse("C4"), Pattern = Pattern.Parse(pattern), Meter = Meter.Free, Tempo = 60,
    }.ToScore());
}
