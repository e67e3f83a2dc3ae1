using System.Globalization;

namespace Warmup.Plans.Tests;

/// <summary>
/// Drills that climb by semitones in a plan. Source: common practice of choirs, the rules as docs/plans.md states them, and each singer's range as
/// the request has it.
/// </summary>
public class ClimbTests
{
    private static readonly PlanRequest Climbing = Requests.Usual with { Days = 12, NoRepeatDays = 3, Minutes = 12, Climb = 4 };

    private static IEnumerable<(PlanDay Day, DayDrill Drill)> Climbs(WarmupPlan plan) =>
        plan.Days.SelectMany(d => d.Drills.Where(p => p.Drill.ClimbSemitones > 0).Select(p => (d, p)));

    [Fact]
    public void A_climb_is_sung_on_each_tonic_up_and_back_and_every_round_names_its_tonic()
    {
        var plan = WarmupPlan.Make(Climbing).Plan;
        Assert.NotEmpty(Climbs(plan));
        foreach (var (day, planned) in Climbs(plan))
        {
            var rounds = plan.ToScore(day).Sections.Where(s => s.Title.Contains($": {planned.Drill.ExerciseName}, ", StringComparison.Ordinal)).ToList();
            var n = planned.Drill.ClimbSemitones;
            int[] expected = [.. Enumerable.Range(0, n + 1), .. Enumerable.Range(0, n).Reverse()];
            Assert.Equal(expected, rounds.Select(r => r.Tonic.Midi - plan.Tonic.Midi));
            Assert.All(rounds, r => Assert.EndsWith($" on {r.TonicName}", r.Title, StringComparison.Ordinal));
            Assert.Equal(1, planned.Times);
            Assert.Contains($"climbing {n.ToString(CultureInfo.InvariantCulture)} semitone", planned.Drill.Title, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_note_of_every_round_lies_in_everyones_comfortable_range()
    {
        var made = WarmupPlan.Make(Climbing);
        foreach (var (day, _) in Climbs(made.Plan))
        {
            for (var s = 0; s < Climbing.Singers.Count; s++)
            {
                var singer = Climbing.Singers[s];
                var score = made.Plan.ToScore(day, made.Plan.Tonic.Transposed(12 * made.Octaves[s]));
                Assert.All(score.Sections, section => Assert.All(section.Notes, n => Assert.InRange(
                    section.PitchOf(n).Midi, singer.Low.Midi, singer.High.Midi)));
                Assert.True(score.AsSungBy(singer).Fits(singer));
            }
        }
    }

    [Fact]
    public void Most_days_climb_and_each_keeps_the_time_the_order_and_the_wait()
    {
        var days = WarmupPlan.Make(Climbing).Plan;
        var sung = days.Days.Where(d => !d.IsRest).ToList();
        Assert.True(2 * sung.Count(d => d.Drills.Any(p => p.Drill.ClimbSemitones > 0)) > sung.Count, "too few days climb");
        foreach (var (day, index) in sung.Select((d, i) => (d, i)))
        {
            Assert.Equal(day.Seconds, days.ToScore(day).Seconds);
            Assert.True(day.Seconds <= 60 * Climbing.Minutes);
            var middle = day.Drills.Where(p => p.Drill.Role == DrillRole.Middle).Select(p => p.Drill).ToList();
            Assert.All(middle.Skip(1).Zip(middle), pair => Assert.True(pair.First.SpanSemitones >= pair.Second.SpanSemitones && pair.First.Grade >= pair.Second.Grade));
            var before = sung.Take(index).TakeLast(Climbing.NoRepeatDays).SelectMany(d => d.Drills).Select(p => p.Drill).ToHashSet();
            Assert.DoesNotContain(day.Drills, p => before.Contains(p.Drill));
        }
    }

    [Fact]
    public void A_day_planned_anew_climbs_inside_the_new_range()
    {
        var plan = WarmupPlan.Make(Climbing with { Days = 2, NoRepeatDays = 0, Scales = Requests.Scales("mayamalavagowla") }).Plan;
        Assert.NotEmpty(Climbs(plan));

        // Wren's range ends a fifth above the tonic: nothing that reaches the fifth climbs any more.
        var top = plan.Tonic.Midi + 7;
        ValueList<Singer> singers = [Requests.Singer("Wren", plan.Tonic.Midi - 5, top, 18)];
        var renewal = plan.Renew(singers);
        Assert.Equal(0, renewal.Octaves[0]);
        Assert.Contains(renewal.Days, d => d.Refusal is null);
        Assert.All(renewal.Days.Where(d => d.Refusal is null), day => Assert.All(
            renewal.Plan.ToScore(day.Now).Sections, section => Assert.All(section.Notes, n => Assert.True(section.PitchOf(n).Midi <= top))));
    }

    [Fact]
    public void A_range_with_little_room_climbs_less()
    {
        // An octave and two semitones: however the tonic lies, nothing that reaches the fifth climbs more than seven semitones.
        ValueList<Singer> narrow = [Requests.Singer("Wren", 57, 71, 20), Requests.Singer("Otter", 57, 71, 20)];
        var made = WarmupPlan.Make(Climbing with { Singers = narrow, Climb = 7, LeastFillPercent = 0, NoRepeatDays = 0 });
        var climbs = made.Plan.Drills.Where(d => d.ClimbSemitones > 0).ToList();
        Assert.NotEmpty(climbs);
        Assert.Contains(climbs, c => c.ClimbSemitones < 7);
        Assert.All(climbs, c => Assert.True(c.SpanSemitones + c.ClimbSemitones <= 14, $"{c}: {c.SpanSemitones} and {c.ClimbSemitones}"));
        Assert.Contains(made.Limits, l => l.Contains("climbing less far", StringComparison.Ordinal));
    }

    [Fact]
    public void A_class_that_no_climb_fits_is_told_so()
    {
        // Three notes of this scale are a major third; a semitone more does not lie in a voice of a major third.
        ValueList<Singer> child = [Requests.Singer("Wren", 60, 64, 30)];
        var request = Climbing with { Singers = child, Scales = Requests.Scales("mayamalavagowla"), LeastFillPercent = 0, NoRepeatDays = 0, Days = 1 };
        Assert.Contains(WarmupPlan.Make(request).Limits, l => l.StartsWith("no drill climbs in Mayamalavagowla: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_wish_nothing_climbs_and_the_file_says_nothing_of_it()
    {
        var plan = WarmupPlan.Make(Climbing with { Climb = 0, Days = 2 }).Plan;
        Assert.Empty(Climbs(plan));
        using var stream = new MemoryStream();
        PlanFile.Write(plan, plan.Days, stream);
        Assert.DoesNotContain("\"climb", System.Text.Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void The_file_keeps_how_far_a_drill_climbs()
    {
        var plan = WarmupPlan.Make(Climbing).Plan;
        using var stream = new MemoryStream();
        PlanFile.Write(plan, plan.Days, stream);
        var read = PlanFile.Read(stream.ToArray());
        Assert.Equal(plan, read);
        Assert.Equal(plan.Drills.Select(d => d.ClimbSemitones), read.Drills.Select(d => d.ClimbSemitones));
        Assert.Contains(read.Drills, d => d.ClimbSemitones == 4);
    }

    [Theory]
    [InlineData("\"climb\": 8", "climb must be between 1 and 7, not 8")]
    [InlineData("\"climb\": 4, \"midi\": 96", "a drill climbs from C7 beyond C7, the highest tonic")]
    public void A_file_that_climbs_too_far_is_refused(string wrong, string message)
    {
        var plan = WarmupPlan.Make(Climbing with { Days = 2 }).Plan;
        using var stream = new MemoryStream();
        PlanFile.Write(plan, plan.Days, stream);
        var text = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        text = wrong.Contains("midi", StringComparison.Ordinal)
            ? text.Replace($"\"midi\": {plan.Tonic.Midi.ToString(CultureInfo.InvariantCulture)}", "\"midi\": 96", StringComparison.Ordinal)
            : text.Replace("\"climb\": 4", wrong, StringComparison.Ordinal);
        var refused = Assert.Throws<WarmupFormatException>(() => PlanFile.Read(System.Text.Encoding.UTF8.GetBytes(text)));
        Assert.Contains(message, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(8)]
    public void A_climb_lies_between_nothing_and_a_fifth(int semitones) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Requests.Usual with { Climb = semitones });
}
