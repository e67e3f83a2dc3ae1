using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Warmup.ManyMachines.Tests;

/// <summary>Source: the program's own options, and for the rest of the files the schemas of those who read them.</summary>
public partial class ManifestTests
{
    [Theory]
    [InlineData("compose.yaml", 3)]
    [InlineData("kubernetes.yaml", 2)]
    public void The_commands_in_the_manifests_are_commands_of_the_program(string name, int commands)
    {
        var found = Command().Matches(File.ReadAllText(Path.Combine(Folder, name))).Select(m => JsonSerializer.Deserialize<string[]>(m.Groups[1].Value)!).Where(c => c[0] is "coordinator" or "worker").ToList();
        Assert.Equal(commands, found.Count);
        Assert.All(found, command => Assert.Empty(Commands.Create().Parse(command).Errors));
    }

    [Fact]
    [Trait("Run", "whole")]
    public void The_manifests_are_what_their_schemas_allow()
    {
        var packages = Environment.GetEnvironmentVariable("WARMUP_MANIFESTS_DIR");
        Assert.SkipWhen(packages is null, "needs the folder with the schemas in WARMUP_MANIFESTS_DIR; manifests.mjs tells what to install there");
        using var node = Process.Start(new ProcessStartInfo("node", [Path.Combine(Here(), "manifests.mjs"), packages!, Folder]) { RedirectStandardError = true })!;
        var problems = node.StandardError.ReadToEnd();
        node.WaitForExit();
        Assert.Equal((string.Empty, 0), (problems, node.ExitCode));
    }

    private static string Folder => Path.GetFullPath(Path.Combine(Here(), "../../samples/Warmup.Cluster/deploy"));

    private static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

    [GeneratedRegex("^ *(?:args|command): (\\[.*\\])$", RegexOptions.Multiline)]
    private static partial Regex Command();
}
