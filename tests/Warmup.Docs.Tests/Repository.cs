using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>A page of the documentation.</summary>
public sealed record Page(string Path, string Text)
{
    public override string ToString() => Path;
}

/// <summary>A fenced block of a page.</summary>
public sealed record Block(string Page, string Language, string Code);

/// <summary>The files of the repository that these tests were built from.</summary>
public static partial class Repository
{
    public static string Root => SourceTree.Root;

    /// <summary>README, DEVELOPERS, CHANGELOG and everything under docs, as paths from the root.</summary>
    public static IReadOnlyList<Page> Pages { get; } = [.. new[] { "README.md", "DEVELOPERS.md", "CHANGELOG.md" }
        .Concat(Directory.EnumerateFiles(Path.Combine(Root, "docs"), "*.md", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Root, f).Replace('\\', '/'))
            .Where(f => !f.StartsWith("docs/site/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal))
        .Select(f => new Page(f, File.ReadAllText(Path.Combine(Root, f)).ReplaceLineEndings("\n")))];

    /// <summary>The README of each package.</summary>
    public static IReadOnlyList<Page> PackagePages { get; } = [.. Directory.EnumerateDirectories(Path.Combine(Root, "src"))
        .Select(f => Path.Combine(f, "README.md"))
        .Where(File.Exists)
        .Select(f => new Page(Path.GetRelativePath(Root, f).Replace('\\', '/'), File.ReadAllText(f).ReplaceLineEndings("\n")))
        .OrderBy(p => p.Path, StringComparer.Ordinal)];

    public static IReadOnlyList<Block> Blocks { get; } = [.. Pages.SelectMany(p => Fence().Matches(p.Text)
        .Select(m => new Block(p.Path, m.Groups["language"].Value, m.Groups["code"].Value.TrimEnd('\n'))))];

    /// <summary>The command lines in a page, fenced or indented.</summary>
    public static IEnumerable<string> ShellLines(Page page) => page.Text.Split('\n')
        .Select(l => l.Trim().Replace("dotnet run --project samples/Warmup.Console -- ", "warmup ", StringComparison.Ordinal))
        .Where(l => l.StartsWith("warmup ", StringComparison.Ordinal));

    /// <summary>A page's text without its fenced blocks.</summary>
    public static string WithoutBlocks(string text) => Fence().Replace(text, string.Empty);

    /// <summary>Code moved to the left edge.</summary>
    public static string Dedent(string code)
    {
        var lines = code.TrimEnd().Split('\n');
        var edge = lines.Where(l => l.Trim().Length > 0).Select(l => l.Length - l.TrimStart().Length).DefaultIfEmpty(0).Min();
        return string.Join('\n', lines.Select(l => l.Length >= edge ? l[edge..].TrimEnd() : string.Empty)).Trim('\n');
    }

    [GeneratedRegex("^```(?<language>\\w*)\\n(?<code>.*?)^```\\s*$", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Fence();
}
