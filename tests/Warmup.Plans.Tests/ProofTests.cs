using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: <see cref="BruteForce"/>, which tries everything, on requests small enough for that.</summary>
public class ProofTests
{
    private static readonly Gen<PlanRequest> Small =
        from names in Gen.SubListOf("mohanam", "mayamalavagowla", "bilahari", "kalyani")
        from low in Gen.Choose(52, 58)
        from width in Gen.Elements(5, 7, 11, 14, 20)
        from second in Gen.Elements(-1, -1, 0, 7, 13)
        from seconds in Gen.Elements(9, 15, 30, 30)
        from experience in Gen.Elements(Experience.Beginner, Experience.Advanced)
        from days in Gen.Choose(1, 9)
        from noRepeat in Gen.Choose(0, 6)
        from start in Gen.Elements(0, 10, 20, 40, 100)
        from step in Gen.Elements(0, 10, 60)
        from groups in Gen.Elements("choir", "neighbours", "sarali", "melsthayi")
        from tonic in Gen.Elements<Tonic?>(null, null, Tonic.FromMidi(57))
        from level in Gen.Elements(Level.Beginner, Level.Intermediate, Level.Advanced)
        from minutes in Gen.Elements(5, 8)
        from log in Gen.SubListOf("opening-1", "opening-2", "opening-3", "descent-1", "choir-1", "choir-7", "choir-8", "melsthayi-1", "mandrasthayi-1", "neighbours-3")
        where names.Count is 1 or 2
        select new PlanRequest
        {
            Scales = Requests.Scales([.. names]),
            Singers = second < 0
                ? [Requests.Singer("Robin", low, low + width, seconds, experience)]
                : [Requests.Singer("Robin", low, low + width, seconds, experience), Requests.Singer("Badger", low - 12 + second, low - 12 + second + width, seconds + 2)],
            Start = Requests.Start,
            Days = days,
            Minutes = minutes,
            NoRepeatDays = noRepeat,
            LeastFillPercent = 0,
            RestDays = [],
            Tonic = tonic,
            Level = level with { Groups = [groups], StartCeiling = start, CeilingStep = step },
            Log = log.Select((exercise, i) => new LogEntry { Date = Requests.Start.AddDays(-1 - (i % 3)), ScaleName = Requests.Scales(names[0])[0].Name, ExerciseName = exercise, Tempo = 60 }).ToValueList(),
        };

    private static PlanImpossibleException? Refused(PlanRequest request)
    {
        try
        {
            _ = WarmupPlan.Make(request);
            return null;
        }
        catch (PlanImpossibleException refused)
        {
            return refused;
        }
    }

    /// <summary>The brute force needs the level that the planner takes by default.</summary>
    private static PlanRequest Known(PlanRequest request) => request with { Level = request.Level ?? Level.Of(request.Singers) };

    /// <summary>The tonics that a refusal has to name.</summary>
    private static string[] Names(PlanRequest request) => request.Tonic is { } typed ? [typed.ToString()] : ["C,", "C#,", "D,", "D#,", "E,", "F,", "F#,", "G,", "G#,", "A,", "A#,", "B;"];

    [Property(MaxTest = 5)]
    public Property A_plan_is_refused_just_when_there_is_none_and_the_clash_is_irreducible() => Prop.ForAll(Small.ToArbitrary(), request =>
    {
        var search = new BruteForce(request);
        var all = BruteForce.All(request);
        var refused = Refused(request);
        Assert.Equal(search.CanMeet(all), refused is null);
        if (refused is null)
        {
            return true.Classify(true, "possible");
        }

        Assert.Equal(!search.CanMeet([]), refused.Clash.IsEmpty);
        foreach (var set in refused.Clash.IsEmpty ? [] : (ValueList<PlanRule>[])[refused.Clash, .. refused.FurtherClashes])
        {
            var clash = set.ConvertAll(r => (r.Kind, r.Singer)).ToList();
            Assert.Subset(all.ToHashSet(), clash.ToHashSet());
            Assert.False(search.CanMeet(clash), $"{string.Join(", ", clash)} can be met");
            Assert.All(clash, rule => Assert.True(search.CanMeet(clash.Where(r => r != rule)), $"{string.Join(", ", clash)} still clashes without {rule}"));
        }

        // The change that is offered has been tried, and here it is tried again in another way.
        if (refused.Change is { } change)
        {
            Assert.Null(Refused(change.Request));
            Assert.True(change.Request.LeastFillPercent != 0 || new BruteForce(Known(change.Request)).CanMeet(BruteForce.All(change.Request)), change.Text);
        }

        Assert.All(Names(request), name => Assert.Contains(name, refused.Message, StringComparison.Ordinal));

        // Two rules can be given up in the request itself.
        Assert.Equal(search.CanMeet(all.Where(r => r.Kind != PlanRuleKind.NoRepeat)), Refused(request with { NoRepeatDays = 0 }) is null);
        Assert.Equal(search.CanMeet(all.Where(r => r.Kind != PlanRuleKind.Ceiling)), Refused(request with { Level = request.Level! with { StartCeiling = 100 } }) is null);
        return true.Classify(true, $"impossible, {refused.Clash.Count} rules");
    });

    [Fact]
    public void A_scale_that_only_fits_late_in_the_order_is_sung_late()
    {
        // In the first week one middle drill is open, in the second all: on its second turn within the wait a scale needs another drill.
        var request = Requests.Usual with
        {
            Scales = Requests.Scales("mohanam", "bilahari"),
            Singers = [Requests.Singer("Heron", 48, 76, 30, Experience.Advanced)],
            Level = Level.Beginner with { StartCeiling = 0, CeilingStep = 100 },
            RestDays = [],
            NoRepeatDays = 2,
            LeastFillPercent = 0,
            Days = 3,
        };

        // Day 0 and day 2 are one scale's: they cannot both be sung with one drill, whichever scale it is.
        Assert.NotNull(Refused(request));

        // Mohanam's only open drill was sung yesterday, so that it can only stand second.
        var easiest = WarmupPlan.Make(request with { Days = 1, Scales = Requests.Scales("mohanam") }).Plan;
        var sung = easiest.Days[0].Drills[1].Drill;
        var log = new LogEntry { Date = Requests.Start.AddDays(-1), ScaleName = sung.Scale.Name, ExerciseName = sung.ExerciseName, Tempo = 60 };
        var late = request with { Days = 2, NoRepeatDays = 1, Log = [log] };
        Assert.All(Enumerable.Range(0, 20), seed =>
        {
            var plan = WarmupPlan.Make(late with { Seed = (ulong)seed }).Plan;
            Assert.Equal(["Bilahari", "Mohanam"], plan.Days.ConvertAll(d => d.Scale!.Name));
        });
    }
}
