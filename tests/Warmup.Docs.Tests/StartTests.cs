using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>The five-minute start, typed step by step as a reader does, beside a copy of the repository that was never built.</summary>
public sealed partial class StartTests : TemporaryFolder
{
    // The files beside the solution say how everything is built.
    private static readonly string[] Copied = ["src/Shared", "src/Warmup.Core", "src/Warmup.Midi", "src/Warmup.MusicXml", .. Directory.EnumerateFiles(Repository.Root).Select(f => Path.GetFileName(f)).Where(f => f != ".git")];

    [Fact]
    public void Its_steps_lead_to_a_midi_and_a_MusicXML_file()
    {
        foreach (var part in Copied)
        {
            Copy(Path.Combine(Repository.Root, part), Path.Combine(Folder, "warmup", part));
        }

        var page = Repository.Pages.Single(p => p.Path == "docs/start.md");
        var place = Folder;
        var shown = string.Empty;
        foreach (var block in Repository.Blocks.Where(b => b.Page == page.Path))
        {
            switch (block.Language)
            {
                case "csharp":
                    File.WriteAllText(Path.Combine(place, "Program.cs"), block.Code);
                    break;
                case "text":
                    Assert.EndsWith(block.Code, shown.Trim().ReplaceLineEndings("\n"), StringComparison.Ordinal);
                    break;
                default:
                    foreach (var line in block.Code.Split('\n'))
                    {
                        if (line.StartsWith("cd ", StringComparison.Ordinal))
                        {
                            place = Path.GetFullPath(Path.Combine(place, line[3..]));
                        }
                        else
                        {
                            shown = Run(line, place);
                        }
                    }

                    break;
            }
        }

        Assert.True(File.Exists(Path.Combine(place, "mohanam.mid")));
        Assert.True(File.Exists(Path.Combine(place, "mohanam.musicxml")));
    }

    private static string Run(string line, string place)
    {
        var words = Word().Matches(line).Select(w => w.Value.Trim('"')).ToArray();
        var start = new ProcessStartInfo(words[0], words[1..]) { WorkingDirectory = place, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";

        // What the test host was started with must not reach the programs it starts.
        foreach (var name in start.Environment.Keys.Where(k => k.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase) && k != "MSBUILDDISABLENODEREUSE").ToList())
        {
            start.Environment.Remove(name);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{line}: {process.ExitCode}\n{output}\n{error.Result}");
        return output;
    }

    private static void Copy(string from, string to)
    {
        if (File.Exists(from))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(from, to);
            return;
        }

        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var name = Path.GetRelativePath(from, file);
            if (!name.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj"))
            {
                Copy(file, Path.Combine(to, name));
            }
        }
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();
}
