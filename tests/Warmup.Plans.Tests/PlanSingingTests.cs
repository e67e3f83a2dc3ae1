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
    public void The_demos_class_sings_65_hundredths_of_the_time_and_adults_with_ten_seconds_80(ulong seed)
    {
        foreach (var (singers, percent) in ((ValueList<Singer>, int)[])[(Demo, 65), (Adults, 80)])
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

    /// <summary>Three to six adults of one level in two registers, each with a breath of 10 s or a little more; a plan of four weeks of 8 to 10 minutes.</summary>
    private static readonly Gen<PlanRequest> AdultsWithTenSeconds =
        from level in Gen.Elements(Level.All.AsSpan().ToArray())
        from low in Gen.Choose(43, 45)
        from singers in Gen.Choose(3, 6).SelectMany(count => Gen.ArrayOf(
            from apart in Gen.Choose(0, 2)
            from width in Gen.Choose(19, 24)
            from more in Gen.Choose(0, 4)
            select (apart, width, more),
            count))
        from scales in Gen.SubListOf("mohanam", "mayamalavagowla", "bilahari", "hamsadhvani", "kalyani", "kharaharapriya", "major")
        from minutes in Gen.Choose(8, 10)
        from seed in Gen.Choose(0, 1_000_000)
        where scales.Count is > 0 and < 4
        select new PlanRequest
        {
            Scales = Requests.Scales([.. scales]),
            Singers = singers.Select((s, i) => WithTenSeconds($"singer {i + 1}", low + s.apart + (i % 2 * 11), s.width, s.more, Enum.Parse<Experience>(level.Name, ignoreCase: true))).ToValueList(),
            Start = Requests.Start,
            Minutes = minutes,
            Seed = (ulong)seed,
        };

    private static Singer WithTenSeconds(string alias, int low, int width, int more, Experience experience)
    {
        // A phrase is 0.4, 0.5 or 0.6 of the sustained tone (docs/voices.md).
        var tone = experience switch { Experience.Beginner => 25, Experience.Intermediate => 20, _ => 17 };
        var singer = Requests.Singer(alias, low, low + width, tone + more, experience);
        Assert.True(singer.BreathSeconds >= 10);
        return singer;
    }

    [Property(MaxTest = 5)]
    public Property Adults_with_ten_seconds_sing_four_fifths_of_the_time_and_nobodys_limits_are_broken() => Prop.ForAll(AdultsWithTenSeconds.ToArbitrary(), request =>
    {
        var made = WarmupPlan.Make(request);
        var days = made.Plan.Days.Where(d => !d.IsRest).ToList();
        var time = Counted(days.Select(d => made.Plan.ToScore(d)));
        Assert.True(100 * time.Sung >= 80 * time.Seconds, $"{100 * time.Sung / time.Seconds:0.00} % of {request}");
        foreach (var day in days.Where((_, d) => d % 4 == 0))
        {
            for (var s = 0; s < request.Singers.Count; s++)
            {
                var score = made.Plan.ToScore(day, made.Plan.Tonic.Transposed(12 * made.Octaves[s])).AsSungBy(request.Singers[s]);
                Assert.DoesNotContain(score.Check(request.Singers[s]), f => f.Severity == Severity.Error);
            }
        }
    });

    [Fact]
    public void Choir_figures_have_no_bar_of_rest_since_no_chord_follows()
    {
        var drills = Make(Adults).Plan.Drills.Where(d => d.Group == "choir").ToList();
        Assert.NotEmpty(drills);
        foreach (var drill in drills)
        {
            var usual = Repertoire.Find(drill.ExerciseName)!;
            var (ours, theirs) = (drill.Pattern.Expand(drill.Scale).Lines, usual.Pattern.Expand(drill.Scale).Lines);
            Assert.Equal(theirs.ConvertAll(l => l.Notes.ConvertAll(n => (n.Tone, n.Sung))), ours.ConvertAll(l => l.Notes.ConvertAll(n => (n.Tone, n.Sung))));
            Assert.All(theirs, l => Assert.Equal(8, l.Notes[^1].Rest));
            Assert.All(ours, l => Assert.Equal(0, l.Notes[^1].Rest));

            // In bars of four beats: no silence is longer than a breath of a beat, and each line begins with a bar.
            var section = drill.ToDrill(Tonic.FromMidi(60), Tuning.Equal, 60).ToScore().Sections[0];
            var begin = section.Notes[0].Onset;
            Assert.Equal(usual.Meter, section.Meter);
            for (var n = 1; n < section.Notes.Count; n++)
            {
                Assert.True(section.Notes[n].Onset - section.Notes[n - 1].End <= 1, $"{drill} {n}");
            }

            Assert.All(section.Lines, l => Assert.Equal(1, ((section.Notes[l.FirstNote].Onset - begin) / 4).Denominator));
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
            Assert.All(score.Sections[0].Notes.Select(score.Sections[0].SyllableOf), s => Assert.Contains(s, (string[])["brr", "straw"]));
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
