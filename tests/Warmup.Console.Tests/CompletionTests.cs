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
