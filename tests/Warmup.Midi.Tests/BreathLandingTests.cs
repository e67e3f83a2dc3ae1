namespace Warmup.Midi.Tests;

/// <summary>Source: the breath rules: a planned breath takes its time from the note before, so in MIDI that note is shorter and no onset moves.</summary>
public class BreathLandingTests
{
    [Fact]
    public void A_planned_breath_is_a_shortened_note()
    {
        // Eight notes a second each; on six seconds one breath of 0.4 s, 10/24 of an akshara, is needed.
        var score = Files.Drill(pattern: "ladder.drop(6)").ToScore();
        Assert.True(BreathPlan.TryMake(score, new BreathNeed(6, new Rational(2, 5)), out var plan, out _));
        var breath = Assert.Single(plan!.Breaths.ToArray());
        var (before, after) = (Heard.From(score), Heard.From(score.WithBreaths(plan)));
        Assert.Equal(Beats(before).Select(n => n.Onset), Beats(after).Select(n => n.Onset));
        for (var n = 0; n < 8; n++)
        {
            Assert.Equal(n == breath.AfterNote ? 1 - (10 / 24.0) : 1, Beats(after)[n].Length, 1e-9);
        }

        static (double Onset, double Length)[] Beats(Heard heard) =>
            [.. heard.Voice.Select(n => ((double)n.Tick / heard.TicksPerQuarter, (double)n.Length / heard.TicksPerQuarter))];
    }
}
