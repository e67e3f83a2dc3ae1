using System.Globalization;
using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>Chromium, by its DevTools protocol (https://chromedevtools.github.io/devtools-protocol/).</summary>
internal sealed class Chromium(params string[] scripts) : Browser(scripts)
{
    private static readonly string? Program = ProgramRun.Find("chromium", "chromium-browser", "google-chrome");

    private string? _session;
    private string? _loaded;

    /// <summary>Why there is no browser; null where there is one.</summary>
    public static string? Missing => Program is null ? "chromium is not installed on this machine" : null;

    public override async Task<JsonNode?> EvaluateAsync(string expression)
    {
        var answer = await SendAsync(
            "Runtime.evaluate", new JsonObject { ["expression"] = expression, ["returnByValue"] = true, ["awaitPromise"] = true });
        Assert.True(answer["exceptionDetails"] is null, answer["exceptionDetails"]?.ToJsonString());
        return answer["result"]?["value"];
    }

    public override async Task ResizeAsync(int width, int height) => await SendAsync(
        "Emulation.setDeviceMetricsOverride",
        new JsonObject { ["width"] = width, ["height"] = height, ["deviceScaleFactor"] = 1, ["mobile"] = width < 500 });

    public override async Task PressAsync(Key key)
    {
        var (name, code, number, text) = key switch
        {
            Key.Space => (" ", "Space", 32, " "),
            Key.Escape => ("Escape", "Escape", 27, null),
            Key.Tab => ("Tab", "Tab", 9, null),
            Key.Enter => ("Enter", "Enter", 13, "\r"),
            _ => ("ArrowRight", "ArrowRight", 39, null),
        };
        foreach (var type in (string[])["keyDown", "keyUp"])
        {
            var press = new JsonObject { ["type"] = type, ["key"] = name, ["code"] = code, ["windowsVirtualKeyCode"] = number };
            if (text is not null && type == "keyDown")
            {
                press["text"] = text;
            }

            await SendAsync("Input.dispatchKeyEvent", press);
        }
    }

    public override async Task LaunchAsync()
    {
        var profile = Folder.CreateSubdirectory("profile").FullName;

        // The browser writes where it listens: a port and a path.
        var port = Path.Combine(profile, "DevToolsActivePort");
        await ConnectAsync(
            Program!,
            [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--mute-audio", "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream", $"--use-file-for-fake-audio-capture={Microphone}%noloop", "--remote-debugging-port=0", $"--user-data-dir={profile}", "about:blank",
            ],
            () => File.Exists(port) && File.ReadAllLines(port) is [var number, { Length: > 0 } path]
                ? $"ws://127.0.0.1:{int.Parse(number, CultureInfo.InvariantCulture)}{path}"
                : null);
        await OpenTabAsync();
    }

    public override async Task InAnotherTabAsync(Func<Task> work)
    {
        var first = _session;
        _session = null;
        var target = await OpenTabAsync();
        try
        {
            await work();
        }
        finally
        {
            _session = null;
            await SendAsync("Target.closeTarget", new JsonObject { ["targetId"] = target });
            _session = first;
        }
    }

    private async Task<string> OpenTabAsync()
    {
        var target = (await SendAsync("Target.createTarget", new JsonObject { ["url"] = "about:blank" }))["targetId"]!.GetValue<string>();
        _session = (await SendAsync("Target.attachToTarget", new JsonObject { ["targetId"] = target, ["flatten"] = true }))["sessionId"]!.GetValue<string>();
        foreach (var domain in (string[])["Page", "Runtime", "Log", "Network"])
        {
            await SendAsync($"{domain}.enable");
        }

        await SendAsync("Page.addScriptToEvaluateOnNewDocument", new JsonObject { ["source"] = await RecorderAsync() });
        return target;
    }

    protected override async Task GoAsync(Uri address)
    {
        _loaded = null;
        await SendAsync("Page.navigate", new JsonObject { ["url"] = address.AbsoluteUri });
        await UntilAsync(() => _loaded is not null, "the page to load");

        // The first page of a browser can be taken for the empty one before it, whose end of loading is told late.
        await WaitAsync("location.href !== 'about:blank' && document.readyState === 'complete'");
    }

    protected override async Task ClickAsync(int x, int y)
    {
        foreach (var type in (string[])["mousePressed", "mouseReleased"])
        {
            await SendAsync("Input.dispatchMouseEvent", new JsonObject
            {
                ["type"] = type, ["x"] = x, ["y"] = y, ["button"] = "left", ["clickCount"] = 1,
            });
        }
    }

    protected override void Address(JsonObject message)
    {
        if (_session is not null)
        {
            message["sessionId"] = _session;
        }
    }

    protected override void Hear(JsonObject read)
    {
        var parameters = read["params"]?.AsObject();
        switch ((string?)read["method"])
        {
            case "Page.loadEventFired":
                _loaded = "yes";
                break;
            case "Runtime.exceptionThrown":
            case "Runtime.consoleAPICalled" when Word(parameters, "type") is "error" or "warning" or "assert":
            case "Log.entryAdded" when Word(parameters, "entry", "level") is "error" or "warning":
                Complain(parameters!.ToJsonString());
                break;
            case "Network.requestWillBeSent" when Word(parameters, "request", "url") is { } url && IsForeign(url):
                Complain($"asked for {url}");
                break;
        }
    }
}
