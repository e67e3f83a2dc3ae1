using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Warmup.Samples.Tests;

/// <summary>The researcher's notebooks, run as their readers run them, in a copy of the repository; their figures are recomputed here where that is easy.</summary>
public sealed partial class ResearchTests(ResearchTests.Copy copy) : IClassFixture<ResearchTests.Copy>
{
    [Fact]
    [Trait("Run", "whole")]
    public void The_first_prints_its_tables_and_its_laws_hold()
    {
        var (code, output, error) = ProgramRun.Of("dotnet", copy.Folder, "run", "samples/research/patterns.cs", "--", "2");
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

    [Fact]
    [Trait("Run", "whole")]
    public void The_second_gives_the_answers_that_its_page_records_and_draws_them()
    {
        var pictures = Directory.CreateDirectory(Path.Combine(copy.Folder, "pictures")).FullName;
        var (code, output, error) = ProgramRun.Of("dotnet", copy.Folder, "run", "samples/research/questions.cs", "--", "2", pictures);
        Assert.True(code == 0, output + error);

        // Every row of a quick run stands on the page: of the growing table the first two, of the others all.
        var page = File.ReadAllText(SourceTree.At("docs/research.md")).ReplaceLineEndings("\n").Split('\n');
        var rows = output.ReplaceLineEndings("\n").Split('\n').Where(l => l.StartsWith('|')).ToList();
        Assert.True(rows.Count > 20, output);
        Assert.All(rows, row => Assert.Contains(row, page));
        Assert.Equal(rows.Count(r => !r.Contains("---", StringComparison.Ordinal)) + 3, page.Count(l => l.StartsWith('|') && !l.Contains("---", StringComparison.Ordinal)));

        // Size 1: four patterns sing four different things in any scale of five notes and more.
        Assert.Contains("| 1 | 4 | 4 | 4 | 4 |", rows);

        // Turning round agrees wherever the scale is the same both ways and does not zigzag (laws.md), and one of its words is enough to tell the others.
        Assert.Contains(rows, r => r.StartsWith("| swapped(p) = p | 100.0 % of ", StringComparison.Ordinal) && r.EndsWith("| yes |", StringComparison.Ordinal));

        var groups = Repertoire.Traditional.GroupBy(e => e.Group).Where(g => g.Count() >= 4).ToList();
        Assert.Equal(groups.Sum(g => g.Count()), Circles(pictures, "research-order.svg"));
        Assert.Equal(3 * 2, Circles(pictures, "research-drills.svg"));
        Assert.Equal(1 + 2 + (2 * 8), Elements(pictures, "research-laws.svg", "rect"));
    }

    private static int Circles(string folder, string name) => Elements(folder, name, "circle");

    private static int Elements(string folder, string name, string element) => XDocument.Load(Path.Combine(folder, name)).Descendants().Count(e => e.Name.LocalName == element);

    [GeneratedRegex(@"^\| (\d) \| (\d+) \| (\d+) \| (\d+) \| (\d+) \|\r?$", RegexOptions.Multiline)]
    private static partial Regex Row();

    /// <summary>A copy of the libraries and the notebooks, which both tests build in.</summary>
    public sealed class Copy : IDisposable
    {
        // The files beside the solution say how everything is built.
        private static readonly string[] Copied =
            ["samples/research", "src/Shared", "src/Warmup.Core", "src/Warmup.Voices", "src/Warmup.Testing", .. SourceTree.RootFiles];

        public Copy()
        {
            foreach (var part in Copied)
            {
                SourceTree.Copy(part, Folder);
            }
        }

        public string Folder { get; } = Directory.CreateTempSubdirectory("warmup-research-").FullName;

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
