using System.Diagnostics;

namespace Warmup.Samples.Tests;

/// <summary>The repository, and programs started from a test.</summary>
internal static class Programs
{
    public static string Root { get; } = FindRoot();

    /// <summary>Starts a program whose output is read by the test, without what the test host's own start left in the environment.</summary>
    public static Process Start(string program, string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var name in start.Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase)).ToList())
        {
            start.Environment.Remove(name);
        }

        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        return Process.Start(start)!;
    }

    /// <summary>What a program prints, and what it ends with.</summary>
    public static (int Code, string Out, string Error) Run(string program, string folder, params string[] arguments)
    {
        using var process = Start(program, folder, arguments);
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.GetAwaiter().GetResult());
    }

    /// <summary>A copy without what builds leave behind, so that a build of it disturbs no other.</summary>
    public static void Copy(string part, string to)
    {
        var from = Path.Combine(Root, part);
        foreach (var file in File.Exists(from) ? [from] : Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var name = Path.GetRelativePath(Root, file);
            if (!name.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj"))
            {
                var target = Path.Combine(to, name);
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(file, target);
            }
        }
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Warmup.Core.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"no repository above {AppContext.BaseDirectory}");
    }
}
