using System.Diagnostics;

[assembly: AssemblyFixture(typeof(Warmup.Pages.Tests.PageServer))]

namespace Warmup.Pages.Tests;

/// <summary>The program that serves the page to make drills in, on a free port; one for all tests.</summary>
public sealed class PageServer : IAsyncLifetime
{
    private Process? _process;

    /// <summary>Where it listens, as it printed it.</summary>
    public Uri Address { get; private set; } = new("http://127.0.0.1");

    public async ValueTask InitializeAsync()
    {
        var start = ProgramRun.Prepare("dotnet", AppContext.BaseDirectory, Path.Combine(AppContext.BaseDirectory, "warmup-page.dll"), "--urls", "http://127.0.0.1:0");
        start.RedirectStandardOutput = true;

        // It lives for a minute: what measures code to compile it better later does not pay.
        start.Environment["DOTNET_TieredPGO"] = "0";
        _process = Process.Start(start)!;
        Address = new Uri((await _process.StandardOutput.ReadLineAsync())!);
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
            _process.Dispose();
        }
    }
}
