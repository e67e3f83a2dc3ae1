using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.Testing;
using Warmup.Midi;
using Warmup.Plans;
using Warmup.Web;

namespace Warmup.Samples.Tests;

/// <summary>The page of a plan: its months, its days and their files. Made-up singers of the studio Lantern Lane.</summary>
public sealed partial class PlanPageTests : IDisposable
{
    private const string Class = "Sparrow,G3,E5,18,beginner\nOtter,C3,G4,24,intermediate";

    private static readonly PlanResult Same = WarmupPlan.Make(new PlanRequest
    {
        Singers = ClassText.Read(Class, new Limits(), []),
        Scales = [Catalogue.Default.Read("Mayamalavagowla"), Catalogue.Default.Read("Mohanam")],
        Start = new DateOnly(2026, 12, 1),
    });

    private readonly WebApplicationFactory<Program> _service = new();
    private readonly HttpClient _client;

    public PlanPageTests() => _client = _service.CreateClient();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static PlanDay Saturday => Same.Plan.DayOf(new DateOnly(2026, 12, 5));

    public void Dispose()
    {
        _client.Dispose();
        _service.Dispose();
    }

    [Fact]
    public async Task The_months_have_the_librarys_days_and_no_address_has_the_class()
    {
        var page = await Page("/plan", ("start", "2026-12-01"), ("day", "2026-12-05"));
        var cells = Cell().Matches(page);
        Assert.Equal(Same.Plan.Days.Where(d => !d.IsRest).Select(d => d.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)), cells.Select(c => c.Groups["date"].Value));
        Assert.All(Same.Plan.Days.Where(d => !d.IsRest).Zip(cells), pair =>
        {
            Assert.Contains($"</b> {pair.First.Scale!.Name}</a>", pair.Second.Value, StringComparison.Ordinal);
            Assert.Equal(pair.First.Drills.Count, Regex.Count(pair.Second.Value, "<li>"));
        });
        Assert.Equal(4, Regex.Count(page, "<span>rest</span>"));
        Assert.Contains("Saturday, 5 December 2026: Mohanam", page, StringComparison.Ordinal);
        Assert.Contains("""data-address="/plan?start=2026-12-01&amp;day=2026-12-05" """.TrimEnd(), page, StringComparison.Ordinal);
        Assert.DoesNotContain("Sparrow", string.Join('\n', Address().Matches(page).Select(m => m.Value).Where(a => !a.Contains("Wren", StringComparison.Ordinal))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_sung_on_a_day_can_be_marked_with_the_lines_of_the_log()
    {
        var page = await Page("/plan", ("start", "2026-12-01"), ("day", "2026-12-05"));
        var lines = WebUtility.HtmlDecode(Marked().Match(page).Groups["log"].Value).Split('\n');
        Assert.Equal(
            Saturday.Drills.Select(d => new LogEntry { Date = Saturday.Date, ScaleName = d.Drill.Scale.Name, ExerciseName = d.Drill.ExerciseName, Tempo = d.Tempo, IsTicked = true }),
            lines.Select(l => LogEntry.Parse(l + "\tx")));
    }

    [Fact]
    public async Task A_days_files_are_the_librarys()
    {
        using var bytes = new MemoryStream();
        new MidiFormat().Write(Same.Plan.ToScore(Saturday), bytes, Stop);
        Assert.Equal(bytes.ToArray(), await File("/plan-day.mid"));
        Assert.StartsWith("%PDF-", Encoding.ASCII.GetString(await File("/plan-day.pdf")), StringComparison.Ordinal);
        Assert.StartsWith("<!DOCTYPE html>", Encoding.UTF8.GetString(await File("/plan-day.html")), StringComparison.Ordinal);
        Assert.Equal(Same.Plan, PlanFile.Read(await File("/plan.json")));
        Assert.Contains("December 2026", Encoding.UTF8.GetString(await File("/plan.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_drill_of_a_plan_opened_as_a_drill_is_what_the_plan_sings()
    {
        var seen = 0;
        foreach (var day in Same.Plan.Days.Where(d => !d.IsRest))
        {
            var score = Same.Plan.ToScore(day, cancellationToken: Stop);
            Assert.Equal(day.Drills.Count, score.Sections.Count);
            foreach (var (planned, section) in day.Drills.Zip(score.Sections))
            {
                var errors = new List<QueryError>();
                var request = DrillQuery.Read(DayDrillAddress.Of(Same.Plan, day, planned).ToDrill(), new Limits(), errors);
                Assert.Empty(errors);
                Assert.True(request!.TryMake(new Limits(), Stop, out _, out var made, out var refusal), refusal?.Message);
                Assert.Equal(Sung(section), Sung(Assert.Single(made.Sections)));
                seen++;
            }
        }

        Assert.True(seen > 50);
    }

    [Theory]
    [InlineData("days=0", "Days")]
    [InlineData("days=63", "between 1 and 62")]
    [InlineData("minutes=4", "between 5 and 20")]
    [InlineData("scales=nothing-like-it", "Scales")]
    [InlineData("scales=parents:1-13", "at most 12 scales")]
    [InlineData("start=tomorrow", "such as 2026-12-01")]
    [InlineData("level=master", "Level")]
    [InlineData("rest=funday", "weekdays")]
    [InlineData("seed=x", "Seed")]
    [InlineData("retry=perhaps", "must be yes or no")]
    [InlineData("climb=3&tonic=G3", "moves the tonic")]
    [InlineData("tempo=60 to 61.5 by 0.5", "whole aksharas")]
    public async Task What_is_wrong_is_said_on_the_page(string query, string said)
    {
        using var answer = await _client.GetAsync($"/plan?class={Uri.EscapeDataString(Class)}&{(query.StartsWith("start", StringComparison.Ordinal) ? string.Empty : "start=2026-12-01&")}{query}", Stop);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var page = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Contains(said, page[page.IndexOf("role=\"alert\"", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_no_plan_is_possible_the_one_change_that_was_tried_leads_to_one()
    {
        // With one scale and a wait as long as the plan, no day has drills that were not sung before.
        var refused = await Page("/plan", ("start", "2026-12-01"), ("scales", "mohanam"), ("no-repeat", "365"));
        Assert.Contains("There is no such plan", refused, StringComparison.Ordinal);
        var change = WebUtility.HtmlDecode(Change().Match(refused).Groups["to"].Value);
        Assert.NotEmpty(change);
        using var answer = await _client.GetAsync($"{change}&class={Uri.EscapeDataString(Class)}", Stop);
        Assert.Equal(24, Cell().Count(await answer.Content.ReadAsStringAsync(Stop)));
    }

    [Fact]
    public async Task Without_a_class_or_a_first_day_the_page_says_what_it_needs()
    {
        Assert.Contains("A plan needs a class and its first day.", await _client.GetStringAsync("/plan", Stop), StringComparison.Ordinal);
        using var file = await _client.PostAsync(new Uri("/plan.json", UriKind.Relative), PageTests.Form(("class", Class)), Stop);
        Assert.Equal(HttpStatusCode.BadRequest, file.StatusCode);
        await WebTests.Problem(file);
    }

    [Fact]
    public async Task A_plan_goes_on_from_what_was_ticked()
    {
        var log = string.Join('\n', Saturday.Drills.Select(d => $"2026-11-30\tMohanam\t{d.Drill.ExerciseName}\t64\tx"));
        Assert.Contains("sung, ticked, 64", await Page("/plan", ("start", "2026-12-01"), ("log", log)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("yes", true)]
    [InlineData("no", false)]
    public async Task A_drill_of_which_lines_stayed_off_is_retried_unless_that_is_switched_off(string retry, bool isRetried)
    {
        // The drill that the plan comes to last by itself, heard the day before.
        var last = Same.Plan.Days.Where(d => !d.IsRest).SelectMany(d => d.Drills.Where(p => p.Drill.Role == DrillRole.Middle).Select(p => (d.Date, Scale: d.Scale!.Name, p.Drill.ExerciseName)))
            .GroupBy(p => (p.Scale, p.ExerciseName)).MaxBy(g => g.Min(p => p.Date))!.Key;
        var page = await Page("/plan", ("start", "2026-12-01"), ("log", $"2026-11-30\t{last.Scale}\t{last.ExerciseName}\t60\t-\toff:2,3"), ("retry", retry));
        Assert.Equal(isRetried, page.Contains($"its turn again first: {last.ExerciseName} in {last.Scale}, of which lines 2-3 stayed off", StringComparison.Ordinal));
        Assert.Equal(isRetried, FirstDays(Cell().Matches(page)) != FirstDays(Cell().Matches(await Page("/plan", ("start", "2026-12-01")))));

        // Without the days' addresses, which carry the switch.
        static string FirstDays(MatchCollection cells) => string.Join('\n', cells.Select(c => Regex.Replace(c.Value, "href=\"[^\"]*\"", string.Empty)));
    }

    [Fact]
    public async Task The_longest_plan_is_under_100_kB_with_style_and_scripts()
    {
        var length = (await Page("/plan", ("start", "2026-12-01"), ("days", "62"), ("minutes", "20"), ("day", "2027-01-08"))).Length;
        foreach (var file in (string[])["/page.css", "/page.js", "/plan.js"])
        {
            length += (await _client.GetByteArrayAsync(file, Stop)).Length;
        }

        Assert.InRange(length, 40_000, 100_000);
    }

    // All that is sung and shown of a section.
    private static (string, Scale, double, Tuning, Meter, Delivery, Rational, Rational, (ValueList<ScoreNote>, ValueList<ScoreLine>, ValueList<Breath>, ValueList<Measure>)) Sung(Section section) => (
        section.Title, section.Scale, section.Tonic.Hz, section.Tuning, section.Meter, section.Delivery, section.Tempo, section.CountIn, (section.Notes, section.Lines, section.Breaths, section.Measures));

    [GeneratedRegex("<td class=\"singing\" data-date=\"(?<date>[^\"]*)\".*?</td>", RegexOptions.Singleline)]
    private static partial Regex Cell();

    [GeneratedRegex("(?:href|src|action|data-address)=\"[^\"]*\"")]
    private static partial Regex Address();

    [GeneratedRegex("id=\"sung\" data-date=\"2026-12-05\" data-log=\"(?<log>[^\"]*)\"")]
    private static partial Regex Marked();

    [GeneratedRegex("With this there is a plan[^<]*<a class=\"apply\" href=\"(?<to>[^\"]*)\"")]
    private static partial Regex Change();

    private async Task<string> Page(string path, params (string Name, string Value)[] values)
    {
        using var form = PageTests.Form([("class", Class), .. values]);
        using var answer = await _client.PostAsync(new Uri(path, UriKind.Relative), form, Stop);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync(Stop);
    }

    private async Task<byte[]> File(string path)
    {
        using var form = PageTests.Form(("class", Class), ("start", "2026-12-01"), ("day", "2026-12-05"));
        using var answer = await _client.PostAsync(new Uri(path, UriKind.Relative), form, Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{path}: {answer.StatusCode}");
        return await answer.Content.ReadAsByteArrayAsync(Stop);
    }
}
