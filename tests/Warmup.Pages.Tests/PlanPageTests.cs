using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>The page of a plan in a browser: the month, a day opened, singing it marked.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class PlanPageTests(Opened opened, PageServer server) : ServedPage(opened, server)
{
    private protected const string Address = "/plan?start=2026-12-01";
    private protected const string Saturday = "td[data-date=\"2026-12-05\"]";
    private const string Shown = "document.querySelectorAll('td.singing').length === 24 && !document.body.ariaBusy";

    [Fact]
    public async Task A_day_is_opened_sung_and_ticked_and_the_mark_stays_in_the_browser()
    {
        await StartAsync(Address);
        await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
        await Browser.WaitAsync(Shown);
        await Browser.ClickAsync($"{Saturday} a");
        await Browser.WaitAsync("document.activeElement.id === 'day-heading'");
        Assert.Equal("?start=2026-12-01&day=2026-12-05", (string)(await Browser.EvaluateAsync("location.search"))!);
        Assert.StartsWith("Saturday, 5 December 2026", (string)(await Browser.EvaluateAsync("document.getElementById('day-heading').textContent"))!, StringComparison.Ordinal);
        await Browser.ClickAsync("#sung");
        Assert.Equal("sung", await MarkAsync());
        await Browser.ClickAsync("#ticked");
        Assert.Equal("sung, ticked", await MarkAsync());
        Assert.Equal("1 of 24 days sung.", (string)(await Browser.EvaluateAsync("document.getElementById('sung-count').textContent"))!);

        // After a reload, and in another tab, which takes the mark away.
        await Browser.VisitAsync(At(Address + "&day=2026-12-05"));
        await Browser.WaitAsync(Shown);
        Assert.Equal("sung, ticked", await MarkAsync());
        await Browser.InAnotherTabAsync(async () =>
        {
            await Browser.VisitAsync(At(Address + "&day=2026-12-05"));
            await Browser.WaitAsync(Shown);
            Assert.True((bool)(await Browser.EvaluateAsync("document.getElementById('ticked').checked"))!);
            await Browser.ClickAsync("#sung");
        });
        await Browser.WaitAsync($"document.querySelector('{Saturday} .mark').hidden");
        await IsContentAsync();
    }

    [Fact]
    public async Task The_next_plan_goes_on_from_what_was_ticked_and_back_brings_the_one_before()
    {
        await StartAsync(Address);
        await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
        await Browser.WaitAsync(Shown);
        await Browser.EvaluateAsync("(() => { const d = document.querySelector('td[data-date=\"2026-12-05\"]'); localStorage.setItem('warmup.sung', JSON.stringify({ '2026-12-05': { lines: d.dataset.log, ticked: true } })); })()");
        await Browser.VisitAsync(At(Address));
        await Browser.WaitAsync(Shown);
        await SettleAsync("start", "2026-12-29");
        await Browser.WaitAsync("location.search === '?start=2026-12-29' && !document.body.ariaBusy");
        await Browser.ClickAsync("#go-on");
        await Browser.WaitAsync("document.getElementById('about').textContent.includes('Sparrow: sung, ticked, ')");
        Assert.DoesNotContain("Mohanam", (string)(await Browser.EvaluateAsync("location.href"))!, StringComparison.Ordinal);
        await Browser.EvaluateAsync("history.back()");
        await Browser.WaitAsync("location.search === '?start=2026-12-01' && document.querySelector('td[data-date=\"2026-12-05\"]')");
        await IsContentAsync();
    }

    [Fact]
    public async Task A_log_file_leads_into_the_plan_and_stays_in_the_page()
    {
        await StartAsync(Address);
        await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
        await Browser.WaitAsync(Shown);

        // A drill that the plan has, of which a line stayed off the day before.
        var sung = ((string)(await Browser.EvaluateAsync($"document.querySelector('{Saturday}').dataset.log.split('\\n')[1]"))!).Split('\t');
        var (scale, exercise) = (sung[1], sung[2]);
        await ChooseAsync("log-from", "sung.log", $"2026-11-30\t{scale}\t{exercise}\t60\t-\toff:2\r\n");
        await Browser.WaitAsync($"document.getElementById('about').textContent.includes('its turn again first: {exercise} in {scale}, of which line 2 stayed off')");
        Assert.DoesNotContain(exercise, (string)(await Browser.EvaluateAsync("decodeURIComponent(location.href) + JSON.stringify({ ...localStorage })"))!, StringComparison.Ordinal);

        await ChooseAsync("log-from", "sung.log", "sung yesterday");
        await Browser.WaitAsync("document.querySelector('#said [role=alert]')?.textContent.includes('What was sung: a line of the log must have 5 fields')");

        await ChooseAsync("log-from", "sung.log", null);
        await Browser.WaitAsync($"{Shown} && !document.querySelector('#said [role=alert]')");
        Assert.DoesNotContain("its turn again", (string)(await Browser.EvaluateAsync("document.getElementById('about').textContent"))!, StringComparison.Ordinal);
        await IsContentAsync();
    }

    [Fact]
    public async Task On_a_phone_and_a_desk_it_keeps_the_rules_of_accessibility_and_fits_the_screen()
    {
        await StartAsync($"{Address}&day=2026-12-05&class=Wren,G3,E5,18,beginner%0AOtter,C3,G4,24,intermediate");
        await Browser.WaitAsync($"{Shown} && !location.search.includes('Wren')");
        await Browser.ClickAsync("#sung");
        foreach (var width in (int[])[360, 1200])
        {
            await Browser.ResizeAsync(width, 900);
            Assert.InRange((int)(await Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, width);
            if (width == 360 || WholeCheck.IsAskedFor)
            {
                Assert.Equal("[]", await Axe.ViolationsAsync(Browser));
            }

            Assert.Equal(0, (int)(await Browser.EvaluateAsync("[...document.querySelectorAll('td a, button, a.apply, a.open')].filter(e => e.offsetHeight > 0 && e.offsetHeight < 24).length"))!);

            // On a phone the days stand one under the other.
            var edges = (await Browser.EvaluateAsync("[...new Set([...document.querySelectorAll('td.singing')].map(d => Math.round(d.getBoundingClientRect().x)))].length"))!;
            Assert.Equal(width < 500 ? 1 : 6, (int)edges);
        }
    }

    [Fact]
    public async Task The_keyboard_opens_a_day_and_marks_it()
    {
        await StartAsync(Address);
        await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
        await Browser.WaitAsync(Shown);
        await Browser.EvaluateAsync($"document.querySelector('{Saturday} a').focus()");
        await Browser.PressAsync(Key.Enter);
        await Browser.WaitAsync("document.activeElement.id === 'day-heading' && !document.body.ariaBusy");
        var reached = new List<string>();
        for (var presses = 0; presses < 4 && !reached.Contains("sung"); presses++)
        {
            await TabAsync();
            reached.Add((string)(await Browser.EvaluateAsync("document.activeElement.id || document.activeElement.textContent.trim()"))!);
        }

        Assert.Equal(["The day before", "The day after", "sung"], reached);
        await Browser.PressAsync(Key.Space);

        // Headless Firefox gives its window no focus, and a box there takes no key.
        await Browser.EvaluateAsync("(() => { if (!document.hasFocus()) document.activeElement.click(); })()");
        Assert.Equal("sung", await MarkAsync());
    }

    private async Task<string> MarkAsync() => (string)(await Browser.EvaluateAsync($"document.querySelector('{Saturday} .mark').textContent"))!;
}

/// <summary>In Firefox.</summary>
[Collection<ServedInFirefox>]
[Trait("Run", "whole")]
public sealed class PlanPageInFirefoxTests(OpenedInFirefox opened, PageServer server) : PlanPageTests(opened, server);

/// <summary>In Chromium, which can also print and show dark pages.</summary>
[Collection<ServedInChromium>]
public sealed class PlanPageInChromiumTests(OpenedInChromium opened, PageServer server) : PlanPageTests(opened, server)
{
    [Fact]
    public async Task In_print_a_month_is_one_page_across_and_the_opened_day_one_of_its_own()
    {
        await StartAsync($"{Address}&day=2026-12-05&class=Wren,G3,E5,18,beginner%0AOtter,C3,G4,24,intermediate");
        await Browser.WaitAsync("document.querySelectorAll('td.singing').length === 24 && !document.body.ariaBusy && !location.search.includes('Wren')");
        var pdf = Convert.FromBase64String((string)(await Browser.SendAsync("Page.printToPDF", new JsonObject { ["preferCSSPageSize"] = false, ["paperWidth"] = 8.27, ["paperHeight"] = 11.69 }))["data"]!);
        var boxes = System.Text.RegularExpressions.Regex.Matches(System.Text.Encoding.Latin1.GetString(pdf), @"/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]")
            .Select(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) > double.Parse(m.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.Equal([true, false], boxes.Take(2));
        Assert.InRange(boxes.Count, 2, 4);
    }
}

/// <summary>The served pages in dark, which Chromium can be asked for.</summary>
[Collection<ServedInChromium>]
[Trait("Run", "whole")]
public sealed class DarkPagesTests(OpenedInChromium opened, PageServer server) : ServedPage(opened, server), IAsyncLifetime
{
    public static TheoryData<string, string> Addresses =>
        [.. WholeCheck.OneIn(2, new[] { ("/plan?start=2026-12-01&day=2026-12-05&", "#day-heading"), ("/?find=65&", "#fits .finding a") })];

    [Theory]
    [MemberData(nameof(Addresses))]
    public async Task They_keep_the_rules_of_accessibility(string address, string shown)
    {
        await StartAsync($"{address}class=Wren,G3,E5,18,beginner");
        await Browser.WaitAsync($"document.querySelector('{shown}') && !document.body.ariaBusy && !location.search.includes('Wren')");
        Assert.Equal("[]", await Axe.ViolationsAsync(Browser));
    }

    public async ValueTask InitializeAsync() => await SchemeAsync("dark");

    public async ValueTask DisposeAsync() => await SchemeAsync(string.Empty);

    private async Task SchemeAsync(string scheme)
    {
        SkipWithoutBrowser();
        await Browser.SendAsync("Emulation.setEmulatedMedia", new JsonObject
        {
            ["features"] = scheme.Length == 0 ? [] : new JsonArray(new JsonObject { ["name"] = "prefers-color-scheme", ["value"] = scheme }),
        });
    }
}
