namespace Warmup.Voices.Tests;

/// <summary>How much is sung, and what needs and breaths say in words. Source: counted by hand at one note a second.</summary>
public class SungTimeTests
{
    private static readonly Rational Half = new(1, 2);

    private static Drill Run(int tempo = 60) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Run, Tonic = Tonic.Parse("G3"), Tempo = tempo,
    };

    private static Singer Voice(string alias, Rational seconds) => new(alias, NoteName.FromMidi(40), NoteName.FromMidi(90), seconds);

    [Fact]
    public void Sung_time_and_breaths_inside_lines_are_said_in_words()
    {
        // Eight notes fill an avartana of Adi; on five seconds one breath of half a second stands inside the line: 7.5 of 8 s are 93.75 %.
        var score = Run().ToScore();
        Assert.Equal("100 % of 0:08 minutes sung, 0 breaths inside 1 line", SungTime.Of(score).ToString());
        Assert.True(BreathPlan.TryMake(score, new BreathNeed(5, Half), out var plan, out _));
        var time = SungTime.Of(score.WithBreaths(plan));
        Assert.Equal("94 % of 0:08 minutes sung, 1 breath inside 1 line", time.ToString());
        Assert.Equal("94 % of 1:20 minutes sung, 10 breaths inside 10 lines", time.Plus(time, 9).ToString());
        Assert.Equal(time, SungTime.None.Plus(time));
        Assert.Throws<ArgumentOutOfRangeException>(() => time.Plus(time, 0));

        // Sections add up.
        Assert.Equal(time.Plus(time), SungTime.Of(Score.Join("twice", [score.WithBreaths(plan), score.WithBreaths(plan)])));
    }

    [Fact]
    public void A_breath_after_a_line_is_not_inside_one()
    {
        var score = (Run() with { Delivery = Delivery.LineByLine, Pattern = Pattern.Parse("[S R] + [S R G]") }).ToScore();
        Assert.Equal((2, 0), (score.Sections[0].Breaths.Count, SungTime.Of(score).BreathsInside));
    }

    [Fact]
    public void A_need_has_its_bounds()
    {
        Assert.Equal(new Rational(1, 10), new BreathNeed(new Rational(1, 10), new Rational(1, 10)).CapacitySeconds);
        Assert.Equal(10, new BreathNeed(120, 10).ShortestBreathSeconds);
        Assert.Throws<ArgumentOutOfRangeException>(() => new BreathNeed(new Rational(9, 100), 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BreathNeed(5, new Rational(9, 100)));
    }

    [Fact]
    public void A_note_that_is_let_go_early_says_so()
    {
        // Two notes, the second held to 7.0; on five seconds it ends at 5.0.
        var score = (Run() with { Delivery = Delivery.LineByLine, Pattern = Pattern.Parse("[S R]") }).ToScore();
        Assert.True(BreathPlan.TryMake(score, new BreathNeed(5, new Rational(4, 5)), out var plan, out _));
        Assert.Equal("1 breath: after line 1, let go early", plan.Describe());
    }

    [Fact]
    public void Where_a_class_cannot_breathe_together_it_is_said_who_it_would_be_without()
    {
        // At 120 notes of half a second leave no breath of 0.8 s; the line lasts four seconds. Robin has three (0.4 of 7.5), Finch ten.
        var breaths = ClassBreath.Of([Run(120).ToScore()], [Voice("Robin", new Rational(15, 2)), Voice("Finch", 25)]);
        Assert.Equal((null, 0, true), (breaths[0].Together, breaths[0].WithoutSinger, breaths[0].HasCostForOthers));
        Assert.Equal("Robin: 0 own breaths inside lines; breathing together is not possible, without Robin 0", breaths[0].ToString());
        Assert.Equal((null, null, false), (breaths[1].Together, breaths[1].WithoutSinger, breaths[1].HasCostForOthers));
        Assert.Equal("Finch: 0 own breaths inside lines", breaths[1].ToString());
        Assert.Throws<ArgumentOutOfRangeException>(() => ClassBreath.Of([Run().ToScore()], [Voice("Finch", 25)], most: 0));
    }
}
