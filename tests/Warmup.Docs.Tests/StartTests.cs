using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>The five-minute start, typed step by step as a reader does, beside a copy of the repository that was never built.</summary>
public sealed partial class StartTests : TemporaryFolder
{
    // The files beside the solution say how everything is built.
    private static readonly string[] Copied = ["src/Shared", "src/Warmup.Core", "src/Warmup.Midi", "src/Warmup.MusicXml", .. SourceTree.RootFiles];

    [Fact]
    [Trait("Run", "whole")]
    public void Its_steps_lead_to_a_midi_and_a_MusicXML_file()
    {
        foreach (var part in Copied)
        {
            SourceTree.Copy(part, Path.Combine(Folder, "warmup"));
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
        var (code, output, error) = ProgramRun.Of(words[0], place, words[1..]);
        Assert.True(code == 0, $"{line}: {code}\n{output}\n{error}");
        return output;
    }

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();
}
