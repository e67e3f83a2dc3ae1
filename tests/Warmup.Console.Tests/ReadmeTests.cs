using System.Text.RegularExpressions;

namespace Warmup.Cli.Tests;

/// <summary>What the README shows is what compiles and runs.</summary>
public sealed partial class ReadmeTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    private static string Readme => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "README.md"));

    [Fact]
    public void The_CSharp_example_is_the_compiled_one()
    {
        var shown = Fence().Matches(Readme).Single(m => m.Groups["language"].Value == "csharp").Groups["code"].Value;
        var source = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ReadmeExample.txt"));
        var region = Region().Match(source).Groups["code"].Value;
        var compiled = string.Join('\n', region.Split('\n').Select(l => l.StartsWith("        ", StringComparison.Ordinal) ? l[8..] : l));
        Assert.Equal(compiled.Trim(), shown.Trim());
    }

    [Fact]
    public void The_CSharp_example_runs_and_leaves_two_files()
    {
        var before = Directory.GetCurrentDirectory();
        Directory.SetCurrentDirectory(_shell.Folder);
        try
        {
            ReadmeExample.Run();
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
        }

        Assert.Equal(["mohanam.mid", "mohanam.musicxml"], _shell.Files);
    }

    [Fact]
    public void The_shell_examples_run()
    {
        var demo = Path.Combine(_shell.Folder, "out");
        Assert.Equal(0, Shell.Run("demo", "--out", demo).Code);
        var commands = Fence().Matches(Readme)
            .Where(m => m.Groups["language"].Value == "sh")
            .SelectMany(m => m.Groups["code"].Value.Split('\n'))
            .Where(l => l.StartsWith("warmup ", StringComparison.Ordinal))
            .ToList();
        Assert.NotEmpty(commands);
        foreach (var command in commands)
        {
            var words = Word().Matches(command.Split(" # ")[0]).Select(w => w.Value.Trim('"')).Skip(1).ToArray();
            for (var i = 1; i < words.Length; i++)
            {
                words[i] = words[i - 1] is "--out" or "--singers" or "--chart" ? Path.Combine(_shell.Folder, words[i]) : words[i];
            }

            var (code, _, error) = Shell.Run(words);
            Assert.True(code is 0 or 1, $"{command}: {code} {error}");
            Assert.Equal(string.Empty, error);
        }
    }

    [Fact]
    public void Every_option_that_the_README_explains_exists()
    {
        var help = Shell.Run("drill", "--help");
        foreach (Match option in OptionRow().Matches(Readme))
        {
            foreach (Match name in OptionName().Matches(option.Value.Split('|')[1]))
            {
                Assert.Contains(name.Value, help.Out, StringComparison.Ordinal);
            }
        }
    }

    [GeneratedRegex("```(?<language>\\w+)\\n(?<code>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Fence();

    [GeneratedRegex("#region README\\n(?<code>.*?)#endregion", RegexOptions.Singleline)]
    private static partial Regex Region();

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();

    [GeneratedRegex("^\\| `--.*$", RegexOptions.Multiline)]
    private static partial Regex OptionRow();

    [GeneratedRegex("--[a-z-]+")]
    private static partial Regex OptionName();
}
