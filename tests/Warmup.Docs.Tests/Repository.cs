using System.Text.RegularExpressions;

namespace Warmup.Docs.Tests;

/// <summary>A page of the documentation.</summary>
public sealed record Page(string Path, string Text)
{
    public override string ToString() => Path;
}

/// <summary>A fenced block of a page.</summary>
public sealed record Block(string Page, string Language, string Code);

/// <summary>What lies in the repository whose build this is.</summary>
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

    public static IReadOnlyList<Block> Blocks { get; } = [.. Pages.SelectMany(p => Fence().Matches(p.Text)
        .Select(m => new Block(p.Path, m.Groups["language"].Value, m.Groups["code"].Value.TrimEnd('\n'))))];

    /// <summary>The lines of the code blocks that are typed into a shell, fenced or indented.</summary>
    public static IEnumerable<string> ShellLines(Page page) => page.Text.Split('\n')
        .Select(l => l.Trim().Replace("dotnet run --project samples/Warmup.Console -- ", "warmup ", StringComparison.Ordinal))
        .Where(l => l.StartsWith("warmup ", StringComparison.Ordinal));

    /// <summary>A page's text without its fenced blocks.</summary>
    public static string WithoutBlocks(string text) => Fence().Replace(text, string.Empty);

    /// <summary>Code as it stands at the left edge.</summary>
    public static string Dedent(string code)
    {
        var lines = code.TrimEnd().Split('\n');
        var edge = lines.Where(l => l.Trim().Length > 0).Select(l => l.Length - l.TrimStart().Length).DefaultIfEmpty(0).Min();
        return string.Join('\n', lines.Select(l => l.Length >= edge ? l[edge..].TrimEnd() : string.Empty)).Trim('\n');
    }

    [GeneratedRegex("^```(?<language>\\w*)\\n(?<code>.*?)^```\\s*$", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Fence();
}
