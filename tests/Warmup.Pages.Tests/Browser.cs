using System.Diagnostics;
using System.Net.WebSockets;
using System.Text;
using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>
/// A headless browser, spoken to over a socket on the loopback interface. Pages are opened from files; what the console or the page complains of is
/// kept.
/// </summary>
/// <param name="scripts">The scripts that run in each page before its own, after record.js.</param>
internal abstract class Browser(params string[] scripts) : IAsyncDisposable
{
    private readonly ClientWebSocket _socket = new();
    private readonly List<string> _complaints = [];
    private readonly byte[] _buffer = new byte[1 << 16];
    private Process? _process;
    private int _id;
    private string? _home;

    /// <summary>What the console and the log said above the level of information.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>How long anything may take.</summary>
    protected static TimeSpan Longest => TimeSpan.FromMinutes(3);

    /// <summary>The folder of the browser and of its pages; it goes with the browser.</summary>
    protected DirectoryInfo Folder { get; } = Directory.CreateTempSubdirectory("warmup-pages-");

    /// <summary>Opens a page's bytes from a file and waits until it is loaded.</summary>
    /// <param name="page">The page.</param>
    /// <param name="kept">What the browser has kept for it: an object of JSON.</param>
    public async Task OpenAsync(byte[] page, string kept = "{}")
    {
        var path = Path.Combine(Folder.FullName, "page.html");
        await File.WriteAllBytesAsync(path, page);
        await GoAsync(new UriBuilder(new Uri(path)) { Query = $"?kept={Uri.EscapeDataString(kept)}" }.Uri);
    }

    /// <summary>Goes to a page of a server on this machine; what it asks of that server is no complaint.</summary>
    public Task VisitAsync(Uri address)
    {
        _home = address.GetLeftPart(UriPartial.Authority);
        return GoAsync(address);
    }

    /// <summary>The value of an expression in the page; promises are waited for.</summary>
    public abstract Task<JsonNode?> EvaluateAsync(string expression);

    /// <summary>Makes the window a size, as a phone where it is narrow.</summary>
    public abstract Task ResizeAsync(int width, int height);

    /// <summary>Presses and releases a key.</summary>
    public abstract Task PressAsync(Key key);

    /// <summary>Does something in another tab of the same browser, which is closed afterwards; meanwhile everything goes to that tab.</summary>
    public abstract Task InAnotherTabAsync(Func<Task> work);

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
            $"(() => {{ const e = document.querySelector({JsonValue.Create(selector).ToJsonString()}); e.scrollIntoView({{ block: 'center', behavior: 'instant' }}); const r = e.getBoundingClientRect(); return [Math.round(r.x + r.width / 2), Math.round(r.y + r.height / 2)]; }})()"))!.AsArray();
        await ClickAsync((int)at[0]!, (int)at[1]!);
    }

    /// <summary>Sends a command and gives its result.</summary>
    public async Task<JsonObject> SendAsync(string method, JsonObject? parameters = null)
    {
        var id = ++_id;
        var message = new JsonObject { ["id"] = id, ["method"] = method, ["params"] = parameters ?? [] };
        Address(message);
        using var limit = new CancellationTokenSource(Longest);
        await _socket.SendAsync(Encoding.UTF8.GetBytes(message.ToJsonString()), WebSocketMessageType.Text, true, limit.Token);
        while (true)
        {
            var read = await ReadAsync(limit.Token);
            if ((int?)read["id"] == id)
            {
                Assert.True(read["error"] is null, $"{method}: {read.ToJsonString()}");
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
                Folder.Delete(recursive: true);
                return;
            }
            catch (IOException) when (left > 0)
            {
                await Task.Delay(100);
            }
        }
    }

    /// <summary>Launches the browser and gets it ready to open pages.</summary>
    public abstract Task LaunchAsync();

    /// <summary>The sound that a microphone hears in Chromium, until another is given: 16-bit mono at 48 kHz.</summary>
    public string Microphone => Path.Combine(Folder.FullName, "microphone.wav");

    /// <summary>Goes to an address and waits until it is loaded.</summary>
    protected abstract Task GoAsync(Uri address);

    /// <summary>Clicks at a place in the window.</summary>
    protected abstract Task ClickAsync(int x, int y);

    /// <summary>Takes note of what the browser says by itself.</summary>
    protected abstract void Hear(JsonObject read);

    /// <summary>Says in a message for which page it is.</summary>
    protected virtual void Address(JsonObject message)
    {
    }

    /// <summary>Whether an address is neither a file nor of the server that was visited.</summary>
    protected bool IsForeign(string url) =>
        !url.StartsWith("file:", StringComparison.Ordinal) && !url.StartsWith("data:", StringComparison.Ordinal) && !url.StartsWith("blob:null/", StringComparison.Ordinal) && (_home is null || !url.Replace("blob:", string.Empty, StringComparison.Ordinal).StartsWith(_home + "/", StringComparison.Ordinal));

    // A page in one file can record only in the older way, which Chromium calls deprecated. A style sheet by itself, with which tests of served
    // pages start, names no icon.
    protected void Complain(string complaint)
    {
        if (!complaint.Contains("ScriptProcessorNode", StringComparison.Ordinal) && !complaint.Contains("/favicon.ico", StringComparison.Ordinal))
        {
            _complaints.Add(complaint);
        }
    }

    /// <summary>What runs in each page before its own script.</summary>
    protected async Task<string> RecorderAsync()
    {
        var all = new StringBuilder();
        foreach (var name in scripts.Prepend("record.js"))
        {
            using var script = new StreamReader(typeof(Browser).Assembly.GetManifestResourceStream(name)!);
            all.Append(await script.ReadToEndAsync()).Append('\n');
        }

        return all.ToString();
    }

    /// <summary>Starts the program and connects to the address that it makes known.</summary>
    protected async Task ConnectAsync(string program, IEnumerable<string> arguments, Func<string?> findAddress)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["HOME"] = Folder.FullName;
        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, _) => { };
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        var watch = Stopwatch.StartNew();
        string? address;
        while ((address = findAddress()) is null)
        {
            Assert.True(watch.Elapsed < Longest && !_process.HasExited, $"{program} did not start");
            await Task.Delay(50);
        }

        await _socket.ConnectAsync(new Uri(address), CancellationToken.None);
    }

    protected async Task UntilAsync(Func<bool> isSo, string what)
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

    protected static string? Word(JsonNode? node, params string[] path) => (string?)path.Aggregate(node, (at, name) => at?[name]);

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

/// <summary>A key that tests press.</summary>
internal enum Key
{
    Space,
    Escape,
    Tab,
    Enter,
    Right,
}
