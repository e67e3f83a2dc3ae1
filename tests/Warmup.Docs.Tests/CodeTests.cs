using System.Text.Json;
using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>
/// Every block of C# in the documentation is compiled code: a region of an example that a test runs, or lines of a source file.
/// </summary>
public sealed partial class CodeTests
{
    private static readonly IReadOnlyList<Region> Regions = [.. Sources("tests/Warmup.Docs.Tests/Examples").Concat(Sources("tests/Warmup.Console.Tests"))
        .SelectMany(s => RegionOf().Matches(s.Text).Select(m => new Region(
            s.Path, m.Groups["name"].Value, Repository.Dedent(m.Groups["code"].Value), m.Groups["indent"].Length, s.Text[..m.Index])))];

    [Fact]
    public void Every_block_of_CSharp_is_compiled_code()
    {
        var blocks = Repository.Blocks.Where(b => b.Language is "csharp" or "cs" or "c#").ToList();
        Assert.True(blocks.Count >= 20);
        var sources = Sources("src").Concat(Sources("samples")).Concat(Sources("tests").Where(s => !s.Path.StartsWith("tests/Warmup.Docs.Tests/", StringComparison.Ordinal))).Select(s => string.Join('\n', s.Text.Split('\n').Select(l => l.Trim()))).ToList();

        // The program of the first page is compiled and run by StartTests.
        foreach (var block in blocks)
        {
            var code = Repository.Dedent(block.Code);
            var lines = "\n" + string.Join('\n', code.Split('\n').Select(l => l.Trim())) + "\n";
            Assert.True(
                block.Page == "docs/start.md" || Regions.Any(r => r.Code == code) || sources.Any(s => s.Contains(lines, StringComparison.Ordinal)),
                $"{block.Page}: this block is neither a region of an example nor part of a source file:\n{code}");
        }
    }

    [Fact]
    public void Every_region_of_an_example_is_shown_once()
    {
        var shown = Repository.Blocks.Select(b => Repository.Dedent(b.Code)).ToList();
        var notOnce = Regions.Where(r => shown.Count(c => c == r.Code) != 1).Select(r => $"{r.Path}: the region '{r.Name}' is shown {shown.Count(c => c == r.Code)} times");
        Assert.Empty(notOnce);
    }

    [Fact]
    public void Every_region_with_statements_is_run_by_a_test()
    {
        // A region at the left edge declares types, which the tests of its file use.
        var run = Regions.Where(r => r.Indent > 0 && r.Path.StartsWith("tests/Warmup.Docs.Tests/", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(run);
        Assert.Empty(run.Where(r => !Method().Matches(r.Before).Last().Groups["fact"].Success).Select(r => $"{r.Path}: the region '{r.Name}' is in no [Fact]"));
    }

    [Fact]
    public void No_CSharp_hides_in_a_block_without_a_language()
    {
        foreach (var page in Repository.Pages)
        {
            Assert.DoesNotMatch(IndentedCode(), Repository.WithoutBlocks(page.Text));
        }

        Assert.All(Repository.Blocks.Where(b => b.Language.Length == 0), b => Assert.DoesNotContain(";\n", b.Code + "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_block_of_JSON_can_be_read()
    {
        var blocks = Repository.Blocks.Where(b => b.Language == "json").ToList();
        Assert.NotEmpty(blocks);
        Assert.All(blocks, b => JsonDocument.Parse(b.Code).Dispose());
    }

    private static IEnumerable<Page> Sources(string folder) => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))
        .Select(f => new Page(f, File.ReadAllText(Path.Combine(Repository.Root, f)).ReplaceLineEndings("\n")));

    [GeneratedRegex("^(?<indent> *)#region (?<name>[^\\n]+)\\n(?<code>.*?)^ *#endregion", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex RegionOf();

    [GeneratedRegex("(?<fact>\\[Fact\\]\\n *)?public (static )?(async )?(void|Task) \\w+\\(")]
    private static partial Regex Method();

    [GeneratedRegex("^    (new |var |await |using |foreach )", RegexOptions.Multiline)]
    private static partial Regex IndentedCode();

    private sealed record Region(string Path, string Name, string Code, int Indent, string Before);
}
