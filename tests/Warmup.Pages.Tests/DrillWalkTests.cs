namespace Warmup.Pages.Tests;

/// <summary>The page to make drills in, in a browser: the whole walk, and all of it by keyboard.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class DrillWalkTests(Opened opened, PageServer server) : ServedPage(opened, server)
{
    [Fact]
    public async Task From_nothing_to_a_sheet_and_a_notation_file()
    {
        await StartAsync("/");

        // Who sings.
        await Browser.ClickAsync("fieldset a.apply");
        await Browser.WaitAsync("document.querySelectorAll('#fits strong').length === 6 && !document.body.ariaBusy");

        // In which scale.
        await TypeAsync("find", "mohanam");
        await Browser.WaitAsync("[...document.querySelectorAll('#scales a')].some(a => a.textContent === 'Mohanam')");
        await Browser.EvaluateAsync("[...document.querySelectorAll('#scales a')].find(a => a.textContent === 'Mohanam').click()");
        await Browser.WaitAsync("document.querySelector('#lines-sung h3').textContent.startsWith('Mohanam')");

        // On the best tonic, with the first thing that helps.
        await Browser.WaitAsync("document.querySelector('#fits .finding a')");
        var before = (int)(await Browser.EvaluateAsync("document.querySelectorAll('#fits .finding').length"))!;
        await Browser.EvaluateAsync("document.querySelector('#fits .finding a').click()");
        await Browser.WaitAsync("!document.body.ariaBusy && document.querySelector('#fits li')");
        Assert.InRange((int)(await Browser.EvaluateAsync("document.querySelectorAll('#fits .finding').length"))!, 0, before - 1);

        // The files.
        foreach (var (ending, begin) in ((string, string)[])[("pdf", "%PDF-"), ("musicxml", "<?xml"), ("mid", "MThd"), ("html", "<!doctype html")])
        {
            var read = await Browser.EvaluateAsync($"fetch(document.querySelector('.files a[href^=\"/drill.{ending}\"]').href).then(a => a.text()).then(t => t.slice(0, 20))");
            Assert.StartsWith(begin, ((string)read!).TrimStart('\uFEFF'), StringComparison.OrdinalIgnoreCase);
        }

        Assert.True((bool)(await Browser.EvaluateAsync("document.querySelector('img.sheet').decode().then(() => true)"))!);
        await IsContentAsync();
    }

    [Fact]
    public async Task The_keyboard_reaches_everything_in_the_order_of_the_page_and_shows_where_it_is()
    {
        await StartAsync("/");
        await Browser.EvaluateAsync("(() => { for (const d of document.querySelectorAll('details')) d.open = false; document.body.focus(); })()");
        const string Here = "(() => { const e = document.activeElement; return e.id || e.name || e.textContent.trim().slice(0, 30); })()";
        await TabAsync();
        Assert.Equal("To what comes of it", (string)(await Browser.EvaluateAsync(Here))!);
        var reached = new List<string>();
        for (var presses = 0; presses < 60; presses++)
        {
            await TabAsync();
            var here = (string)(await Browser.EvaluateAsync(Here))!;
            reached.Add(here);
            if (here.Contains("zip", StringComparison.Ordinal))
            {
                break;
            }

            // Headless Firefox gives its window no focus, so that nothing there is drawn as focused.
            Assert.True((bool)(await Browser.EvaluateAsync("!document.hasFocus() || getComputedStyle(document.activeElement).outlineStyle !== 'none'"))!, here);
        }

        string[] wanted = ["class", "scale", "find", "exercise", "written", "pattern", "lines", "tonic", "tempo", "tala", "delivery", "Show the drill"];
        Assert.Equal(wanted, reached.Where(wanted.Contains));
        Assert.Contains(reached, r => r.Contains("zip", StringComparison.Ordinal));
    }
}

/// <summary>In Firefox.</summary>
[Collection<ServedInFirefox>]
[Trait("Run", "whole")]
public sealed class DrillWalkInFirefoxTests(OpenedInFirefox opened, PageServer server) : DrillWalkTests(opened, server);

/// <summary>In Chromium.</summary>
[Collection<ServedInChromium>]
public sealed class DrillWalkInChromiumTests(OpenedInChromium opened, PageServer server) : DrillWalkTests(opened, server);
