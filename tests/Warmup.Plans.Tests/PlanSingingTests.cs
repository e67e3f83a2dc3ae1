using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: the goals that docs/plans.md states for two invented classes; every figure is counted anew from the days' scores.</summary>
public class PlanSingingTests
{
    /// <summary>The demo's class: 0.4, 0.5 or 0.6 of the tone by experience, so 7.2, 10, 13.2, 12, 8.8 and 4.8 s.</summary>
    private static readonly ValueList<Singer> Demo =
    [
        Requests.Singer("Wren", 55, 76, 18),
        Requests.Singer("Finch", 53, 74, 20, Experience.Intermediate),
        Requests.Singer("Heron", 53, 72, 22, Experience.Advanced),
        Requests.Singer("Otter", 48, 67, 24, Experience.Intermediate),
        Requests.Singer("Badger", 43, 62, 22),
        Requests.Singer("Robin", 59, 74, 12),
    ];

    /// <summary>The same adults with a breath of 10 s each.</summary>
    private static readonly ValueList<Singer> Adults =
    [
        Requests.Singer("Wren", 55, 76, 25),
        Requests.Singer("Finch", 53, 74, 20, Experience.Intermediate),
        Requests.Singer("Otter", 48, 67, 20, Experience.Intermediate),
        Requests.Singer("Badger", 43, 62, 25),
        Requests.Singer("Heron", 53, 72, 25),
    ];

    private static PlanResult Make(ValueList<Singer> singers, ulong seed = 7) => WarmupPlan.Make(new PlanRequest
    {
        Singers = singers, Scales = Requests.Scales("mohanam", "mayamalavagowla"), Start = Requests.Start, Days = 28, Minutes = 8, Seed = seed,
    });

    [Theory]
    [InlineData(7)]
    [InlineData(1)]
    public void The_demos_class_sings_65_hundredths_of_the_time_and_adults_with_ten_seconds_70(ulong seed)
    {
        foreach (var (singers, percent) in ((ValueList<Singer>, int)[])[(Demo, 65), (Adults, 70)])
        {
            var made = Make(singers, seed);
            var singing = PlanSinging.Of(made.Plan, made.Plan.Days, singers);
            var time = Counted(made.Plan.Days.Where(d => !d.IsRest).Select(d => made.Plan.ToScore(d)));
            Assert.Equal((24, time.Lines, time.Inside), (singing.Days, singing.Time.Lines, singing.Time.BreathsInside));
            Assert.Equal(time.Seconds, singing.Time.Seconds.ToDouble(), 1e-3);
            Assert.Equal(time.Sung, singing.Time.SungSeconds.ToDouble(), 1e-3);
            Assert.True(100 * time.Sung >= percent * time.Seconds, $"{singing}");
            Assert.True(50 * time.Inside < time.Lines, $"{singing}");
            foreach (var singer in singing.Breaths)
            {
                var own = Counted(made.Plan.Days.Where(d => !d.IsRest).Select(d => made.Plan.ToScore(d).AsSungBy(singer.Singer)));
                Assert.Equal(own.Inside - time.Inside, singer.OwnBreathsInside);
                Assert.Equal(own.Sung, singer.Time.SungSeconds.ToDouble(), 1e-3);
            }
        }
    }

    [Fact]
    public void The_shortest_breath_is_the_one_that_costs_the_others()
    {
        var plan = Make(Demo).Plan;
        var singing = PlanSinging.Of(plan, plan.Days, Demo);
        Assert.Equal(["Robin", "Wren", "Badger", "Finch", "Otter", "Heron"], singing.Breaths.ConvertAll(b => b.Singer.Alias));
        Assert.Equal(["Robin"], singing.Breaths.Where(b => b.HasCostForOthers).Select(b => b.Singer.Alias));

        // A third of six have places of their own.
        Assert.Equal(["Robin", "Wren"], singing.Breaths.Where(b => b.OwnBreathsInside > 0).Select(b => b.Singer.Alias));
        Assert.True(2 * singing.Breaths[0].WithoutSinger < singing.Breaths[0].Together);
        Assert.Equal(singing.Breaths.Take(2), PlanSinging.Of(plan, plan.Days, Demo, most: 2).Breaths);
        Assert.Equal(1, PlanSinging.Of(plan, plan.Days.Take(1), Demo).Days);
    }

    [Property(MaxTest = 6)]
    public Property Reasonable_classes_sing_more_than_half_of_the_time() => Prop.ForAll(Requests.Reasonable.ToArbitrary(), request =>
    {
        var plan = WarmupPlan.Make(request).Plan;
        var time = PlanSinging.Of(plan, plan.Days, request.Singers).Time;
        Assert.True(2 * time.SungSeconds > time.Seconds, $"{time}");
    });

    [Fact]
    public void Warm_ups_begin_on_a_lip_trill_or_through_a_straw_and_carry_the_caution()
    {
        var made = Make(Demo);
        foreach (var day in made.Plan.Days.Where(d => !d.IsRest))
        {
            var score = made.Plan.ToScore(day);
            Assert.All(score.Sections[0].Notes, n => Assert.Contains(n.Syllable, (string[])["brr", "straw"]));
            Assert.Contains(Cautions.HalfClosed, score.Cautions);
        }
    }

    private static (double Seconds, double Sung, int Lines, int Inside) Counted(IEnumerable<Score> scores)
    {
        var (seconds, sung, lines, inside) = (0.0, 0.0, 0, 0);
        foreach (var section in scores.SelectMany(s => s.Sections))
        {
            var akshara = 60 / section.Tempo.ToDouble();
            seconds += section.Length.ToDouble() * akshara;
            sung += section.Notes.Sum(n => n.Length.ToDouble()) * akshara;
            lines += section.Lines.Count;
            inside += section.Breaths.Count(b => b.AfterNote + 1 < section.Notes.Count && section.Notes[b.AfterNote + 1].LineIndex == section.Notes[b.AfterNote].LineIndex);
        }

        return (seconds, sung, lines, inside);
    }
}
