namespace Warmup.Plans.Tests;

/// <summary>Source: the definition of a smallest clashing set: all of it fails, and without any one of its rules there is a plan.</summary>
public class ImpossibleTests
{
    private static PlanImpossibleException Refused(PlanRequest request) => Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request));

    private static PlanRuleKind[] Kinds(PlanImpossibleException refused) => [.. refused.Clash.Select(r => r.Kind)];

    [Fact]
    public void Too_long_without_a_repeat_clashes_alone()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("mohanam"), NoRepeatDays = 20 };
        var refused = Refused(request);
        Assert.Equal([PlanRuleKind.NoRepeat], Kinds(refused));
        Assert.Contains("20 days", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(WarmupPlan.Make(request with { NoRepeatDays = 0 }));

        // There are six openings: five days can stand between, six cannot.
        Assert.NotNull(WarmupPlan.Make(request with { NoRepeatDays = 5 }));
        Assert.Equal([PlanRuleKind.NoRepeat], Kinds(Refused(request with { NoRepeatDays = 6 })));
    }

    [Fact]
    public void A_ceiling_and_a_wait_that_clash_only_together_are_both_named()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("mohanam"), NoRepeatDays = 4, Level = Level.Beginner with { StartCeiling = 0, CeilingStep = 0 } };
        Assert.Equal([PlanRuleKind.Ceiling, PlanRuleKind.NoRepeat], Kinds(Refused(request)).Order().ToArray());
        Assert.NotNull(WarmupPlan.Make(request with { NoRepeatDays = 0 }));
        Assert.NotNull(WarmupPlan.Make(request with { Level = Level.Beginner with { StartCeiling = 100 } }));
    }

    [Fact]
    public void A_singer_whose_range_holds_no_drill_is_named_with_the_reason()
    {
        var refused = Refused(Requests.Usual with { Singers = [.. Requests.Class, Requests.Singer("Robin", 60, 62, 20)] });
        var rule = Assert.Single(refused.Clash);
        Assert.Equal((PlanRuleKind.Range, "Robin"), (rule.Kind, rule.Singer));
        Assert.Contains("comfortable note", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(WarmupPlan.Make(Requests.Usual));
    }

    [Fact]
    public void Two_singers_who_both_stand_in_the_way_by_themselves_are_both_named()
    {
        var refused = Refused(Requests.Usual with { Singers = [Requests.Singer("Robin", 60, 62, 20), Requests.Singer("Finch", 64, 65, 20)] });
        ValueList<PlanRule>[] sets = [refused.Clash, .. refused.FurtherClashes];
        Assert.All(sets, s => Assert.Equal(PlanRuleKind.Range, Assert.Single(s).Kind));
        Assert.Equal(["Finch", "Robin"], sets.Select(s => s[0].Singer!).Order().ToArray());
        Assert.All(["Robin", "Finch"], name => Assert.Contains(name, refused.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_level_that_leaves_next_to_nothing_is_refused_with_the_singer_unless_that_little_is_asked_for()
    {
        // A tone of two seconds leaves 0.8 on a breath (0.4 of it, docs/voices.md): hardly any note is so short, wherever one breathes.
        var request = Requests.Usual with { Singers = [.. Requests.Class, Requests.Singer("Robin", 50, 76, 2)], Level = Level.Advanced, Minutes = 20 };
        var refused = Refused(request);
        Assert.Contains("Robin", refused.Message, StringComparison.Ordinal);
        Assert.Contains(refused.Clash, r => r is { Kind: PlanRuleKind.Breath, Singer: "Robin" });
        Assert.NotNull(WarmupPlan.Make(request with { Singers = Requests.Class }));
    }

    [Fact]
    public void A_share_of_the_time_that_cannot_be_filled_is_a_rule_that_can_be_given_up()
    {
        // One group of nine short drills, a fifth of them a day and each sung twelve times at most, cannot fill the whole of twenty minutes.
        var request = Requests.Usual with
        {
            Level = Level.Beginner with { Groups = ["choir"], Tempo = TempoRamp.Constant(60), StartCeiling = 100 }, Scales = Requests.Scales("mohanam"), Minutes = 20, NoRepeatDays = 4, LeastFillPercent = 100,
        };
        var refused = Refused(request);
        Assert.Contains(refused.Clash, r => r.Kind == PlanRuleKind.Fill);
        Assert.Contains("fill", refused.Message, StringComparison.Ordinal);
        var made = WarmupPlan.Make(request with { LeastFillPercent = 0 });
        Assert.Contains(made.Plan.Days, d => d.Shortfall is not null);
    }

    [Fact]
    public void A_budget_too_small_for_one_drill_says_what_the_shortest_takes()
    {
        var slow = Level.Beginner with { Tempo = 10 };
        var refused = Refused(Requests.Usual with { Singers = [Requests.Singer("Heron", 48, 76, 120, Experience.Advanced)], Level = slow, Minutes = 5 });
        Assert.Equal([PlanRuleKind.Budget], Kinds(refused));

        // At tempo 10 an avartana of Adi lasts 48 s, and a fifth of five minutes is 60 s: the count-in and one line alone take 96 s.
        Assert.Contains("60 s", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_but_rest_days_is_refused()
    {
        var refused = Refused(Requests.Usual with { RestDays = [.. Enum.GetValues<DayOfWeek>()] });
        Assert.Equal([PlanRuleKind.Rest], Kinds(refused));
        Assert.Equal([PlanRuleKind.Rest], Kinds(Refused(Requests.Usual with { Start = new DateOnly(2026, 12, 6), Days = 1 })));
    }

    [Fact]
    public void A_scale_that_does_not_fit_is_left_out_with_its_reason_while_others_are_sung()
    {
        // Two notes an octave have no figure of five places.
        var made = WarmupPlan.Make(Requests.Usual with { Scales = [Catalogue.Default.Read("mohanam"), new Scale("Two", [default, new ScaleTone(new Degree(5), 0), new ScaleTone(default, 1)])], Days = 5 });
        Assert.Contains("Two has no", Assert.Single(made.LeftOut), StringComparison.Ordinal);
        Assert.All(made.Plan.Days, d => Assert.All(d.Drills, p => Assert.Equal("Mohanam", p.Drill.Scale.Name)));
    }

    [Theory]
    [InlineData(0, 8, 3, "days must be between 1 and 20000, not 0")]
    [InlineData(20_001, 8, 3, "days must be between 1 and 20000, not 20001")]
    [InlineData(28, 4, 3, "minutes must be between 5 and 20, not 4")]
    [InlineData(28, 21, 3, "minutes must be between 5 and 20, not 21")]
    [InlineData(28, 8, -1, "the days without a repeat must be between 0 and 365, not -1")]
    public void Values_outside_their_range_are_refused_with_the_range(int days, int minutes, int noRepeat, string message)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Requests.Usual with { Days = days, Minutes = minutes, NoRepeatDays = noRepeat });
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void No_singers_no_scales_and_days_beyond_the_calendar_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Requests.Usual with { Singers = [] });
        Assert.Throws<ArgumentOutOfRangeException>(() => Requests.Usual with { Scales = [] });
        Assert.Throws<ArgumentException>(() => WarmupPlan.Make(Requests.Usual with { Start = DateOnly.MaxValue, Days = 2 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Requests.Usual with { RestDays = [(DayOfWeek)7] });
        Assert.Throws<ArgumentNullException>(() => Requests.Usual with { Scales = [null!] });
    }
}
