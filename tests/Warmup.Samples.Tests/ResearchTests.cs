using System.Text.RegularExpressions;

namespace Warmup.Samples.Tests;

/// <summary>The researcher's notebook, run as its reader runs it, in a copy of the repository; its figures are recomputed here where that is easy.</summary>
public sealed partial class ResearchTests : IDisposable
{
    // The files beside the solution say how everything is built.
    private static readonly string[] Copied =
        ["samples/research", "src/Shared", "src/Warmup.Core", "src/Warmup.Voices", "src/Warmup.Testing", .. SourceTree.RootFiles];

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-research-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void It_prints_its_tables_and_its_laws_hold()
    {
        foreach (var part in Copied)
        {
            SourceTree.Copy(part, _folder);
        }

        var (code, output, error) = ProgramRun.Of("dotnet", _folder, "run", "samples/research/patterns.cs", "--", "2");
        Assert.True(code == 0, output + error);
        var numbers = Row().Matches(output).Select(m => m.Groups.Values.Skip(1).Select(g => int.Parse(g.Value, System.Globalization.CultureInfo.InvariantCulture)).ToArray()).ToList();
        Assert.Equal(2, numbers.Count);

        // Size 1: ladder, run and two figures are four melodies in a scale of seven notes, and no two of the 72 scales have the same notes.
        Assert.Equal([1, 4, 4, 4 * 72, 0], numbers[0]);

        // The parent scales are the same both ways, where reversed and backwards agree (laws.md); Bilahari's kind are not.
        var agree = Regex.Match(output, @"backwards\(p\) = reversed\(p\) \| (?<held>\d+) of (?<cases>\d+) \(100\.0 %\) \| (?<some>\d+) of (?<all>\d+)");
        Assert.True(agree.Success, output);
        Assert.Equal(agree.Groups["cases"].Value, agree.Groups["held"].Value);
        Assert.NotEqual(agree.Groups["all"].Value, agree.Groups["some"].Value);
        Assert.Equal(3, Regex.Count(output, "held in 200 cases"));
    }

    [GeneratedRegex(@"^\| (\d) \| (\d+) \| (\d+) \| (\d+) \| (\d+) \|\r?$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
