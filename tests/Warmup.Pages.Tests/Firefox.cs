using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>Firefox, by WebDriver BiDi (W3C, https://w3c.github.io/webdriver-bidi/).</summary>
internal sealed class Firefox(params string[] scripts) : Browser(scripts)
{
    private static readonly string? Program = ProgramRun.Find("firefox-esr", "firefox");

    private string? _context;

    /// <summary>Whether pages run scripts; tests look into them either way.</summary>
    public bool HasScripts { get; init; } = true;

    /// <summary>Why there is no browser; null where there is one.</summary>
    public static string? Missing => Program is null ? "firefox is not installed on this machine" : null;

    public override async Task<JsonNode?> EvaluateAsync(string expression)
    {
        // The value as JSON text: the protocol has its own form for objects.
        var answer = await SendAsync("script.evaluate", new JsonObject
        {
            // Promises are never kept where scripts do not run.
            ["expression"] = HasScripts ? $"(async () => JSON.stringify(await ({expression})))()" : $"JSON.stringify({expression})", ["target"] = Here(), ["awaitPromise"] = true,
        });
        Assert.True((string?)answer["type"] == "success", answer.ToJsonString());
        return Word(answer, "result", "type") == "string" ? JsonNode.Parse(Word(answer, "result", "value")!) : null;
    }

    public override async Task ResizeAsync(int width, int height) => await SendAsync("browsingContext.setViewport", new JsonObject
    {
        ["context"] = _context, ["viewport"] = new JsonObject { ["width"] = width, ["height"] = height },
    });

    public override Task PressAsync(Key key)
    {
        // The code points of WebDriver's keys (W3C WebDriver, keyboard actions).
        var value = key switch
        {
            Key.Space => " ",
            Key.Escape => "\uE00C",
            Key.Tab => "\uE004",
            Key.Enter => "\uE007",
            _ => "\uE014",
        };
        return ActAsync("key", new JsonObject { ["type"] = "keyDown", ["value"] = value }, new JsonObject { ["type"] = "keyUp", ["value"] = value });
    }

    public override async Task LaunchAsync()
    {
        // The browser writes where it listens.
        var profile = Folder.CreateSubdirectory("profile").FullName;
        var port = Path.Combine(profile, "WebDriverBiDiServer.json");
        await File.WriteAllTextAsync(
            Path.Combine(profile, "user.js"),
            string.Concat(new[]
            {
                "\"media.autoplay.default\", 0", "\"media.autoplay.blocking_policy\", 0", "\"browser.shell.checkDefaultBrowser\", false",
                "\"datareporting.policy.dataSubmissionEnabled\", false", "\"app.update.enabled\", false", "\"browser.aboutwelcome.enabled\", false",
                "\"browser.startup.page\", 0", "\"network.captive-portal-service.enabled\", false", "\"network.connectivity-service.enabled\", false",
                "\"services.settings.server\", \"\"", "\"ui.prefersReducedMotion\", 0",

                // A microphone that hears a tone of the browser's own.
                "\"media.navigator.permission.disabled\", true", "\"media.navigator.streams.fake\", true", $"\"javascript.enabled\", {(HasScripts ? "true" : "false")}",
            }.Select(p => $"user_pref({p});\n")));
        await ConnectAsync(
            Program!,
            ["--headless", "--no-remote", "--remote-debugging-port=0", "--profile", profile, "about:blank"],
            () => File.Exists(port) && JsonNode.Parse(File.ReadAllText(port)) is { } address ? $"ws://{address["ws_host"]}:{address["ws_port"]}/session" : null);
        await SendAsync("session.new", new JsonObject { ["capabilities"] = new JsonObject() });
        _context = Word((await SendAsync("browsingContext.getTree"))["contexts"]![0], "context");
        await SendAsync("session.subscribe", new JsonObject { ["events"] = new JsonArray("log.entryAdded", "network.beforeRequestSent") });
        if (!HasScripts)
        {
            return;
        }

        await SendAsync("script.addPreloadScript", new JsonObject { ["functionDeclaration"] = $"() => {{ {await RecorderAsync()} }}" });
    }

    public override async Task InAnotherTabAsync(Func<Task> work)
    {
        var first = _context;
        _context = Word(await SendAsync("browsingContext.create", new JsonObject { ["type"] = "tab" }), "context");
        try
        {
            await work();
        }
        finally
        {
            await SendAsync("browsingContext.close", Context());
            _context = first;
        }
    }

    protected override async Task GoAsync(Uri address) =>
        await SendAsync("browsingContext.navigate", new JsonObject { ["context"] = _context, ["url"] = address.AbsoluteUri, ["wait"] = "complete" });

    protected override Task ClickAsync(int x, int y) => ActAsync(
        "pointer",
        new JsonObject { ["type"] = "pointerMove", ["x"] = x, ["y"] = y },
        new JsonObject { ["type"] = "pointerDown", ["button"] = 0 },
        new JsonObject { ["type"] = "pointerUp", ["button"] = 0 });

    protected override void Hear(JsonObject read)
    {
        switch ((string?)read["method"])
        {
            case "log.entryAdded" when Word(read, "params", "level") is "error" or "warn":
                Complain(read["params"]!.ToJsonString());
                break;
            case "network.beforeRequestSent" when Word(read, "params", "request", "url") is { } url && IsForeign(url):
                Complain($"asked for {url}");
                break;
        }
    }

    // Where pages run no scripts, a sandbox of the test's own still does.
    private JsonObject Here() => HasScripts ? new() { ["context"] = _context } : new() { ["context"] = _context, ["sandbox"] = "test" };

    private JsonObject Context() => new() { ["context"] = _context };

    private async Task ActAsync(string device, params JsonObject[] actions) => await SendAsync("input.performActions", new JsonObject
    {
        ["context"] = _context,
        ["actions"] = new JsonArray(new JsonObject { ["type"] = device, ["id"] = device, ["actions"] = new JsonArray([.. actions]) }),
    });
}
