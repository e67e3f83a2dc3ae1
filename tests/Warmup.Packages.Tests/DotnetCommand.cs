namespace Warmup.Packages.Tests;

/// <summary>The SDK's command, run apart from the build that these tests belong to.</summary>
internal static class DotnetCommand
{
    /// <summary>Runs it and gives what it printed; fails where it fails.</summary>
    public static async Task<string> Run(string folder, params string[] arguments)
    {
        var start = ProgramRun.Prepare("dotnet", folder, arguments);

        // What `dotnet test` hands down, and folders of packages set from outside, would lead the new project to other places.
        foreach (var name in start.Environment.Keys.Where(IsInherited).ToList())
        {
            start.Environment.Remove(name);
        }

        var (code, output, error) = await ProgramRun.OfAsync(start);
        return code == 0 ? output + error : throw new InvalidOperationException($"{ProgramRun.Line(start)}: {output}{error}");
    }

    private static bool IsInherited(string name) =>
        name.StartsWith("NUGET_", StringComparison.OrdinalIgnoreCase)
        || name.StartsWith("COMPlus_", StringComparison.OrdinalIgnoreCase)
        || name is "Configuration" or "Platform" or "TargetFramework" or "DOTNET_HOST_PATH";
}
