using System.Diagnostics;

namespace Warmup.TestSupport;

/// <summary>What a program printed, and what it ended with.</summary>
public sealed record ProgramRun(int Code, string Out, string Error)
{
    // Long enough for a machine that does several things at once; no run takes a tenth of it.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    /// <summary>The first of some programs, by the folders of PATH; null where there is none.</summary>
    public static string? Find(params string[] names)
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? string.Empty).Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        return names.SelectMany(n => folders.Select(f => Path.Combine(f, n))).FirstOrDefault(File.Exists);
    }

    /// <summary>How to start a program whose output is read, without what the test host's own start left in the environment.</summary>
    public static ProcessStartInfo Prepare(string program, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var name in start.Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
        {
            start.Environment.Remove(name);
        }

        // No build process outlives the program and holds its output open; the compiler that stays warm does not hold it.
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["DOTNET_CLI_USE_MSBUILD_SERVER"] = "0";

        // The build that the tests belong to has analyzed all code.
        start.Environment["RunAnalyzers"] = "false";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        return start;
    }

    public static ProgramRun Of(string program, string folder, params string[] arguments) => Of(Prepare(program, folder, arguments));

    public static ProgramRun Of(ProcessStartInfo start) => OfAsync(start).GetAwaiter().GetResult();

    /// <summary>Runs a program to its end; one that does not end in ten minutes is stopped, which fails the test.</summary>
    public static async Task<ProgramRun> OfAsync(ProcessStartInfo start)
    {
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
            throw new TimeoutException($"{Line(start)} took longer than {Longest}");
        }

        return new ProgramRun(process.ExitCode, await output, await error);
    }

    /// <summary>What was typed, for a message.</summary>
    public static string Line(ProcessStartInfo start) => $"{start.FileName} {string.Join(' ', start.ArgumentList)}";
}
