using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Warmup.Docs.Tests;

/// <summary>Every relative link and image leads to an existing file and heading; anchors are made as GitHub makes them.</summary>
public sealed partial class LinkTests
{
    public static TheoryData<string> Pages => [.. Repository.Pages.Select(p => p.Path)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Links_and_images_lead_somewhere(string path)
    {
        var page = Repository.Pages.Single(p => p.Path == path);
        var folder = Path.GetDirectoryName(Path.Combine(Repository.Root, path))!;
        foreach (Match link in Link().Matches(WithoutCode(page.Text)))
        {
            var target = link.Groups["target"].Value;
            if (target.Contains("://", StringComparison.Ordinal) || target.StartsWith("mailto:", StringComparison.Ordinal))
            {
                continue;
            }

            var parts = target.Split('#', 2);
            var file = parts[0].Length == 0 ? Path.Combine(Repository.Root, path) : Path.GetFullPath(Path.Combine(folder, parts[0]));
            Assert.True(File.Exists(file) || Directory.Exists(file), $"{path}: {target} leads nowhere");
            Assert.True(
                parts.Length == 1 || Headings(File.ReadAllText(file)).Contains(parts[1]),
                $"{path}: {target} names a heading that is not there");
        }
    }

    [Fact]
    public void Every_image_has_a_text_alternative()
    {
        var images = Repository.Pages.SelectMany(p => Image().Matches(WithoutCode(p.Text)).Select(m => (p.Path, Words: m.Groups["words"].Value))).ToList();
        Assert.NotEmpty(images);
        Assert.All(images, i => Assert.True(i.Words.Length >= 20, $"{i.Path}: '{i.Words}' says too little"));
    }

    [Fact]
    public void Every_drawing_can_be_read_says_what_it_shows_and_fetches_nothing()
    {
        // The packages' icon belongs to no page.
        var drawings = Directory.GetFiles(Path.Combine(Repository.Root, "docs/images"), "*.svg").Where(d => Path.GetFileName(d) != "icon.svg").ToList();
        Assert.NotEmpty(drawings);
        foreach (var path in drawings)
        {
            var drawing = XDocument.Load(path).Root!;
            Assert.NotEmpty(drawing.Element(drawing.Name.Namespace + "title")!.Value);
            Assert.NotEmpty(drawing.Element(drawing.Name.Namespace + "desc")!.Value);
            Assert.DoesNotContain(drawing.DescendantsAndSelf(), e => e.Name.LocalName is "script" or "image" or "foreignObject");
            Assert.DoesNotContain("@import", drawing.Value, StringComparison.Ordinal);
            Assert.Contains("prefers-color-scheme: dark", drawing.Value, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_page_is_reached_from_the_index()
    {
        var index = Repository.Pages.Single(p => p.Path == "docs/README.md").Text;
        var missing = Repository.Pages
            .Where(p => p.Path.StartsWith("docs/", StringComparison.Ordinal) && p.Path != "docs/README.md")
            .Where(p => !index.Contains($"]({p.Path["docs/".Length..]})", StringComparison.Ordinal))
            .Select(p => p.Path);
        Assert.Empty(missing);
    }

    private static string WithoutCode(string text) => Code().Replace(text, string.Empty);

    private static HashSet<string> Headings(string text)
    {
        var anchors = new HashSet<string>(StringComparer.Ordinal);
        foreach (Match heading in Heading().Matches(Fenced().Replace(text.ReplaceLineEndings("\n"), string.Empty)))
        {
            var slug = NotInAnchor().Replace(heading.Groups["text"].Value.Trim().ToLowerInvariant(), string.Empty).Replace(' ', '-');
            var anchor = slug;
            for (var n = 1; !anchors.Add(anchor); n++)
            {
                anchor = $"{slug}-{n}";
            }
        }

        return anchors;
    }

    [GeneratedRegex("\\]\\((?<target>[^)\\s]+)\\)")]
    private static partial Regex Link();

    [GeneratedRegex("!\\[(?<words>[^\\]]*)\\]\\(")]
    private static partial Regex Image();

    [GeneratedRegex("^```.*?^```|`[^`\\n]*`", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Code();

    [GeneratedRegex("^```.*?^```", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Fenced();

    [GeneratedRegex("^#{1,6} (?<text>.+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex("[^\\w\\- ]")]
    private static partial Regex NotInAnchor();
}
