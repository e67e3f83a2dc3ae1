using System.Diagnostics;
using System.Globalization;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>
/// A headless Chromium, spoken to by its DevTools protocol (https://chromedevtools.github.io/devtools-protocol/) on the loopback
/// interface. Pages are opened from files; what the console or the page complains of is kept.
/// </summary>
internal sealed class Browser : IAsyncDisposable
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(3);
    private static readonly string? Program = ProgramRun.Find("chromium", "chromium-browser", "google-chrome");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-pages-");
    private readonly ClientWebSocket _socket = new();
    private readonly List<string> _complaints = [];
    private readonly byte[] _buffer = new byte[1 << 16];
    private Process? _process;
    private string? _session;
    private string? _loaded;
    private int _id;

    /// <summary>Why there is no browser; null where there is one.</summary>
    public static string? Missing => Program is null ? "chromium is not installed on this machine" : null;

    /// <summary>What the console and the log said above the level of information.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    public static async Task<Browser> StartAsync()
    {
        var browser = new Browser();
        await browser.LaunchAsync();
        return browser;
    }

    /// <summary>Opens a page's bytes from a file and waits until it is loaded.</summary>
    public async Task OpenAsync(byte[] page)
    {
        var path = Path.Combine(_folder.FullName, "page.html");
        await File.WriteAllBytesAsync(path, page);
        _loaded = null;
        await SendAsync("Page.navigate", new JsonObject { ["url"] = new Uri(path).AbsoluteUri });
        await UntilAsync(() => _loaded is not null, "the page to load");
    }

    /// <summary>The value of an expression in the page; promises are waited for.</summary>
    public async Task<JsonNode?> EvaluateAsync(string expression)
    {
        var answer = await SendAsync(
            "Runtime.evaluate", new JsonObject { ["expression"] = expression, ["returnByValue"] = true, ["awaitPromise"] = true });
        Assert.True(answer["exceptionDetails"] is null, answer["exceptionDetails"]?.ToJsonString());
        return answer["result"]?["value"];
    }

    /// <summary>Waits until an expression in the page is true.</summary>
    public async Task WaitAsync(string expression)
    {
        var watch = Stopwatch.StartNew();
        while ((bool?)await EvaluateAsync($"Boolean({expression})") != true)
        {
            Assert.True(watch.Elapsed < Longest, $"{expression} was not true within {Longest.TotalSeconds} s");
            await Task.Delay(50);
        }
    }

    /// <summary>Clicks an element with the mouse, as a person does.</summary>
    public async Task ClickAsync(string selector)
    {
        var at = (await EvaluateAsync(
            $"(() => {{ const e = document.querySelector('{selector}'); e.scrollIntoView({{ block: 'center', behavior: 'instant' }}); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; }})()"))!.AsArray();
        foreach (var type in (string[])["mousePressed", "mouseReleased"])
        {
            await SendAsync("Input.dispatchMouseEvent", new JsonObject
            {
                ["type"] = type, ["x"] = (double)at[0]!, ["y"] = (double)at[1]!, ["button"] = "left", ["clickCount"] = 1,
            });
        }
    }

    /// <summary>Presses and releases a key.</summary>
    public async Task PressAsync(string key, int code, string? text = null)
    {
        foreach (var type in (string[])["keyDown", "keyUp"])
        {
            var press = new JsonObject { ["type"] = type, ["key"] = key, ["code"] = key == " " ? "Space" : key, ["windowsVirtualKeyCode"] = code };
            if (text is not null && type == "keyDown")
            {
                press["text"] = text;
            }

            await SendAsync("Input.dispatchKeyEvent", press);
        }
    }

    /// <summary>Sends a command and gives its result.</summary>
    public async Task<JsonObject> SendAsync(string method, JsonObject? parameters = null)
    {
        var id = ++_id;
        var message = new JsonObject { ["id"] = id, ["method"] = method, ["params"] = parameters ?? [] };
        if (_session is not null)
        {
            message["sessionId"] = _session;
        }

        using var limit = new CancellationTokenSource(Longest);
        await _socket.SendAsync(Encoding.UTF8.GetBytes(message.ToJsonString()), WebSocketMessageType.Text, true, limit.Token);
        while (true)
        {
            var read = await ReadAsync(limit.Token);
            if ((int?)read["id"] == id)
            {
                Assert.True(read["error"] is null, $"{method}: {read["error"]?.ToJsonString()}");
                return read["result"]!.AsObject();
            }

            Hear(read);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _socket.Dispose();
        if (_process is not null)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
            _process.Dispose();
        }

        // The browser's own children may write for a moment more.
        for (var left = 20; ; left--)
        {
            try
            {
                _folder.Delete(recursive: true);
                return;
            }
            catch (IOException) when (left > 0)
            {
                await Task.Delay(100);
            }
        }
    }

    private async Task LaunchAsync()
    {
        var profile = _folder.CreateSubdirectory("profile").FullName;
        var start = new ProcessStartInfo(
            Program!,
            [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync", "--mute-audio", "--remote-debugging-port=0", $"--user-data-dir={profile}", "about:blank",
            ])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["HOME"] = _folder.FullName;
        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, _) => { };
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();

        // The browser writes where it listens: a port and a path.
        var port = Path.Combine(profile, "DevToolsActivePort");
        var watch = Stopwatch.StartNew();
        string[] lines = [];
        while (lines.Length < 2 || lines[1].Length == 0)
        {
            Assert.True(watch.Elapsed < Longest && !_process.HasExited, "chromium did not start");
            await Task.Delay(50);
            lines = File.Exists(port) ? await File.ReadAllLinesAsync(port) : [];
        }

        await _socket.ConnectAsync(new Uri($"ws://127.0.0.1:{int.Parse(lines[0], CultureInfo.InvariantCulture)}{lines[1]}"), CancellationToken.None);
        var target = (await SendAsync("Target.createTarget", new JsonObject { ["url"] = "about:blank" }))["targetId"]!.GetValue<string>();
        _session = (await SendAsync("Target.attachToTarget", new JsonObject { ["targetId"] = target, ["flatten"] = true }))["sessionId"]!.GetValue<string>();
        foreach (var domain in (string[])["Page", "Runtime", "Log", "Network"])
        {
            await SendAsync($"{domain}.enable");
        }

        using var script = new StreamReader(typeof(Browser).Assembly.GetManifestResourceStream("record.js")!);
        await SendAsync("Page.addScriptToEvaluateOnNewDocument", new JsonObject { ["source"] = await script.ReadToEndAsync() });
    }

    private async Task UntilAsync(Func<bool> isSo, string what)
    {
        using var limit = new CancellationTokenSource(Longest);
        while (!isSo())
        {
            try
            {
                Hear(await ReadAsync(limit.Token));
            }
            catch (OperationCanceledException)
            {
                throw new TimeoutException($"waited {Longest.TotalSeconds} s for {what}");
            }
        }
    }

    private void Hear(JsonObject read)
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
                _complaints.Add(parameters!.ToJsonString());
                break;
            case "Network.requestWillBeSent" when Word(parameters, "request", "url") is { } url && !url.StartsWith("file:", StringComparison.Ordinal):
                _complaints.Add($"asked for {url}");
                break;
        }
    }

    private static string? Word(JsonNode? node, params string[] path) => (string?)path.Aggregate(node, (at, name) => at?[name]);

    private async Task<JsonObject> ReadAsync(CancellationToken cancellation)
    {
        using var message = new MemoryStream();
        WebSocketReceiveResult part;
        do
        {
            part = await _socket.ReceiveAsync(_buffer, cancellation);
            message.Write(_buffer.AsSpan(0, part.Count));
        }
        while (!part.EndOfMessage);

        return JsonNode.Parse(message.ToArray())!.AsObject();
    }
}
