using System.CommandLine;

namespace Warmup.Cli.Tests;

/// <summary>Every report that a person reads carries the cautions: two lines, or the whole with the sources.</summary>
public sealed class CautionTests : IDisposable
{
    private readonly Shell _shell = new();

    public CautionTests()
    {
        using (var file = File.Create(_shell.At("class.json")))
        {
            SingersFile.Write(Studio.Singers, file);
        }

        Assert.Equal(0, Shell.Run(_shell.Drill(("--out", _shell.At("take.wav")))).Code);
    }

    public void Dispose() => _shell.Dispose();

    private string Report(string command, params string[] more)
    {
        string[] drill = ["--scale", "mohanam", "--pattern", "ladder", "--tonic", "G3", "--tempo", "60"];
        string[] singers = ["--singers", _shell.At("class.json")];
        string[] options = command switch
        {
            "drill" => [.. drill, .. singers, "--out", _shell.At("a.mid"), "--force"],
            "check" or "fit" => [.. drill, .. singers],
            "climb" => [.. drill, .. singers, "--climb", "2"],
            "listen" => [.. drill, "--take", _shell.At("take.wav")],
            "singers" => singers,
            "plan" => [.. singers, "--scales", "mohanam", "--start", "2026-12-01", "--days", "3", "--formats", "none", "--out", _shell.At("plan")],
            _ => throw new ArgumentException(command),
        };
        var (code, output, error) = Shell.Run([command == "climb" ? "check" : command, .. options, .. more]);
        Assert.InRange(code, 0, 1);
        Assert.Equal(string.Empty, error);
        return output;
    }

    [Theory]
    [InlineData("drill")]
    [InlineData("check")]
    [InlineData("climb")]
    [InlineData("fit")]
    [InlineData("listen")]
    [InlineData("singers")]
    [InlineData("plan")]
    public void They_are_said_once_in_short_and_whole_when_asked_for(string command)
    {
        var shortly = Report(command);
        foreach (var words in (string[])["Stop at once if singing hurts", "Do not sing when hoarse or ill", "more than two to three weeks: see a doctor", "The teacher's ear overrules the numbers", "When to see one at once, and the rest: --cautions"])
        {
            Assert.Equal(1, shortly.Split(words).Length - 1);
        }

        Assert.Equal(1, Lines(shortly, "Stop at once"));
        Assert.DoesNotContain("NIDCD", shortly, StringComparison.Ordinal);

        var whole = Report(command, CautionOption.Name);
        Assert.All(Cautions.All, c => Assert.Equal(1, Lines(whole, $"- {c.Text} ({c.Source})")));
        Assert.DoesNotContain("and the rest:", whole, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_drill_asks_of_a_voice_is_in_the_short_form_too()
    {
        string[] drill = ["check", "--scale", "mohanam", "--pattern", "voice-1", "--tonic", "G3", "--tempo", "60", "--singers", _shell.At("class.json")];
        Assert.Contains("Slides: softly, without pressing", Shell.Run(drill).Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Swells:", Shell.Run(drill).Out, StringComparison.Ordinal);
        Assert.Contains("lightly over the place where the voice changes register", Shell.Run([.. drill, "--cautions"]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_lines_are_two_lines()
    {
        using var output = new StringWriter();
        CautionOption.Print(output, Cautions.All, whole: false);
        var lines = output.ToString().TrimEnd().Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.All(lines, l => Assert.InRange(l.TrimEnd().Length, 40, 150));
    }

    [Fact]
    public void Every_command_that_takes_the_option_has_it_among_those_of_the_report()
    {
        var commands = Program.Commands(new Terminal(TextWriter.Null, TextWriter.Null), CancellationToken.None).Subcommands.Where(c => c.Options.Any(o => o.Name == CautionOption.Name)).ToList();
        Assert.Equal(["drill", "check", "fit", "plan", "listen", "measure", "read", "singers"], commands.Select(c => c.Name));
        Assert.All(commands, c => Assert.Contains(OptionGroups.Of(c), g => g.Title == "Report" && g.Options.Any(o => o.Name == CautionOption.Name)));
    }

    private static int Lines(string output, string begin) => output.Split('\n').Count(l => l.StartsWith(begin, StringComparison.Ordinal));
}
