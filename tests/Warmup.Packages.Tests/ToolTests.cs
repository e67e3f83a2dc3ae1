namespace Warmup.Packages.Tests;

/// <summary>The program as a .NET tool: installed from the folder it was packed into, with an empty cache of packages, and used.</summary>
[Collection<Packed>]
public sealed class ToolTests(PackedLibraries packed) : IDisposable
{
    // The project's own goal.
    private const long MostBytes = 60_000_000;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-tool-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    [Trait("Run", "whole")]
    public async Task The_program_installs_as_a_tool_and_writes_a_sheet()
    {
        Assert.InRange(new FileInfo(Path.Combine(packed.Folder, $"Warmup.Tool.{PackedLibraries.Version}.nupkg")).Length, 1, MostBytes);
        File.WriteAllText(In("nuget.config"), $"""
            <configuration>
              <config><add key="globalPackagesFolder" value="{In("cache")}" /></config>
              <packageSources><clear /><add key="packed" value="{packed.Folder}" /></packageSources>
            </configuration>
            """);
        await DotnetCommand.Run(_folder.FullName, "tool", "install", "Warmup.Tool", "--version", PackedLibraries.Version, "--tool-path", In("tools"), "--configfile", In("nuget.config"));

        var (code, output, error) = await ProgramRun.OfAsync(ProgramRun.Prepare(In("tools/warmup"), _folder.FullName, ["--version"]));
        Assert.Equal((0, string.Empty), (code, error));

        // The suffix is the package's own: what is packed was built before, without it.
        Assert.StartsWith(PackedLibraries.Version.Split('-')[0], output, StringComparison.Ordinal);

        string[] drill = ["drill", "--scale", "mohanam", "--pattern", "ladder", "--tonic", "G3", "--tempo", "60", "--out", "a.pdf"];
        (code, _, error) = await ProgramRun.OfAsync(ProgramRun.Prepare(In("tools/warmup"), _folder.FullName, drill));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Equal("%PDF"u8, File.ReadAllBytes(In("a.pdf")).AsSpan(0, 4));
    }

    private string In(string name) => Path.Combine(_folder.FullName, name);
}
