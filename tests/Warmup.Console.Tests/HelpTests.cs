using System.CommandLine;
using Warmup.TestSupport;

namespace Warmup.Cli.Tests;

/// <summary>The help is complete: every option has a group, every example runs, every mistyped word is named with what was meant.</summary>
public sealed class HelpTests : IDisposable
{
    private readonly Shell _shell = new();

    public static TheoryData<string> CommandNames => [.. All.Select(c => c.Name)];

    private static IEnumerable<Command> All => Program.Commands(new Terminal(TextWriter.Null, TextWriter.Null), CancellationToken.None).Subcommands;

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void Warmup_alone_prints_the_commands()
    {
        var (code, output, error) = Shell.Run();
        Assert.Equal((0, string.Empty), (code, error));
        Assert.All(All, c => Assert.Contains($"  {c.Name} ", output, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(CommandNames))]
    public void Help_shows_every_option_in_a_group_and_three_examples(string name)
    {
        var command = All.Single(c => c.Name == name);
        var (code, output, _) = Shell.Run(name, "--help");
        Assert.Equal(0, code);
        Assert.DoesNotContain("More:", output, StringComparison.Ordinal);
        Assert.All(command.Options.Where(o => !o.Hidden), o => Assert.Contains($"  {o.Name}", output, StringComparison.Ordinal));
        Assert.Equal(3, CommandExamples.Of(name).Count);
        Assert.All(CommandExamples.Of(name), e => Assert.Contains($"  {e}\n", output.ReplaceLineEndings("\n"), StringComparison.Ordinal));
        Assert.All(output.ReplaceLineEndings("\n").Split('\n').Where(l => !l.StartsWith("  warmup ", StringComparison.Ordinal)), l => Assert.InRange(l.Length, 0, 120));
    }

    [Theory]
    [MemberData(nameof(CommandNames))]
    public void The_examples_run(string name)
    {
        using (var singers = File.Create(_shell.At("singers.json")))
        {
            SingersFile.Write(Studio.Singers, singers);
        }

        File.WriteAllText(_shell.At("class.csv"), "alias,low,high,sustainedSeconds\nWren,A3,E5,14\n");
        string[] files = ["--out", "--singers", "--plan", "--chart", "--take", "--file", "--lowest-highest", "--sustained"];
        if (name is "listen" or "measure")
        {
            Assert.Equal(0, Shell.Run("drill", "--scale", "mohanam", "--pattern", "ladder", "--tonic", "G3", "--tempo", "60", "--out", _shell.At("take.wav")).Code);
            ToneFile.Write(_shell.At("glide.wav"));
            ToneFile.Write(_shell.At("tone.wav"));
        }

        if (name == "read")
        {
            Assert.Equal(0, Shell.Run("drill", "--scale", "mohanam", "--pattern", "ladder", "--tonic", "G3", "--tempo", "60", "--out", _shell.At("drill.mid"), "--out", _shell.At("drill.musicxml")).Code);
        }

        if (name == "plan")
        {
            Assert.Equal(0, Shell.Run([.. Words(CommandExamples.Of("plan")[0], files)]).Code);
            Directory.Move(_shell.At("plan"), _shell.At("plan-made"));
            Directory.CreateDirectory(_shell.At("plan"));
            File.Copy(_shell.At("plan-made/plan.json"), _shell.At("plan/plan.json"));
        }

        foreach (var example in WholeCheck.OneIn(3, CommandExamples.Of(name)).Where(e => !e.Contains('|', StringComparison.Ordinal)))
        {
            string[] words = [.. Words(example.Split('>')[0], files)];
            if ((name == "demo" || words.Contains(_shell.At("plan"))) && !words.Contains("--force"))
            {
                words = [.. words, "--force"];
            }

            var (code, _, error) = Shell.Run(words);
            Assert.True(code is 0 or 1 && error.Length == 0, $"{example}: {code} {error}");
        }
    }

    [Theory]
    [InlineData("did you mean drill", "drlil")]
    [InlineData("did you mean drill", "DRILL")]
    [InlineData("did you mean --help", "help")]
    [InlineData("did you mean --version", "version")]
    [InlineData("did you mean --help", "--hlep")]
    [InlineData("did you mean --tempo", "drill", "--temp", "60")]
    [InlineData("'kalyani' stands alone", "scales", "kalyani")]
    [InlineData("--scale, --pattern, --tonic, --tempo, --out", "drill")]
    [InlineData("--out needs a value", "drill", "--scale", "15", "--pattern", "ladder", "--tonic", "C4", "--tempo", "60", "--out")]
    [InlineData("--scale stands there 2 times", "check", "--scale", "15", "--scale", "16")]
    public void A_mistyped_line_is_named_with_what_was_meant(string expected, params string[] args)
    {
        var (code, output, error) = Shell.Run(args);
        Assert.Equal((2, string.Empty), (code, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public void The_manual_has_every_command_and_option()
    {
        var (code, page, _) = Shell.Run("manual");
        Assert.Equal(0, code);
        foreach (var command in All)
        {
            Assert.Contains($".SH {command.Name.ToUpperInvariant()}\n", page, StringComparison.Ordinal);
            Assert.All(command.Options, o => Assert.Contains($".B {o.Name.Replace("-", "\\-", StringComparison.Ordinal)}", page, StringComparison.Ordinal));
        }

        // What a formatter would take for a command of its own begins with a full stop or an apostrophe.
        string[] commands = [".TH", ".SH", ".SS", ".TP", ".B", ".I", ".nf", ".fi"];
        Assert.All(page.Split('\n').Where(l => l.StartsWith('.') || l.StartsWith('\'')), l => Assert.Contains(l.Split(' ')[0], commands));
    }

    /// <summary>The words of an example as a shell would pass them, without the program's name; files lie in this test's folder.</summary>
    private IEnumerable<string> Words(string example, string[] files)
    {
        var words = System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(example).Skip(1).ToList();
        return words.Select((w, i) => i > 0 && files.Contains(words[i - 1]) ? _shell.At(w) : w);
    }
}
