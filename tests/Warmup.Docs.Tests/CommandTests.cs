using System.Text.RegularExpressions;
using Warmup.Cli;

namespace Warmup.Docs.Tests;

/// <summary>
/// Every command line in the documentation runs, page by page in reading order. An invented class is there for every page; <c>...</c> stands
/// for the options of a drill, a word in capitals for a file or a name.
/// </summary>
public sealed partial class CommandTests : TemporaryFolder
{
    private const string Drill = "--scale mohanam --pattern ladder --tonic G3 --tempo 60";

    private const string Class = """
        {
          "schema": "urn:warmup:singers:1",
          "singers": [
            { "alias": "Wren", "low": "G3", "high": "E5", "sustainedSeconds": 18 },
            { "alias": "Otter", "low": "C3", "high": "G4", "sustainedSeconds": 24, "experience": "intermediate" }
          ]
        }
        """;

    public static TheoryData<string> Pages => [.. Repository.Pages.Where(p => Repository.ShellLines(p).Any() || Inline().IsMatch(p.Text)).Select(p => p.Path)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_commands_of_a_page_run_one_after_the_other(string path)
    {
        var page = Repository.Pages.Single(p => p.Path == path);
        File.WriteAllText("class.json", Class);
        string[] lines = [.. Repository.ShellLines(page)];
        if (lines.Any(l => l.Contains("out/", StringComparison.Ordinal)) && !lines.Any(l => l.StartsWith("warmup demo ", StringComparison.Ordinal)))
        {
            Assert.Equal(0, Run("demo --out out").Code);
        }

        foreach (var line in lines)
        {
            // "# exits with 1" after a command is the expected exit code; without it 0 is expected.
            var parts = line.Split(" # ", 2, StringSplitOptions.TrimEntries);
            var wanted = parts.Length > 1 && Exit().Match(parts[1]) is { Success: true } exit ? exit.Groups["code"].Value[0] - '0' : 0;
            var (code, error) = Run(Filled(parts[0]["warmup ".Length..]));
            Assert.True(code == wanted, $"{path}: {line}\nexits with {code}, not {wanted}: {error}");
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_commands_within_a_text_run_or_name_a_command(string path)
    {
        var page = Repository.Pages.Single(p => p.Path == path);
        foreach (Match command in Inline().Matches(page.Text))
        {
            Begin();
            File.WriteAllText("class.json", Class);
            var text = command.Groups["text"].Value;
            var (code, error) = Run(text.Contains(' ', StringComparison.Ordinal) ? Filled(text) : text + " --help");
            Assert.True(code == 0, $"{path}: {text} exits with {code}: {error}");
        }
    }

    [Fact]
    public void The_exit_code_that_means_a_singer_cannot_sing_it_is_1_and_that_of_a_wrong_option_2()
    {
        File.WriteAllText("class.json", Class);
        Assert.Equal(1, Run("check --scale mohanam --pattern ladder --tonic C6 --tempo 60 --singers class.json").Code);
        Assert.Equal(2, Run("check --scale mohanam --patern ladder").Code);
    }

    private static string Filled(string command) => command
        .Replace("...", Drill, StringComparison.Ordinal)
        .Replace("--out FILE.csv", "--out class.csv", StringComparison.Ordinal)
        .Replace("FILE", "class.json", StringComparison.Ordinal)
        .Replace("NAME", "mohanam", StringComparison.Ordinal);

    private static (int Code, string Error) Run(string command)
    {
        using var error = new StringWriter();
        var words = Word().Matches(command).Select(w => w.Value.Trim('"')).ToArray();
        return (Program.Run(words, TextWriter.Null, error), error.ToString());
    }

    [GeneratedRegex("`warmup (?<text>[^`\\n]+)`")]
    private static partial Regex Inline();

    [GeneratedRegex("exits with (?<code>[0-9])")]
    private static partial Regex Exit();

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Word();
}
