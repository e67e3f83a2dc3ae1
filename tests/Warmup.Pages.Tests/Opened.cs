using System.Text.Json.Nodes;
using Warmup.Sheets;

namespace Warmup.Pages.Tests;

/// <summary>The browser that the tests of a class share; each opens its own page.</summary>
public abstract class Opened : IAsyncLifetime
{
    private readonly string? _missing;
    private readonly Browser _browser;

    private protected Opened(Browser browser, string? missing) => (_browser, _missing) = (browser, missing);

    internal Browser Browser => _missing is null ? _browser : throw new InvalidOperationException(_missing);

    public async ValueTask InitializeAsync()
    {
        if (_missing is null)
        {
            await _browser.LaunchAsync();
        }
    }

    public ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        return _browser.DisposeAsync();
    }

    /// <summary>Opens the practice page of a score, on paper of a size, or skips the test where there is no browser.</summary>
    internal async Task OpenAsync(Score score, int width = 1000, HtmlOptions? options = null, int height = 800)
    {
        using var stream = new MemoryStream();
        new HtmlFormat(options ?? HtmlOptions.Default).Write(score, stream);
        await OpenAsync(stream.ToArray(), width, height);
    }

    internal async Task OpenAsync(byte[] page, int width = 1000, int height = 800)
    {
        Assert.SkipWhen(_missing is not null, _missing ?? string.Empty);
        await Browser.ResizeAsync(width, height);
        await Browser.OpenAsync(page);
    }

    /// <summary>Skips the test where there is no browser.</summary>
    internal void SkipWithoutBrowser() => Assert.SkipWhen(_missing is not null, _missing ?? string.Empty);

    /// <summary>Opens the practice page of a score with what the page before it has kept.</summary>
    internal async Task OpenAgainAsync(Score score)
    {
        using var stream = new MemoryStream();
        new HtmlFormat(HtmlOptions.Default).Write(score, stream);
        await Browser.OpenAsync(stream.ToArray(), (string)(await Browser.EvaluateAsync("JSON.stringify({ ...window.localStorage })"))!);
    }

    /// <summary>The sounds that the page has planned so far, called-off ones left out.</summary>
    internal async Task<List<Sound>> SoundsAsync() => [.. JsonNode.Parse((string)(await Browser.EvaluateAsync("test.sounds()"))!)!.AsArray()
        .Select(s => new Sound((string)s!["part"]!, (double)s["hz"]!, (double)s["start"]!, (double?)s["stop"])
        {
            Slides = [.. s["slides"]!.AsArray().Select(x => ((double)x![0]!, (double)x[1]!, (double)x[2]!))],
        })];

    /// <summary>Neither the console nor the page has complained.</summary>
    internal async Task IsContentAsync()
    {
        Assert.Equal("[]", (string)(await Browser.EvaluateAsync("test.errors()"))!);
        Assert.Empty(Browser.Complaints);
    }

    internal async Task<string> TextAsync(string selector) => (string)(await Browser.EvaluateAsync($"document.querySelector('{selector}').textContent"))!;

    /// <summary>Moves a slider or chooses from a list, as far as the page can tell.</summary>
    internal async Task SetAsync(string id, string value) => await Browser.EvaluateAsync(
        $"(() => {{ const t = document.getElementById('{id}'); t.value = '{value}'; t.dispatchEvent(new Event('input', {{ bubbles: true }})); }})()");

    /// <summary>Turns a box on or off.</summary>
    internal async Task ToggleAsync(string id) => await Browser.EvaluateAsync($"document.getElementById('{id}').click()");

    /// <summary>Moves the tempo slider.</summary>
    internal Task SetTempoAsync(int percent) => SetAsync("tempo", percent.ToString(System.Globalization.CultureInfo.InvariantCulture));
}

/// <summary>Chromium, shared by the tests of a class.</summary>
public sealed class OpenedInChromium() : Opened(new Chromium(), Chromium.Missing);

/// <summary>Firefox, shared by the tests of a class.</summary>
public sealed class OpenedInFirefox() : Opened(new Firefox(), Firefox.Missing);

/// <summary>Firefox in which pages run no scripts.</summary>
public sealed class ScriptlessFirefox() : Opened(new Firefox { HasScripts = false }, Firefox.Missing);

/// <summary>Tests of pages in files in Chromium: one browser for all of them.</summary>
[CollectionDefinition]
public sealed class FilesInChromium : ICollectionFixture<OpenedInChromium>;

/// <summary>Tests of the served pages in Chromium: one browser for all of them.</summary>
[CollectionDefinition]
public sealed class ServedInChromium : ICollectionFixture<OpenedInChromium>;

/// <summary>Tests of the served pages in Firefox: one browser for all of them.</summary>
[CollectionDefinition]
public sealed class ServedInFirefox : ICollectionFixture<OpenedInFirefox>;

/// <summary>Chromium with an audio clock that tests set.</summary>
public sealed class OfflineInChromium() : Opened(new Chromium("offline.js"), Chromium.Missing);

/// <summary>Firefox with an audio clock that tests set.</summary>
public sealed class OfflineInFirefox() : Opened(new Firefox("offline.js"), Firefox.Missing);

/// <summary>An oscillator as the page asked for it: the part it goes to, its frequency, and when it starts and stops on the audio clock.</summary>
internal sealed record Sound(string Part, double Hz, double Start, double? Stop)
{
    /// <summary>The slides of its frequency: from when on, to which frequency, and until when.</summary>
    public required List<(double From, double Hz, double To)> Slides { get; init; }
}
