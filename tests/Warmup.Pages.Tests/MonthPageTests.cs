using System.Text.Json.Nodes;
using Warmup.Plans;
using Warmup.Voices;

namespace Warmup.Pages.Tests;

/// <summary>The page of a month in a browser: a table on a wide screen, a list of days on a phone, light and dark.</summary>
[Collection<FilesInChromium>]
public class MonthPageTests(OpenedInChromium opened)
{
    private static readonly WarmupPlan Plan = WarmupPlan.Make(new PlanRequest
    {
        Singers = [Make("Wren", "G3", "E5"), Make("Otter", "C3", "G4")],
        Scales = [Catalogue.Default.Read("mohanam"), Catalogue.Default.Read("hamsadhwani")],
        Start = new DateOnly(2026, 12, 1),
        Days = 28,
    }).Plan;

    [Theory]
    [InlineData(360)]
    [InlineData(699)]
    public async Task Below_700_pixels_the_days_stand_one_under_the_other(int width)
    {
        await OpenAsync(width);
        var edges = await Numbers("[...document.querySelectorAll('td')].filter(d => d.offsetHeight > 0).map(d => Math.round(d.getBoundingClientRect().x))");
        Assert.Equal(31, edges.Count);
        Assert.Single(edges.Distinct());
        Assert.InRange((int)(await opened.Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, width);

        // 1 December 2026 is a Tuesday (common knowledge of the calendar); Sundays are days of rest.
        Assert.Equal("\"Tue \"", (string)(await opened.Browser.EvaluateAsync("getComputedStyle([...document.querySelectorAll('td')].find(d => d.textContent.startsWith('1:')), '::before').content"))!);
        Assert.Equal("\"Sun \"", (string)(await opened.Browser.EvaluateAsync("getComputedStyle([...document.querySelectorAll('td')].find(d => d.textContent === '6: rest'), '::before').content"))!);

        // A link is large enough for a finger: 24 pixels (WCAG 2.2, target size, level AA).
        Assert.All(await Numbers("[...document.querySelectorAll('a')].map(a => a.getBoundingClientRect().height)"), h => Assert.True(h >= 24));
    }

    public static TheoryData<int> Widths => [.. WholeCheck.OneIn(2, new[] { 360, 1000 })];

    [Theory]
    [MemberData(nameof(Widths))]
    public async Task The_page_keeps_the_rules_of_accessibility(int width)
    {
        await OpenAsync(width);
        Assert.Equal("[]", await Axe.ViolationsAsync(opened.Browser));
    }

    [Fact]
    public async Task From_700_pixels_on_the_month_is_a_table_of_seven_columns()
    {
        await OpenAsync(700);
        var edges = await Numbers("[...document.querySelectorAll('td')].map(d => Math.round(d.getBoundingClientRect().x))");
        Assert.Equal(7, edges.Distinct().Count());
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task Text_and_links_stand_out_in_light_and_dark(string scheme)
    {
        await OpenAsync(360);
        await opened.Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject
        {
            ["features"] = new JsonArray(new JsonObject { ["name"] = "prefers-color-scheme", ["value"] = scheme }),
        });
        var paper = await Contrast.LuminanceAsync(opened.Browser, "body", "backgroundColor");
        Assert.Equal(scheme == "light", paper > 0.5);
        Contrast.IsEnough(await Contrast.LuminanceAsync(opened.Browser, "td", "color"), paper);
        Contrast.IsEnough(await Contrast.LuminanceAsync(opened.Browser, "a", "color"), paper);
        await opened.Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject { ["features"] = new JsonArray() });
    }

    private static Singer Make(string alias, string low, string high) => new(alias, NoteName.Parse(low), NoteName.Parse(high), 15, Experience.Beginner);

    private async Task OpenAsync(int width)
    {
        using var stream = new MemoryStream();
        Assert.Single(MonthPage.Of(Plan, link: d => $"{d.Date:yyyy-MM-dd}.html")).Write(stream);
        await opened.OpenAsync(stream.ToArray(), width);
    }

    private async Task<List<double>> Numbers(string expression) => [.. (await opened.Browser.EvaluateAsync(expression))!.AsArray().Select(n => (double)n!)];
}
