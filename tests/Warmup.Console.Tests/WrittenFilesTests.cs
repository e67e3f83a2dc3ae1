using System.Text.Json.Nodes;

namespace Warmup.Cli.Tests;

/// <summary>What the commands that write files report with <c>--json</c>: one JSON value and nothing else.</summary>
public sealed class WrittenFilesTests : IDisposable
{
    private const string Class = """
        {"schema": "urn:warmup:singers:1", "singers": [{"alias": "Wren", "low": "A3", "high": "E5", "sustainedSeconds": 14}]}
        """;

    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("--climb 2")]
    public void A_drill_names_its_files_and_what_does_not_fit(string climb)
    {
        var singers = _shell.At("class.json");
        File.WriteAllText(singers, Class);
        var (midi, sheet) = (_shell.At("a.mid"), _shell.At("a.txt"));
        var (code, said, _) = Shell.Run([
            "drill", "--scale", "mohanam", "--pattern", "ladder", "--tonic", "C3", "--tempo", "60", "--singers", singers, "--plan-breaths", "--out", midi, "--out", sheet, "--json", .. climb.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        var report = JsonNode.Parse(said)!;
        Assert.Equal(1, code);
        Assert.Equal("urn:warmup:findings:2", (string?)report["schema"]);
        Assert.Equal([midi, sheet], report["files"]!.AsArray().Select(f => (string)f!["path"]!));
        Assert.Equal(["Standard MIDI File", "text sheet"], report["files"]!.AsArray().Select(f => (string)f!["format"]!));
        Assert.All([midi, sheet], path => Assert.True(File.Exists(path)));

        // C3 lies under the singer's A3.
        Assert.Contains("range.below", report["singers"]![0]!["findings"]!.AsArray().Select(f => (string)f!["code"]!));
    }

    [Fact]
    public void Svara_gnana_names_its_files()
    {
        var sheet = _shell.At("listen.txt");
        var (code, said, _) = Shell.Run("gnana", "--scale", "mohanam", "--tonic", "C4", "--tempo", "60", "--out", sheet, "--json");
        Assert.Equal(0, code);
        var report = JsonNode.Parse(said)!;
        Assert.Equal("urn:warmup:written:1", (string?)report["schema"]);
        Assert.Equal(sheet, (string?)report["files"]![0]!["path"]);
        Assert.True(File.Exists(sheet));
    }

    // The names that Windows keeps for devices, with any ending, and the characters it takes in no name: "Naming Files, Paths, and Namespaces", Microsoft
    // Learn.
    [Theory]
    [InlineData("demo")]
    [InlineData("plan --scales mohanam --days 3 --start 2026-12-01 --minutes 8 --tonic D3 --formats .txt --week 2026-12-01")]
    public void Names_that_the_program_makes_are_allowed_on_every_system(string command)
    {
        var singers = _shell.At("class.json");
        File.WriteAllText(singers, Class);
        var folder = _shell.At("made");
        string[] more = command == "demo" ? [] : ["--singers", singers];
        var (code, said, error) = Shell.Run([.. command.Split(' '), .. more, "--out", folder]);
        Assert.True(code == 0, said + error);
        var names = Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)!).ToList();
        Assert.NotEmpty(names);
        Assert.All(names, name =>
        {
            Assert.Matches("^[a-z0-9]+([-.][a-z0-9]+)*$", name);
            Assert.DoesNotMatch("^(con|prn|aux|nul|com[0-9]|lpt[0-9])([.]|$)", name);
        });
    }
}
