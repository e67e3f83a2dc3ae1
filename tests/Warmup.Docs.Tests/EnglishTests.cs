using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>
/// A few phrases translated word for word from another language, which slip in easily: "behind" for "after", "so many" for a number. The
/// list is short on purpose. "Behind" is fine for a place in space: write "left behind" or "behind TLS", without an article.
/// </summary>
public sealed partial class EnglishTests
{
    public static TheoryData<string> Pages => [.. Repository.Pages.Concat(Repository.PackagePages).Select(p => p.Path)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_is_written_in_plain_English(string path)
    {
        var found = Turns(path, Prose(Repository.Pages.Concat(Repository.PackagePages).Single(p => p.Path == path).Text)).ToList();
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Fact]
    public void The_documentation_of_the_libraries_is_written_in_plain_English()
    {
        var found = new List<string>();
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories))
        {
            var path = Path.GetRelativePath(Repository.Root, file).Replace('\\', '/');
            if (!path.Contains("/obj/", StringComparison.Ordinal))
            {
                found.AddRange(Turns(path, string.Join('\n', File.ReadLines(file).Select(l => l.TrimStart()).Where(l => l.StartsWith("///", StringComparison.Ordinal)).Select(l => l[3..].Trim()))));
            }
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Theory]
    [InlineData("a silence behind each line", true)]
    [InlineData("no file is left behind", false)]
    [InlineData("so many\nnotes fewer", true)]
    [InlineData("drills are independent, so many can be made together", false)]
    [InlineData("text that is no number", true)]
    public void The_list_finds_what_it_is_meant_to_find(string text, bool isFound) => Assert.Equal(isFound, Turns("page", text).Any());

    private static IEnumerable<string> Turns(string path, string text) =>
        Turn().Matches(text).Select(m => $"{path}: '{Whitespace().Replace(m.Value, " ")}'");

    // What is quoted or run is not prose.
    private static string Prose(string text) => Code().Replace(text, string.Empty);

    [GeneratedRegex(@"\b(behind\s+(the|a|an|each|every\s+(line|note)|it|them)|(?<!,\s)so\s+many|(is|what\s+is)\s+no\s+number|is\s+asked\s+of)\b.{0,30}", RegexOptions.IgnoreCase)]
    private static partial Regex Turn();

    [GeneratedRegex("^```.*?^```|`[^`\\n]*`", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Code();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Whitespace();
}
