using FsCheck;
using FsCheck.Xunit;

namespace Warmup.Voices.Tests;

/// <summary>Source: counts by hand, and for what is cheapest or shared a count of everything.</summary>
[Properties(Arbitrary = [typeof(FitArbitraries)])]
public class ClassBreathTests
{
    private static readonly NoteName Low = NoteName.FromMidi(55);
    private static readonly NoteName High = NoteName.FromMidi(70);

    private static Singer Singer(string alias, int sustained, Experience experience = Experience.Beginner) => new(alias, Low, High, sustained, experience);

    private static Drill Ladder => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"), Pattern = Pattern.Ladder.Take(3), Tonic = Tonic.Parse("G3"), Tempo = 60,
    };

    [Fact]
    public void The_time_that_is_sung_is_what_the_notes_take()
    {
        // S R, then the hold to 7.0 and the breath to 8.0; three lines; a count-in of 8 s before them.
        var time = SungTime.Of((Ladder with { Delivery = Delivery.LineByLine, CountIn = 1 }).ToScore());
        Assert.Equal((32, 21, 3, 0), (time.Seconds, time.SungSeconds, time.Lines, time.BreathsInside));
        Assert.Equal(new Rational(21, 32), time.Share);
        Assert.Equal("66 % of 0:32 minutes sung, 0 breaths inside 3 lines", time.ToString());
        Assert.Equal((96, 63, 9, 0), (time.Plus(time, 2).Seconds, time.Plus(time, 2).SungSeconds, time.Plus(time, 2).Lines, time.Plus(time, 2).BreathsInside));
        Assert.Equal(Rational.Zero, SungTime.None.Share);
    }

    [Property(MaxTest = 300)]
    public void Notes_and_silence_make_up_the_time(SmallCase small)
    {
        var score = BreathPlan.TryMake(small.Score, small.Need, out var plan, out _) ? small.Score.WithBreaths(plan) : small.Score;
        var section = score.Sections[0];
        var sung = section.Notes.Select(n => n.Length).Aggregate(Rational.Zero, (a, b) => a + b) * 60 / section.Tempo;
        var inside = plan is null ? 0 : plan.Breaths.Count(b => !b.IsAtLineEnd);
        var time = SungTime.Of(score);
        Assert.Equal((sung, section.Length * 60 / section.Tempo, section.Lines.Count, inside), (time.SungSeconds, time.Seconds, time.Lines, time.BreathsInside));
    }

    [Fact]
    public void At_most_a_third_breathe_at_places_of_their_own()
    {
        // 0.4 of the tone: 4, 5, 6, 7, 8, 9 s. The shortest breath is everyone's.
        ValueList<Singer> six = [Singer("f", 10), Singer("a", 15), Singer("b", 12), .. Enumerable.Range(0, 3).Select(i => Singer($"c{i}", 18 + i, Experience.Intermediate))];
        Assert.Equal(new BreathNeed(6, new Rational(4, 5)), BreathNeed.OfMost(six));
        Assert.Equal(2, six.Count(s => s.BreathSeconds < BreathNeed.OfMost(six).CapacitySeconds));
        Assert.Equal(BreathNeed.Of(six.Take(2).ToValueList()), BreathNeed.OfMost(six.Take(2).ToValueList()));
        Assert.Equal(new BreathNeed(new Rational(24, 5), new Rational(4, 5)), BreathNeed.OfMost(six.Take(3).ToValueList()));
        Assert.Throws<ArgumentException>(() => BreathNeed.OfMost([]));
    }

    [Property(MaxTest = 200)]
    public void Most_of_a_class_and_each_singer_alone_keep_their_limits(SmallCase small, SmallClass people)
    {
        var common = BreathNeed.OfMost(people.Singers);
        Assert.True(3 * people.Singers.Count(s => s.BreathSeconds < common.CapacitySeconds) <= people.Singers.Count);
        var together = BreathPlan.TryMake(small.Score, common, out var plan, out _) ? small.Score.WithBreaths(plan) : small.Score;
        foreach (var singer in people.Singers)
        {
            var own = together.AsSungBy(singer);
            var longest = BreathSpan.Of(own, singer.ShortestBreathSeconds).Max(s => s.Seconds);
            var possible = BreathPlan.TryMake(together, BreathNeed.Of(singer), out _, out _);
            Assert.Equal(possible, longest <= singer.BreathSeconds);
            if (BreathSpan.Of(together, singer.ShortestBreathSeconds).All(s => s.Seconds <= singer.BreathSeconds))
            {
                Assert.Same(together, own);
            }

            // The others sing on: no note begins at another time.
            Assert.Equal(together.Sections[0].Notes.Select(n => n.Onset), own.Sections[0].Notes.Select(n => n.Onset));
        }
    }

    [Property(MaxTest = 100)]
    public void What_a_singer_costs_is_the_difference_between_two_classes(SmallCase small, SmallClass people)
    {
        int? Count(IEnumerable<Singer> singers) => BreathPlan.TryMake(small.Score, BreathNeed.Of(singers.ToValueList()), out var plan, out _) ? plan.Breaths.Count(b => !b.IsAtLineEnd) : null;

        var breaths = ClassBreath.Of([small.Score, small.Score], people.Singers);
        Assert.Equal(people.Singers.Select(s => s.BreathSeconds).Order(), breaths.Select(b => b.Singer.BreathSeconds));
        foreach (var breath in breaths)
        {
            Assert.Equal(2 * Count(people.Singers), breath.Together);
            Assert.Equal(people.Singers.Count == 1 ? null : 2 * Count(people.Singers.Where(s => !ReferenceEquals(s, breath.Singer))), breath.WithoutSinger);
            Assert.Equal(breath.WithoutSinger is { } without && !(breath.Together <= without), breath.HasCostForOthers);
        }

        Assert.Equal(breaths.Take(1), ClassBreath.Of([small.Score, small.Score], people.Singers, most: 1));
    }

    [Fact]
    public void A_short_breath_breathes_inside_the_line_while_the_others_sing_on()
    {
        // Eight notes of a second each on one breath: 10 s for two, 4.8 s for Robin, who breathes once inside the line.
        var drill = Ladder with { Pattern = Pattern.Run };
        ValueList<Singer> people = [Singer("Robin", 12), Singer("Finch", 25), Singer("Wren", 25)];
        var breaths = ClassBreath.Of([drill.ToScore()], people);
        var robin = breaths[0];
        Assert.Equal(("Robin", 1, 1, 0, true), (robin.Singer.Alias, robin.OwnBreathsInside, robin.Together, robin.WithoutSinger, robin.HasCostForOthers));
        Assert.Equal("Robin: 1 own breath inside lines; breathing together would take 1 inside lines, without Robin 0", robin.ToString());
        Assert.All(breaths.Skip(1), b => Assert.Equal((0, false, 8), (b.OwnBreathsInside, b.HasCostForOthers, b.Time.SungSeconds)));
        Assert.True(robin.Time.SungSeconds < 8);
    }
}
