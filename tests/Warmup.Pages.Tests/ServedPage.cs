using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>What the tests of the served pages share: how a page is begun, typed into, and found content.</summary>
/// <param name="opened">The browser.</param>
/// <param name="server">The page's program.</param>
public abstract class ServedPage(Opened opened, PageServer server)
{
    private protected Browser Browser => opened.Browser;

    private protected void SkipWithoutBrowser() => opened.SkipWithoutBrowser();

    private protected Uri At(string address) => new(server.Address, address);

    private protected async Task StartAsync(string address, int width = 1200)
    {
        SkipWithoutBrowser();
        await Browser.ResizeAsync(width, 900);

        // What another test has left is taken away where no script of the page runs that could write it again.
        await Browser.VisitAsync(At("/page.css"));
        await Browser.EvaluateAsync("(() => { localStorage.clear(); })()");
        await VisitAsync(address);
    }

    // Until the script has brought in a class that is kept: what is still under way could write it again.
    private async Task VisitAsync(string address)
    {
        await Browser.VisitAsync(At(address));
        await Browser.WaitAsync("document.getElementById('import')?.hidden === false && !document.body.ariaBusy");
    }

    private protected async Task TypeAsync(string id, string value) => await Browser.EvaluateAsync(
        $"(() => {{ const f = document.getElementById('{id}'); f.focus(); f.value = {JsonValue.Create(value).ToJsonString()}; f.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()");

    // As a person chooses a file, or none, as far as the page can tell.
    private protected async Task ChooseAsync(string id, string name, string? content) => await Browser.EvaluateAsync(
        $"(() => {{ const d = new DataTransfer(), text = {(content is null ? "null" : JsonValue.Create(content).ToJsonString())}; if (text !== null) d.items.add(new File([text], '{name}')); const f = document.getElementById('{id}'); f.files = d.files; f.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()");

    private protected async Task SettleAsync(string id, string value)
    {
        await TypeAsync(id, value);
        await Browser.EvaluateAsync($"document.getElementById('{id}').dispatchEvent(new Event('change', {{ bubbles: true }}))");
    }

    // A key can have its effect a moment after it is said to be pressed.
    private protected async Task TabAsync()
    {
        await Browser.EvaluateAsync("(() => { window.wasHere = document.activeElement; })()");
        await Browser.PressAsync(Key.Tab);
        await Browser.WaitAsync("document.activeElement !== window.wasHere");
    }

    // Nothing broke the content policy, failed in the script or was asked of another host.
    private protected async Task IsContentAsync()
    {
        Assert.Equal("[]", (string)(await Browser.EvaluateAsync("test.errors()"))!);
        Assert.DoesNotContain(Browser.Complaints, c => !c.Contains("AudioContext", StringComparison.Ordinal));
    }
}
