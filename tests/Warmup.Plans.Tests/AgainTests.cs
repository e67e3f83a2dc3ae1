using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Plans.Tests;

/// <summary>Source: the rule of docs/plans.md: a drill of which lines stayed off gets its turn again before others, unless the teacher ticked it off or switched this off.</summary>
public class AgainTests
{
    private static readonly DateOnly Before = new(2026, 11, 30);

    private static LogEntry Of(string scale, string exercise) => new() { Date = Before, ScaleName = scale, ExerciseName = exercise, Tempo = 60, OffLines = [2, 5] };

    private static string Text(WarmupPlan plan)
    {
        using var stream = new MemoryStream();
        PlanFile.Write(plan, stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }

    private static int? First(PlanResult made, LogEntry entry) =>
        made.Plan.Days.Select((d, i) => (d, i)).Where(x => x.d.Drills.Any(p => p.Drill.ExerciseName == entry.ExerciseName && p.Drill.Scale.Name == entry.ScaleName)).Select(x => (int?)x.i).FirstOrDefault();

    [Property(MaxTest = 4)]
    public Property It_comes_as_early_as_without_the_rule_or_earlier_and_every_switch_gives_the_plan_without_it() =>
        Prop.ForAll((from request in Requests.Random.Select(r => r with { Days = Math.Min(r.Days, 9), Scales = [r.Scales[0]] }) from which in Gen.Choose(0, 1_000) select (request, which)).ToArbitrary(), x =>
        {
            PlanResult plain;
            try
            {
                plain = WarmupPlan.Make(x.request);
            }
            catch (PlanImpossibleException)
            {
                return true.Classify(true, "impossible");
            }

            var middle = plain.Plan.Days.SelectMany(d => d.Drills).Where(d => d.Drill.Role == DrillRole.Middle).Select(d => d.Drill).Distinct().ToList();
            var drill = middle[x.which % middle.Count];
            var off = Of(drill.Scale.Name, drill.ExerciseName);
            var request = x.request with { Log = [off] };
            PlanResult without, with;
            try
            {
                without = WarmupPlan.Make(request with { Log = [off with { OffLines = [] }] });
                with = WarmupPlan.Make(request);
            }
            catch (PlanImpossibleException)
            {
                return true.Classify(true, "impossible with the log");
            }

            Assert.Equal([off], with.Again);
            Assert.Empty(without.Again);
            Assert.True((First(with, off) ?? int.MaxValue) <= (First(without, off) ?? int.MaxValue));
            Assert.Equal(Text(without.Plan), Text(WarmupPlan.Make(request with { HasRetries = false }).Plan));
            var ticked = WarmupPlan.Make(request with { Log = [off with { IsTicked = true, Tempo = Tempo.Slowest }] });
            Assert.Empty(ticked.Again);
            Assert.Equal(Text(without.Plan), Text(ticked.Plan));
            return true.Classify(First(with, off) < (First(without, off) ?? int.MaxValue), "earlier");
        });

    [Fact]
    public void The_last_entry_of_a_drill_decides()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("mohanam"), Days = 14 };
        var names = WarmupPlan.Make(request).Plan.Days.SelectMany(d => d.Drills).Where(d => d.Drill.Role == DrillRole.Middle).Select(d => d.Drill.ExerciseName).Distinct().ToList();
        LogEntry off = Of("Mohana", names[0]) with { ScaleName = "mohanam", Date = Before.AddDays(-3) }, fine = off with { Date = Before, OffLines = [] };
        Assert.Equal([off], WarmupPlan.Make(request with { Log = [off] }).Again);
        Assert.Empty(WarmupPlan.Make(request with { Log = [fine, off] }).Again);
        Assert.Equal([off with { Date = Before }], WarmupPlan.Make(request with { Log = [fine, off with { Date = Before }] }).Again);
        Assert.Empty(WarmupPlan.Make(request with { Log = [off with { ExerciseName = "sung by nobody" }] }).Again);
    }

    [Fact]
    public void Of_all_drills_that_stayed_off_each_has_its_turn_in_the_first_days()
    {
        var request = Requests.Usual with { Scales = Requests.Scales("mohanam"), Days = 12, Minutes = 10, NoRepeatDays = 0 };
        var names = WarmupPlan.Make(request).Plan.Days.Take(6).SelectMany(d => d.Drills).Where(d => d.Drill.Role == DrillRole.Middle).Select(d => d.Drill.ExerciseName).Distinct().Take(4).ToList();
        var made = WarmupPlan.Make(request with { Log = names.Select(n => Of("Mohanam", n)).ToValueList() });
        var early = made.Plan.Days.Take(5).SelectMany(d => d.Drills.ConvertAll(p => p.Drill.ExerciseName)).ToHashSet();
        Assert.All(names, n => Assert.Contains(n, early));
    }

    [Theory]
    [InlineData("off:2,5", true)]
    [InlineData("off:1", true)]
    [InlineData("off:2,5\tWren=56", true)]
    [InlineData("off:a=56", true)]
    [InlineData("off:", false)]
    [InlineData("off:0", false)]
    [InlineData("off:5,2", false)]
    [InlineData("off:2,2", false)]
    [InlineData("off:2,\u0000", false)]
    [InlineData("off:2\u0000", false)]
    [InlineData("off:100001", false)]
    public void Lines_that_stayed_off_stand_in_the_line_of_the_log(string fields, bool isRead)
    {
        var line = "2026-11-30\tMohanam\tsarali-1\t64\t-\t" + fields;
        Assert.Equal(isRead, LogEntry.TryParse(line, out var entry, out var error));
        Assert.Equal(isRead, error is null);
        if (isRead)
        {
            Assert.Equal(line, entry!.ToString());
        }
    }

    [Theory]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64\u0000\tx", 29)]
    [InlineData("2026-11-30\tMohanam\tsarali-1\t64\tx\tWren=56\u0000", 34)]
    [InlineData("2026-11-30\u0000\tMohanam\tsarali-1\t64\tx", 1)]
    public void A_number_with_a_NUL_after_it_is_no_number(string line, int column)
    {
        // .NET's own reader passes over NULs at a number's end.
        Assert.False(LogEntry.TryParse(line, out _, out var error));
        Assert.Equal(column, error.Column);
    }

    [Fact]
    public void Lines_that_do_not_rise_are_refused_by_name() =>
        Assert.Equal("OffLines", Assert.Throws<ArgumentException>(() => Of("a", "b") with { OffLines = [2, 2] }).ParamName);
}
