using System.Diagnostics;

namespace Warmup.Packages.Tests;

/// <summary>The SDK's command, run apart from the build that these tests belong to.</summary>
internal static class DotnetCommand
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(5);

    /// <summary>Runs it and gives what it printed; fails where it fails.</summary>
    public static async Task<string> Run(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };

        // What `dotnet test` hands down, and folders of packages set from outside, would lead the new project to other places.
        foreach (var name in start.Environment.Keys.Where(IsInherited).ToList())
        {
            start.Environment.Remove(name);
        }

        // No server process outlives the command and holds its output open.
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["UseSharedCompilation"] = "false";
        start.Environment["DOTNET_CLI_USE_MSBUILD_SERVER"] = "0";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        using var limit = new CancellationTokenSource(Longest);
        try
        {
            await process.WaitForExitAsync(limit.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"dotnet {string.Join(' ', arguments)} took longer than {Longest}");
        }

        var said = await output + await error;
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"dotnet {string.Join(' ', arguments)}: {said}");
    }

    private static bool IsInherited(string name) =>
        name.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("NUGET_", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("COMPlus_", StringComparison.OrdinalIgnoreCase)
        || name is "Configuration" or "Platform" or "TargetFramework" or "DOTNET_HOST_PATH";
}
