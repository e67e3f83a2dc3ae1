using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>The served pages in a browser that runs no scripts: the forms work by their buttons and links.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The pages' program.</param>
public abstract class ScriptlessTests(Opened opened, PageServer server) : ServedPage(opened, server)
{
    private const string Class = "Wren,G3,E5,18,beginner%0AOtter,C3,G4,24,intermediate";

    [Fact]
    public async Task The_button_makes_the_drill_and_a_remedy_is_a_link()
    {
        await BeginAsync($"/?class={Class}&tonic=D4");
        await Browser.EvaluateAsync("(() => { document.getElementById('scale').value = 'mohanam'; })()");
        await Browser.ClickAsync("button.main");
        await Browser.WaitAsync("document.readyState === 'complete' && document.querySelector('#lines-sung h3')?.textContent.startsWith('Mohanam')");
        Assert.Equal("D4", (string)(await Browser.EvaluateAsync("new URL(location.href).searchParams.get('tonic')"))!);
        Assert.Equal(2, (int)(await Browser.EvaluateAsync("document.querySelectorAll('#fits strong').length"))!);

        // A remedy is a link that carries everything.
        var before = (int)(await Browser.EvaluateAsync("document.querySelectorAll('#fits .finding').length"))!;
        await Browser.ClickAsync("#fits .finding a");
        await Browser.WaitAsync($"document.querySelectorAll('#fits strong').length === 2 && document.querySelectorAll('#fits .finding').length < {before}");
        await EndAsync();
    }

    [Fact]
    public async Task A_plan_is_shown_and_a_day_of_it_opened()
    {
        await BeginAsync($"/plan?class={Class}");
        await Browser.EvaluateAsync("(() => { document.getElementById('start').value = '2026-12-01'; document.getElementById('days').value = '14'; })()");
        await Browser.ClickAsync("button.main");
        await Browser.WaitAsync("document.readyState === 'complete' && document.querySelectorAll('td.singing').length === 12");
        await Browser.ClickAsync("td[data-date='2026-12-05'] a");
        await Browser.WaitAsync("document.getElementById('day-heading')?.textContent.startsWith('Saturday, 5 December 2026')");

        // What needs the script is not offered.
        Assert.Equal(0, (int)(await Browser.EvaluateAsync("[...document.querySelectorAll('[data-needs-script]')].filter(e => e.offsetHeight > 0).length"))!);
        await EndAsync();
    }

    private protected virtual Task SwitchAsync(bool isOn) => Task.CompletedTask;

    private async Task BeginAsync(string address)
    {
        SkipWithoutBrowser();
        await Browser.ResizeAsync(1200, 900);
        await SwitchAsync(false);
        await Browser.VisitAsync(At(address));
        Assert.True((bool)(await Browser.EvaluateAsync("document.getElementById('import').hidden"))!);
    }

    private Task EndAsync() => SwitchAsync(true);
}

/// <summary>In Firefox, started without scripts.</summary>
[Trait("Run", "whole")]
public sealed class ScriptlessInFirefoxTests(ScriptlessFirefox opened, PageServer server) : ScriptlessTests(opened, server), IClassFixture<ScriptlessFirefox>;

/// <summary>In Chromium, which leaves them out where it is asked to.</summary>
[Collection<ServedInChromium>]
public sealed class ScriptlessInChromiumTests(OpenedInChromium opened, PageServer server) : ScriptlessTests(opened, server), IAsyncLifetime
{
    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync() => await SwitchAsync(true);

    private protected override async Task SwitchAsync(bool isOn) => await Browser.SendAsync("Emulation.setScriptExecutionDisabled", new JsonObject { ["value"] = !isOn });
}
