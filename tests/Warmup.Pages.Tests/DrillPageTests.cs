namespace Warmup.Pages.Tests;

/// <summary>The page to make drills in, in a browser: the class that stays in the browser, two tabs, back, widths, files.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class DrillPageTests(Opened opened, PageServer server) : ServedPage(opened, server)
{
    private const string Class = "Wren,G3,E5,18,beginner%0AOtter,C3,G4,24,intermediate";

    [Fact]
    public async Task The_class_stays_in_the_browser_and_the_drill_in_the_address()
    {
        await StartAsync("/");
        await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
        await Browser.WaitAsync("document.querySelector('#fits strong')?.textContent === 'Sparrow'");
        await TypeAsync("tonic", "D4");
        await Browser.WaitAsync("location.search === '?tonic=D4'");
        await Browser.VisitAsync(At("/?tonic=D4"));
        await Browser.WaitAsync("document.querySelector('#fits strong')?.textContent === 'Sparrow' && !document.body.ariaBusy");
        Assert.Equal("D4", (string)(await Browser.EvaluateAsync("document.getElementById('tonic').value"))!);
        Assert.DoesNotContain("Sparrow", (string)(await Browser.EvaluateAsync("location.href + [...document.querySelectorAll('#preview a, #preview img')].map(a => a.href || a.src).join()"))!, StringComparison.Ordinal);
        await IsContentAsync();
    }

    [Fact]
    public async Task Two_tabs_have_the_same_class_and_each_its_own_drill()
    {
        await StartAsync("/?tonic=D4");

        await Browser.InAnotherTabAsync(async () =>
        {
            await Browser.VisitAsync(At("/?tonic=E4"));
            await TypeAsync("class", "Sparrow,G3,E5,18,beginner");
            await Browser.WaitAsync("document.querySelector('#fits strong')?.textContent === 'Sparrow' && !document.body.ariaBusy");
            Assert.Equal("?tonic=E4", (string)(await Browser.EvaluateAsync("location.search"))!);
        });
        await Browser.WaitAsync("document.querySelector('#fits strong')?.textContent === 'Sparrow'");
        Assert.Equal("?tonic=D4", (string)(await Browser.EvaluateAsync("location.search"))!);
        Assert.Equal("Sparrow,G3,E5,18,beginner", (string)(await Browser.EvaluateAsync("document.getElementById('class').value"))!);
    }

    [Fact]
    public async Task On_a_phone_a_tablet_and_a_desk_the_page_keeps_the_rules_of_accessibility()
    {
        await StartAsync($"/?class={Class}&find=65");
        await Browser.WaitAsync("document.querySelector('#fits .finding a') && !document.body.ariaBusy && !location.search.includes('Wren')");
        foreach (var width in (int[])[360, 1024, 1200])
        {
            await Browser.ResizeAsync(width, 900);
            Assert.InRange((int)(await Browser.EvaluateAsync("document.documentElement.scrollWidth"))!, 1, width);

            // What comes of the choices is beside them where there is room.
            Assert.Equal(width > 1000, (bool)(await Browser.EvaluateAsync("document.getElementById('preview-side').getBoundingClientRect().x > document.getElementById('choices').getBoundingClientRect().right"))!);

            // Large enough for a finger: 24 pixels (WCAG 2.2, target size, level AA).
            Assert.Equal(0, (int)(await Browser.EvaluateAsync("[...document.querySelectorAll('.files a, .finding a, button, input:not([type=radio], [type=checkbox]), select')].filter(e => e.offsetHeight > 0 && e.offsetHeight < 24).length"))!);
            if (width == 360 || (width == 1200 && WholeCheck.IsAskedFor))
            {
                Assert.Equal("[]", await Axe.ViolationsAsync(Browser));
            }
        }
    }

    [Fact]
    public async Task Back_brings_the_drill_before()
    {
        await StartAsync("/?tonic=C4");
        await SettleAsync("tonic", "D4");
        await Browser.WaitAsync("location.search === '?tonic=D4'");
        await SettleAsync("tonic", "E4");
        await Browser.WaitAsync("location.search === '?tonic=E4'");
        await Browser.EvaluateAsync("history.back()");
        await Browser.WaitAsync("document.getElementById('tonic').value === 'D4' && document.querySelector('.files a').search.includes('D4')");
        await IsContentAsync();
    }

    [Fact]
    public async Task A_class_comes_from_a_file_and_a_wrong_one_is_told()
    {
        await StartAsync("/");
        const string Json = /*lang=json*/ """{"schema":"urn:warmup:singers:1","singers":[{"alias":"Lark","low":"A3","high":"E5","sustainedSeconds":14}]}""";
        await ChooseAsync("file", "class.json", Json);
        await Browser.WaitAsync("document.querySelector('#fits strong')?.textContent === 'Lark'");
        Assert.Contains("Lark,,A3,E5,14", (string)(await Browser.EvaluateAsync("document.getElementById('class').value"))!, StringComparison.Ordinal);
        await TypeAsync("class", "Lark,H3,E5,14,beginner");
        await Browser.WaitAsync("document.querySelector('#said [role=alert]')?.textContent.includes('Lark')");

        // The wrong field is marked as long as it is wrong, and what was typed elsewhere stays with another class.
        Assert.Equal("class", (string)(await Browser.EvaluateAsync("[...document.querySelectorAll('[aria-invalid=true]')].map(f => f.id).join()"))!);
        await TypeAsync("tonic", "D4");
        await Browser.WaitAsync("location.search.includes('D4') && !document.body.ariaBusy");
        await Browser.ClickAsync("#invented a");
        await Browser.WaitAsync("document.querySelectorAll('#fits strong').length === 6 && !document.body.ariaBusy");
        Assert.Equal("D4", (string)(await Browser.EvaluateAsync("document.getElementById('tonic').value"))!);
        Assert.Null(await Browser.EvaluateAsync("document.querySelector('[aria-invalid]')"));
    }
}

/// <summary>In Firefox.</summary>
[Collection<ServedInFirefox>]
[Trait("Run", "whole")]
public sealed class DrillPageInFirefoxTests(OpenedInFirefox opened, PageServer server) : DrillPageTests(opened, server);

/// <summary>In Chromium.</summary>
[Collection<ServedInChromium>]
public sealed class DrillPageInChromiumTests(OpenedInChromium opened, PageServer server) : DrillPageTests(opened, server);

