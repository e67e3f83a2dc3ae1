using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Ical.Net;
using Warmup.Plans;

namespace Warmup.Cli.Tests;

/// <summary>
/// Sources: docs/plans.md on a plan whose class has changed, on the week to print and on the log; the published schema, evaluated by an independent
/// library; the same bytes where nothing has changed.
/// </summary>
public sealed partial class PlanRenewalTests : IDisposable
{
    private readonly Shell _shell = new();

    public PlanRenewalTests()
    {
        Write("singers.json", Studio.Singers);
        var run = Shell.Run("plan", "--singers", _shell.At("singers.json"), "--scales", "mohanam, mayamalavagowla", "--start", "2026-12-01", "--days", "14", "--seed", "7", "--formats", "none", "--out", _shell.At("a"));
        Assert.True(run.Code == 0, run.Error);
    }

    // Wren's highest notes are not easy any more, and she has less breath.
    private static ValueList<Singer> Changed => Studio.Singers.ConvertAll(s => s.Alias == "Wren" ? s.With(new Measurement(new DateOnly(2026, 12, 3), s.Low, NoteName.Parse("B4"), 12)) : s);

    public void Dispose() => _shell.Dispose();

    private void Write(string name, ValueList<Singer> singers)
    {
        using var file = File.Create(_shell.At(name));
        SingersFile.Write(singers, file);
    }

    private (int Code, string Out, string Error) Renew(string singers, string folder, params string[] more) =>
        Shell.Run(["plan", "--plan", _shell.At("a/plan.json"), "--singers", _shell.At(singers), "--formats", "none", "--out", _shell.At(folder), .. more]);

    private WarmupPlan Plan(string folder) => PlanFile.Read(File.ReadAllBytes(_shell.At($"{folder}/plan.json")));

    [Fact]
    public void A_class_that_has_not_changed_gets_the_same_files()
    {
        var (code, output, error) = Renew("singers.json", "b");
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("every planned day fits", output, StringComparison.Ordinal);
        foreach (var file in (string[])["plan.json", "plan.html", "plan.ics"])
        {
            Assert.Equal(File.ReadAllBytes(_shell.At("a/" + file)), File.ReadAllBytes(_shell.At("b/" + file)));
        }
    }

    [Fact]
    public void Days_that_no_longer_fit_are_named_and_written_to_another_folder_only()
    {
        var before = File.ReadAllBytes(_shell.At("a/plan.json"));
        Write("changed.json", Changed);
        var (code, output, error) = Renew("changed.json", "b", "--cautions");
        var renewal = Plan("a").Renew(Changed);
        Assert.Equal((renewal.IsFitForAll ? 0 : 1, string.Empty), (code, error));
        Assert.NotEmpty(renewal.Days);
        Assert.Equal(renewal.Plan, Plan("b"));
        Assert.Equal(renewal.Days.Count, output.Split('\n').Count(l => l.Contains(" no longer fits Wren: ", StringComparison.Ordinal)));
        Assert.All(Cautions.All, c => Assert.Contains(c.Text, output, StringComparison.Ordinal));
        Assert.Equal(before, File.ReadAllBytes(_shell.At("a/plan.json")));

        var written = File.ReadAllBytes(_shell.At("b/plan.json"));
        Assert.Contains("--force", Renew("singers.json", "b").Error, StringComparison.Ordinal);
        Assert.Contains("--force", Renew("changed.json", "a").Error, StringComparison.Ordinal);
        Assert.Equal(written, File.ReadAllBytes(_shell.At("b/plan.json")));

        using var document = JsonDocument.Parse(written);
        Assert.True(PlanCommandTests.Schema.Evaluate(document.RootElement).IsValid);
    }

    [Fact]
    public void The_calendar_of_a_renewed_plan_has_the_same_events()
    {
        Write("changed.json", Changed);
        Renew("changed.json", "b");
        Assert.NotEqual(File.ReadAllText(_shell.At("a/plan.ics")), File.ReadAllText(_shell.At("b/plan.ics")));
        Assert.Equal(Names("a"), Names("b"));

        List<string?> Names(string folder) => [.. Calendar.Load(File.ReadAllText(_shell.At($"{folder}/plan.ics")))!.Events.Select(e => e.Uid)];
    }

    [Fact]
    public void Days_before_the_start_stay_as_they_are()
    {
        Write("changed.json", Changed);
        Renew("changed.json", "b", "--start", "2026-12-09");
        Assert.Equal(Plan("a").Renew(Changed, new DateOnly(2026, 12, 9)).Plan, Plan("b"));
        Assert.Equal(Plan("a").Days.Take(8), Plan("b").Days.Take(8));
    }

