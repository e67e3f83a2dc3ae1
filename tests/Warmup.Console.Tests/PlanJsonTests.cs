using System.Globalization;
using System.Text.Json;
using Warmup.Plans;

namespace Warmup.Cli.Tests;

/// <summary>What <c>warmup plan --json</c> says is what the plan's own file and the library say; nothing else is printed.</summary>
public sealed class PlanJsonTests : IDisposable
{
    private readonly Shell _shell = new();

    public PlanJsonTests() => Write("singers.json", Studio.Singers);

    // Wren's highest notes are not easy any more, and she has less breath.
    private static ValueList<Singer> Changed => Studio.Singers.ConvertAll(s => s.Alias == "Wren" ? s.With(new Measurement(new DateOnly(2026, 12, 3), s.Low, NoteName.Parse("B4"), 12)) : s);

    public void Dispose() => _shell.Dispose();

    private void Write(string name, ValueList<Singer> singers)
    {
        using var file = File.Create(_shell.At(name));
        SingersFile.Write(singers, file);
    }

    private JsonElement New(params string[] more) => Json(
        0, ["--singers", _shell.At("singers.json"), "--scales", "mohanam, mayamalavagowla", "--start", "2026-12-01", "--days", "14", "--seed", "7", "--formats", "none", "--out", _shell.At("a"), .. more]);

    private static JsonElement Json(int code, params string[] options)
    {
        var run = Shell.Run(["plan", .. options, "--json"]);
        Assert.Equal((code, string.Empty), (run.Code, run.Error));
        using var document = JsonDocument.Parse(run.Out);
        var root = document.RootElement.Clone();
        Assert.Equal("urn:warmup:planned:1", root.GetProperty("schema").GetString());
        return root;
    }

    private WarmupPlan Plan(string folder) => PlanFile.Read(File.ReadAllBytes(_shell.At($"{folder}/plan.json")));

    private static void Same(IEnumerable<PlanDay> days, JsonElement rows)
    {
        var expected = days.Select(d => $"{d.Date:yyyy-MM-dd} {d.Scale?.Name} {d.Seconds.ToDouble():R}: {string.Join("; ", d.Drills.Select(p => $"{p.Drill.ExerciseName} {p.Tempo} {p.Times}"))}");
        Assert.Equal(
            expected.Select(t => t.ToString(CultureInfo.InvariantCulture)),
            rows.EnumerateArray().Select(d =>
                $"{d.GetProperty("date")} {(d.TryGetProperty("scale", out var scale) ? scale : string.Empty)} {d.GetProperty("seconds").GetDouble():R}: {string.Join("; ", d.GetProperty("drills").EnumerateArray().Select(p => $"{p.GetProperty("name")} {p.GetProperty("tempo")} {p.GetProperty("times")}"))}"));
    }

    private static string Words(JsonElement list) => string.Join(", ", list.EnumerateArray());

    [Fact]
    public void A_new_plan_has_its_days_its_singers_and_its_files()
    {
        var report = New();
        Same(Plan("a").Days, report.GetProperty("days"));
        Assert.Equal((8, Plan("a").Tonic.ToString(), Plan("a").LevelName), (report.GetProperty("minutes").GetInt32(), report.GetProperty("tonic").GetString(), report.GetProperty("level").GetString()));

        var singers = report.GetProperty("singers").EnumerateArray().ToList();
        Assert.Equal(Studio.Singers.Select(s => s.Alias), singers.Select(s => s.GetProperty("alias").GetString()));

        // The men of the invented class sing an octave lower.
        Assert.Equal(["Otter", "Badger"], singers.Where(s => s.GetProperty("octaves").GetInt32() == -1).Select(s => s.GetProperty("alias").GetString()));
        Assert.All(singers, s => Assert.Equal(0, s.GetProperty("findings").GetArrayLength()));
        Assert.InRange(report.GetProperty("sung").GetProperty("share").GetDouble(), 0.5, 1);
        Assert.Equal(Cautions.All.Select(c => c.Text), report.GetProperty("cautions").EnumerateArray().Take(Cautions.All.Count).Select(c => c.GetProperty("text").GetString()));

        var files = report.GetProperty("files").EnumerateArray().ToList();
        Assert.Equal(["plan.json", "plan.html", "plan.ics"], files.Select(f => Path.GetFileName(f.GetProperty("path").GetString())));
        Assert.All(files, f => Assert.True(File.Exists(f.GetProperty("path").GetString()) && !f.GetProperty("kept").GetBoolean()));
        File.Delete(_shell.At("a/plan.ics"));
        Assert.Equal([true, true, false], New().GetProperty("files").EnumerateArray().Select(f => f.GetProperty("kept").GetBoolean()));
    }

    [Fact]
    public void A_plan_that_no_longer_fits_names_the_findings_of_each_singer()
    {
        New();
        Write("changed.json", Changed);
        var renewal = Plan("a").Renew(Changed);
        Assert.NotEmpty(renewal.Days);
        var report = Json(renewal.IsFitForAll ? 0 : 1, "--plan", _shell.At("a/plan.json"), "--singers", _shell.At("changed.json"), "--formats", "none", "--out", _shell.At("b"));
        Same(Plan("b").Days, report.GetProperty("days"));
        foreach (var singer in report.GetProperty("singers").EnumerateArray())
        {
            var alias = singer.GetProperty("alias").GetString();
            Assert.Equal(
                renewal.Days.SelectMany(d => d.Why.Where(f => f.Singer == alias).Select(f => $"{d.Before.Date:yyyy-MM-dd} {f.Code} {f.Message}")),
                singer.GetProperty("findings").EnumerateArray().Select(f => $"{f.GetProperty("date")} {f.GetProperty("finding").GetProperty("code")} {f.GetProperty("finding").GetProperty("message")}"));
        }

        var renewals = report.GetProperty("renewals").EnumerateArray().ToList();
        Assert.Equal(renewal.Days.Select(d => d.Before.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), renewals.Select(r => r.GetProperty("date").GetString()));
        Assert.All(renewals.Zip(renewal.Days), r => Assert.Equal(r.Second.Refusal is null, r.First.GetProperty("outcome").GetString() != "notPossible"));
    }

    [Fact]
    public void A_day_and_a_week_have_their_own_days_and_files()
    {
        New();
        var plan = Plan("a");
        var day = Json(0, "--plan", _shell.At("a/plan.json"), "--day", "2026-12-05", "--formats", "txt mid", "--out", _shell.At("d"));
        Same(plan.Days.Where(d => d.Date == new DateOnly(2026, 12, 5)), day.GetProperty("days"));
        Assert.Equal($"{_shell.At("d/2026-12-05.txt")}, {_shell.At("d/2026-12-05.mid")}", string.Join(", ", day.GetProperty("files").EnumerateArray().Select(f => f.GetProperty("path"))));

        // From Saturday 5 to Friday 11 December there is one Sunday.
        var week = Json(0, "--plan", _shell.At("a/plan.json"), "--week", "2026-12-05", "--out", _shell.At("w"));
        Same(plan.Days.Where(d => d.Date >= new DateOnly(2026, 12, 5) && d.Date <= new DateOnly(2026, 12, 11) && !d.IsRest), week.GetProperty("days"));
        Assert.Equal(string.Empty, Words(week.GetProperty("singers")));
    }
}
