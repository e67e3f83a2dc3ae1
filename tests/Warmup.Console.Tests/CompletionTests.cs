using System.Diagnostics;

namespace Warmup.Cli.Tests;

/// <summary>What a shell is offered while a line is typed.</summary>
public sealed class CompletionTests
{
    [Theory]
    [InlineData("warmup ", "drill")]
    [InlineData("warmup dr", "drill")]
    [InlineData("warmup drill --sca", "--scale")]
    [InlineData("warmup drill --scale ", "Mohanam")]
    [InlineData("warmup drill --scale moh", "Mohanam")]
    [InlineData("warmup check --tala ", "Adi")]
    [InlineData("warmup drill --pattern al", "alankara-7")]
    [InlineData("warmup fit --tuning j", "just")]
    [InlineData("warmup drill --drone s", "sruti-box")]
    [InlineData("warmup completion b", "bash")]
    public void Commands_options_and_values_are_offered(string line, string expected)
    {
        var (code, output, error) = Shell.Run($"[suggest:{line.Length}]", line);
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(expected, output.ReplaceLineEndings("\n").Split('\n'));
    }

    [Theory]
    [InlineData("warmup drill --pattern vo", "voice-1")]
    [InlineData("warmup drill --pattern tri", "triputa-7")]
    [InlineData("warmup plan --add ch", "choir-1")]
    [InlineData("warmup patterns --show eka", "eka-5")]
    [InlineData("warmup listen --ta", "--take")]
    [InlineData("warmup listen --scale moh", "Mohanam")]
    [InlineData("warmup gnana --tala mis", "misra chapu")]
    [InlineData("warmup gnana --di", "--difficulty")]
    [InlineData("warmup drill --climb 5 --cue ch", "chord")]
    [InlineData("warmup plan --cau", "--cautions")]
    public void What_was_added_later_is_offered_too(string line, string expected) => Commands_options_and_values_are_offered(line, expected);

    [Fact]
    public void Each_exercise_and_each_tala_that_is_offered_can_be_used()
    {
        foreach (var exercise in Offered("warmup drill --pattern "))
        {
            Assert.Equal(0, Shell.Run("patterns", "--show", exercise, "--scale", "15").Code);
        }

        var talas = Offered("warmup drill --tala ");
        Assert.Equal(Meter.Talas.Count + Meter.Chapus.Count + 1, talas.Count);
        Assert.All(talas, t => Assert.True(Meter.TryParse(t, out _, out _), t));
    }

    [Theory]
    [InlineData("--level", "plan")]
    [InlineData("--cue", "drill", "--climb", "3")]
    [InlineData("--delivery", "drill")]
    [InlineData("--fill", "drill")]
    [InlineData("--fill-by", "drill")]
    [InlineData("--clef", "drill")]
    [InlineData("--key", "drill")]
    [InlineData("--paper", "drill")]
    [InlineData("--beat-part", "drill")]
    [InlineData("--midi-tuning", "drill")]
    [InlineData("--midi-text", "drill")]
    [InlineData("--click", "drill")]
    public void What_is_offered_is_what_the_refusal_of_another_word_names(string option, string command, params string[] more)
    {
        using var shell = new Shell();
        using (var file = File.Create(shell.At("class.json")))
        {
            SingersFile.Write(Studio.Singers, file);
        }

        string[] line = command == "plan"
            ? ["plan", "--singers", shell.At("class.json"), "--scales", "mohanam", "--start", "2026-12-01", "--out", shell.At("plan")]
            : shell.Drill();
        var (code, _, error) = Shell.Run([.. line, .. more, option, "nosuch"]);
        Assert.Equal(2, code);
        var named = error.Split($"{option} must be ")[1].Split(", not 'nosuch'")[0].Split(" or ");
        Assert.Equal(named.Order(StringComparer.Ordinal), Offered($"warmup {command} {option} "));
    }

    private static List<string> Offered(string line) =>
        [.. Shell.Run($"[suggest:{line.Length}]", line).Out.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(w => !w.StartsWith('-')).Order(StringComparer.Ordinal)];

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("pwsh")]
    public void Each_shell_has_a_script_that_asks_the_program(string shell)
    {
        var (code, script, _) = Shell.Run("completion", shell);
        Assert.Equal(0, code);
        Assert.Contains("warmup \"[suggest:", script, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', script);
    }

    [Fact]
    public void Bash_completes_a_line_with_the_script()
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "no /bin/bash on this system");
        var program = Path.Combine(AppContext.BaseDirectory, "warmup.dll");
        var test = $$"""
            warmup() { dotnet '{{program}}' "$@"; }
            source <(warmup completion bash)
            complete() {
                COMP_LINE="$1" COMP_POINT=${#1}
                read -ra COMP_WORDS <<< "$1"
                [[ $1 == *' ' ]] && COMP_WORDS+=('')
                COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
                _warmup
                printf '%s\n' "${COMPREPLY[@]}"
            }
            complete 'warmup dri'
            complete 'warmup drill --scale moh'
            complete 'warmup drill --tala misra-jati\ jh'
            """;
        var start = new ProcessStartInfo("/bin/bash", ["-c", test]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var bash = Process.Start(start)!;
        var output = bash.StandardOutput.ReadToEnd();
        var error = bash.StandardError.ReadToEnd();
        bash.WaitForExit();
        Assert.Equal(string.Empty, error);
        Assert.Contains("drill\n", output, StringComparison.Ordinal);
        Assert.Contains("Mohanam\n", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Harikambhoji", output, StringComparison.Ordinal);
    }
}
