namespace Warmup.Plans.Tests;

/// <summary>
/// Voices of a fifth, and classes whose tonic decides. Sources: the ranges are those of the table of voice types (a preschool child D4 to A4, a changing
/// voice D3 to A3); that each note lies within them is checked on the scores.
/// </summary>
public class NarrowVoiceTests
{
    private static readonly Singer Child = Requests.Singer("Pip", 62, 69, 8);

    private static PlanRequest Of(Singer singer, params string[] scales) => Requests.Usual with { Singers = [singer], Scales = Requests.Scales(scales), Days = 14 };

    private static void IsSungByAll(PlanRequest request, PlanResult made)
    {
        foreach (var day in made.Plan.Days.Where(d => !d.IsRest))
        {
            for (var s = 0; s < request.Singers.Count; s++)
            {
                Assert.True(made.Plan.ToScore(day, made.Plan.Tonic.Transposed(12 * made.Octaves[s])).Fits(request.Singers[s]), $"{day} for {request.Singers[s]}");
            }
        }
    }

    [Theory]
    [InlineData("preschool child", 8)]
    [InlineData("changing male voice 12-15", 12)]
    public void A_child_and_a_changing_voice_get_plans(string type, int seconds)
    {
        var voice = VoiceTypes.All.First(v => v.Name == type);
        Assert.Equal(7, voice.High.Midi - voice.Low.Midi);
        var request = Of(Requests.Singer("Pip", voice.Low.Midi, voice.High.Midi, seconds), "mohanam", "15", "hamsadhwani", "29");
        var made = WarmupPlan.Make(request);
        Assert.Empty(made.LeftOut);
        Assert.Equal(4, made.Plan.Days.Where(d => !d.IsRest).Select(d => d.Scale!.Name).Distinct().Count());
        IsSungByAll(request, made);
    }

    [Fact]
    public void Narrow_drills_lie_on_three_to_five_neighbouring_notes_of_every_parent()
    {
        Assert.All(NarrowExercises.Middle, exercise =>
        {
            for (var parent = 1; parent <= 72; parent++)
            {
                var scale = Catalogue.Default.Parent(parent).Scale;
                var ascent = scale.Ascent.ToList();
                var places = exercise.Pattern.Expand(scale).Lines.SelectMany(l => l.Notes).Select(n => ascent.IndexOf(n.Tone)).Distinct().Order().ToList();
                Assert.InRange(places.Count, 3, 5);
                Assert.Equal(Enumerable.Range(places[0], places.Count), places);
            }
        });
    }