    [Theory]
    [InlineData("--seed", "3")]
    [InlineData("--scales", "mohanam")]
    [InlineData("--alias", "Wren")]
    public void Options_of_a_new_plan_are_refused(string option, string value)
    {
        var (code, _, error) = Renew("singers.json", "b", option, value);
        Assert.Equal(2, code);
        Assert.Contains($"{option} belongs to a new plan", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("b")));
    }

    [Fact]
    public void A_week_is_one_document_with_a_page_for_each_day_of_singing()
    {
        // From Saturday 5 to Friday 11 December there is one Sunday.
        var run = Shell.Run("plan", "--plan", _shell.At("a/plan.json"), "--week", "2026-12-05", "--out", _shell.At("w"));
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(["week-2026-12-05.pdf"], Directory.GetFiles(_shell.At("w")).Select(Path.GetFileName));

        // A day with choir figures, each bar of which has a row, may go on over a second page.
        var choirDays = Plan("a").Days.Count(d => d.Date >= new DateOnly(2026, 12, 5) && d.Date <= new DateOnly(2026, 12, 11) && d.Drills.Any(p => p.Drill.Meter.Gestures.IsEmpty));
        Assert.InRange(PdfPage().Count(Encoding.Latin1.GetString(File.ReadAllBytes(_shell.At("w/week-2026-12-05.pdf")))), 6, 6 + choirDays);
        Assert.Contains("--force", Shell.Run("plan", "--plan", _shell.At("a/plan.json"), "--week", "2026-12-05", "--out", _shell.At("w")).Error, StringComparison.Ordinal);
        var late = Shell.Run("plan", "--plan", _shell.At("a/plan.json"), "--week", "2027-01-05", "--out", _shell.At("v"));
        Assert.Contains("nothing is sung in the seven days from 2027-01-05", late.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("v")));
    }

    [Fact]
    public void A_new_plan_may_write_its_first_week_as_well()
    {
        var run = Shell.Run("plan", "--singers", _shell.At("singers.json"), "--scales", "mohanam", "--start", "2026-12-01", "--days", "3", "--formats", "none", "--week", "2026-12-01", "--out", _shell.At("n"));
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(3, PdfPage().Count(Encoding.Latin1.GetString(File.ReadAllBytes(_shell.At("n/week-2026-12-01.pdf")))));
    }

    [Fact]
    public void The_log_knows_who_was_absent_and_who_was_slower_and_the_next_plan_goes_on_from_there()
    {
        var log = _shell.At("log.tsv");
        var run = Shell.Run(
            "plan", "--plan", _shell.At("a/plan.json"), "--day", "2026-12-14", "--formats", "txt", "--out", _shell.At("b"),
            "--sung", "--tick", "--log", log, "--absent", "Wren", "--absent", "Finch", "--reached", "Robin=50");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.All(PlanLog.Read(File.ReadAllBytes(log)).Entries, e => Assert.Equal([new SungBy("Wren", null), new SungBy("Finch", null), new SungBy("Robin", 50)], e.Singers));

        var next = Shell.Run(
            "plan", "--singers", _shell.At("singers.json"), "--scales", "mohanam", "--start", "2026-12-15", "--days", "3", "--formats", "none", "--log", log, "--out", _shell.At("n"));
        Assert.Equal(0, next.Code);
        Assert.Matches("reached and ticked: Wren nothing yet, Finch nothing yet, Heron 6[0-9], Otter 6[0-9], Badger 6[0-9], Robin 50; the plan goes on from the slowest", next.Out);
    }

    [Theory]
    [InlineData("Robin", "Robin=56")]
    [InlineData("Robin=9", "between 10 and 400")]
    [InlineData("Wren=60", "once")]
    public void A_wrong_entry_for_the_log_is_refused_before_anything_is_written(string reached, string expected)
    {
        var run = Shell.Run(
            "plan", "--plan", _shell.At("a/plan.json"), "--day", "2026-12-14", "--formats", "txt", "--out", _shell.At("b"), "--sung", "--log", _shell.At("log.tsv"), "--absent", "wren", "--reached", reached);
        Assert.Equal(2, run.Code);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_shell.At("b")));
    }

    [GeneratedRegex("/Type\\s*/Page\\b(?!s)")]
    private static partial Regex PdfPage();
}
