using System.Text.Json.Nodes;
using Warmup.Sheets;

namespace Warmup.Pages.Tests;

/// <summary>The browser that the tests of a class share; each opens its own page.</summary>
public sealed class Opened : IAsyncLifetime
{
    private Browser? _browser;

    internal Browser Browser => _browser ?? throw new InvalidOperationException("there is no browser");

    public async ValueTask InitializeAsync()
    {
        if (Browser.Missing is null)
        {
            _browser = await Browser.StartAsync();
        }
    }

    public ValueTask DisposeAsync() => _browser?.DisposeAsync() ?? ValueTask.CompletedTask;

    /// <summary>Opens the practice page of a score, on paper of a width, or skips the test where there is no browser.</summary>
    internal async Task OpenAsync(Score score, int width = 1000, HtmlOptions? options = null)
    {
        Assert.SkipWhen(Browser.Missing is not null, Browser.Missing ?? string.Empty);
        using var stream = new MemoryStream();
        new HtmlFormat(options ?? HtmlOptions.Default).Write(score, stream);
        await OpenAsync(stream.ToArray(), width);
    }

    internal async Task OpenAsync(byte[] page, int width = 1000)
    {
        Assert.SkipWhen(Browser.Missing is not null, Browser.Missing ?? string.Empty);
        await Browser.SendAsync(
            "Emulation.setDeviceMetricsOverride",
            new JsonObject { ["width"] = width, ["height"] = 800, ["deviceScaleFactor"] = 1, ["mobile"] = width < 500 });
        await Browser.OpenAsync(page);
    }

    /// <summary>The sounds that the page has planned so far, called-off ones left out.</summary>
    internal async Task<List<Sound>> SoundsAsync() => [.. JsonNode.Parse((string)(await Browser.EvaluateAsync("test.sounds()"))!)!.AsArray()
        .Select(s => new Sound((string)s!["part"]!, (double)s["hz"]!, (double)s["start"]!, (double?)s["stop"]))];

    /// <summary>Neither the console nor the page has complained.</summary>
    internal async Task IsContentAsync()
    {
        Assert.Equal("[]", (string)(await Browser.EvaluateAsync("test.errors()"))!);
        Assert.Empty(Browser.Complaints);
    }

    /// <summary>Moves the tempo slider.</summary>
    internal async Task SetTempoAsync(int percent) => await Browser.EvaluateAsync(
        $"(() => {{ const t = document.getElementById('tempo'); t.value = {percent}; t.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()");
}

/// <summary>An oscillator as the page asked for it: the part it goes to, its frequency, and when it starts and stops on the audio clock.</summary>
internal sealed record Sound(string Part, double Hz, double Start, double? Stop);