    [Fact]
    public void A_tonic_that_works_is_found_where_the_best_one_for_the_run_does_not()
    {
        // F3 to E4 is a semitone short of an octave: an octave's run fits on no tonic.
        var request = Of(Requests.Singer("Robin", 53, 64, 16), "mohanam") with { Days = 6, NoRepeatDays = 0 };
        var made = WarmupPlan.Make(request);
        IsSungByAll(request, made);
        Assert.NotEqual("E3", made.Plan.Tonic.ToString());

        // Where the tonic is typed, it stays, and the refusal names one that works.
        var refused = Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request with { Tonic = Tonic.Parse("E3") }));
        Assert.StartsWith("no plan on E3: ", refused.Message, StringComparison.Ordinal);
        Assert.Equal(made.Plan.Tonic, refused.Change!.Request.Tonic);
        Assert.Contains($"take the tonic {made.Plan.Tonic} instead of E3", refused.Message, StringComparison.Ordinal);
        Assert.Equal(made.Plan, WarmupPlan.Make(refused.Change.Request).Plan);
    }

    [Fact]
    public void On_a_typed_tonic_a_scale_that_does_not_fit_is_left_out_and_named()
    {
        // A fourth above D holds four notes of the fifteenth parent (S R1 G3 M1, five semitones) and three of Mohanam (S R2 G3; P lies seven above).
        var request = Of(Requests.Singer("Pip", 62, 67, 8), "mohanam", "15") with { Tonic = Tonic.Parse("D4"), NoRepeatDays = 1 };
        var made = WarmupPlan.Make(request);
        Assert.Equal("D4", made.Plan.Tonic.ToString());
        Assert.StartsWith("Mohanam has no middle drill", Assert.Single(made.LeftOut), StringComparison.Ordinal);
        Assert.All(made.Plan.Days.Where(d => !d.IsRest), d => Assert.Equal("Mayamalavagowla", d.Scale!.Name));
        IsSungByAll(request, made);
    }

    [Fact]
    public void Of_several_tonics_one_that_has_a_place_for_every_scale_is_taken()
    {
        // Whatever the order of the scales, none is left out that could be sung on another tonic.
        foreach (var low in Enumerable.Range(48, 12))
        {
            var request = Of(Requests.Singer("Pip", low, low + 7, 12), "mohanam", "29") with { NoRepeatDays = 0, LeastFillPercent = 0 };
            Assert.Empty(WarmupPlan.Make(request).LeftOut);
            Assert.Empty(WarmupPlan.Make(request with { Scales = Requests.Scales("29", "mohanam") }).LeftOut);
        }
    }

    [Fact]
    public void A_refusal_is_short_and_offers_one_change()
    {
        var request = Of(Child, "mohanam");
        var refused = Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request));
        Assert.InRange(refused.Message.Length, 1, 500);
        Assert.Equal(1, refused.Change!.Request.NoRepeatDays);
        Assert.EndsWith("There is a plan if you keep drills away for 1 day of singing instead of 3", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(WarmupPlan.Make(refused.Change.Request));
        Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request with { NoRepeatDays = 2 }));
    }

    [Fact]
    public void Where_no_single_change_helps_another_tonic_is_offered_with_one()
    {
        // C4 lies below the child's lowest note, and on every other tonic the drills of one scale are too few for a wait of three days.
        var request = Of(Child, "mohanam") with { Tonic = Tonic.Parse("C4") };
        Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request with { Tonic = null }));
        Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request with { NoRepeatDays = 0 }));
        var refused = Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request));
        Assert.EndsWith("There is a plan if you take the tonic D4 instead of C4, and keep drills away for 1 day of singing instead of 3", refused.Message, StringComparison.Ordinal);
        Assert.Equal(("D4", 1), (refused.Change!.Request.Tonic?.ToString(), refused.Change.Request.NoRepeatDays));
        Assert.NotNull(WarmupPlan.Make(refused.Change.Request));
    }

    [Fact]
    public void In_a_class_the_one_voice_in_the_way_is_offered_to_be_left_out()
    {
        // Whatever the tonic, an adult of an octave and a half and a voice of two semitones share no opening.
        var request = Of(Child, "mohanam", "15") with { Singers = [Child, Requests.Singer("Robin", 60, 62, 12)] };
        var refused = Assert.Throws<PlanImpossibleException>(() => WarmupPlan.Make(request));
        Assert.Equal("plan without Robin", refused.Change!.Text);
        Assert.NotNull(WarmupPlan.Make(refused.Change.Request));
    }

    [Fact]
    public void Drills_of_the_teachers_own_are_sung_in_their_own_tala()
    {
        Exercise[] added = [new("own", 1, "a turn", Pattern.Parse("figure(1 2 3 2)"), "a teacher", "tisra eka"), Repertoire.Find("alankara-7")!];
        var request = Requests.Usual with { Added = added.ToValueList() };
        var plan = WarmupPlan.Make(request).Plan;
        var own = plan.Drills.Where(d => d.ExerciseName == "own-1").ToList();
        Assert.Equal(request.Scales.Count, own.Count);
        Assert.All(own, d => Assert.Equal((DrillRole.Middle, 3), (d.Role, d.Meter.Beats)));
        Assert.All(plan.Drills.Where(d => d.ExerciseName == "alankara-7"), d => Assert.Equal(4, d.Meter.Beats));
        Assert.Contains(plan.Days.SelectMany(d => d.Drills), d => d.Drill.ExerciseName == "own-1");

        // Where nobody can sing one, it is named with the reason.
        var child = Of(Child, "15") with { NoRepeatDays = 1, Added = [new("own", 1, "two octaves", Pattern.Parse("[S S' S'']"), "a teacher")] };
        Assert.Contains(WarmupPlan.Make(child).Limits, l => l.StartsWith("own-1, an added drill (two octaves), is not sung in Mayamalavagowla: ", StringComparison.Ordinal));

        Assert.Throws<ArgumentException>(() => Requests.Usual with { Added = [added[0], added[0]] });
    }

    [Fact]
    public void A_log_goes_on_however_the_scale_is_spelt()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("Hamsadhwani"), Days = 1, NoRepeatDays = 5 };
        var sung = WarmupPlan.Make(request).Plan.Days[0].Drills[0].Drill.ExerciseName;
        var log = new LogEntry { Date = Requests.Start.AddDays(-1), ScaleName = "hamsadhvani", ExerciseName = sung, Tempo = 60 };
        Assert.All(Enumerable.Range(0, 20), seed => Assert.NotEqual(sung, WarmupPlan.Make(request with { Seed = (ulong)seed, Log = [log] }).Plan.Days[0].Drills[0].Drill.ExerciseName));
    }
}
