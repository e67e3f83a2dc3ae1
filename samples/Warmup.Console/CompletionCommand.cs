using System.CommandLine;
using Warmup.Plans;

namespace Warmup.Cli;

/// <summary><c>warmup completion</c>: prints a script that lets a shell complete commands, options and the values they take.</summary>
internal static class CompletionCommand
{
    /// <summary>Each script asks the program itself, with its <c>[suggest]</c> directive, so that it never grows old.</summary>
    private static readonly (string Shell, string Script)[] Scripts =
    [
        ("bash", """
            # Completion of warmup in bash. Load it with: source <(warmup completion bash)
            _warmup() {
                local word=${COMP_WORDS[COMP_CWORD]} line words
                mapfile -t words < <(warmup "[suggest:$COMP_POINT]" "$COMP_LINE" 2> /dev/null)
                COMPREPLY=()
                for line in "${words[@]}"; do
                    [[ ${line,,} == "${word,,}"* ]] && COMPREPLY+=("$(printf '%q' "$line")")
                done
            }
            complete -o default -o nosort -F _warmup warmup
            """),
        ("zsh", """
            #compdef warmup
            # Completion of warmup in zsh. Load it with: source <(warmup completion zsh)
            _warmup() {
                local -a words_found
                words_found=("${(@f)$(warmup "[suggest:$CURSOR]" "$BUFFER" 2> /dev/null)}")
                (( ${#words_found} )) && [[ -n ${words_found[1]} ]] && compadd -M 'm:{a-z}={A-Z}' -a words_found || _files
            }
            compdef _warmup warmup
            """),
        ("fish", """
            # Completion of warmup in fish. Load it with: warmup completion fish | source
            function __warmup_words
                set --local line (commandline --cut-at-cursor)
                warmup "[suggest:"(string length -- "$line")"]" "$line" 2> /dev/null
            end
            complete --command warmup --arguments '(__warmup_words)'
            """),
        ("pwsh", """
            # Completion of warmup in PowerShell. Load it with: warmup completion pwsh | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName warmup -ScriptBlock {
                param($word, $command, $cursor)
                warmup "[suggest:$cursor]" "$command" 2> $null | Where-Object { $_ -like "$word*" } | ForEach-Object {
                    $text = if ($_ -match '\s') { "'$_'" } else { $_ }
                    [System.Management.Automation.CompletionResult]::new($text, $_, 'ParameterValue', $_)
                }
            }
            """),
    ];

    public static Command Create(Terminal terminal)
    {
        var command = new Command("completion", "Prints the script that completes commands, options, scales, talas and exercises in a shell: bash, zsh, fish or pwsh.");
        foreach (var (shell, script) in Scripts)
        {
            var sub = new Command(shell, $"Prints the script for {shell}.");
            sub.SetAction(_ =>
            {
                terminal.Out.WriteLine(script.ReplaceLineEndings("\n"));
                return ExitCode.Fine;
            });
            command.Add(sub);
        }

        return command;
    }

    /// <summary>Tells each option which values there are to choose from.</summary>
    public static void AddValues(RootCommand root)
    {
        foreach (var (command, option) in root.Subcommands.SelectMany(c => c.Options.Select(o => (c.Name, o))))
        {
            if (ValuesOf(command, option.Name) is { } values)
            {
                option.CompletionSources.Add(_ => values().Select(v => new System.CommandLine.Completions.CompletionItem(v)));
            }
        }
    }

    private static Func<IEnumerable<string>>? ValuesOf(string command, string option) => option switch
    {
        "--show" when command == "patterns" => Patterns,
        "--scale" or "--scales" or "--show" => () => Catalogue.Default.Entries.Select(e => e.Scale.Name),
        "--pattern" or "--add" => Patterns,
        "--tala" => () => [.. Meter.Talas.Concat(Meter.Chapus).Select(m => m.Name), "free"],
        "--tuning" => () => Tuning.All.Select(t => t.Name),
        "--syllables" => () => Syllables.All.Select(s => s.Name),
        "--drone" => () => DroneOptions.Styles.Select(d => d.Name),
        "--level" => () => Level.All.Select(l => l.Name),
        "--cue" => () => ["note", "chord", "none"],
        "--delivery" => () => ["continuous", "line-by-line"],
        "--fill" => () => ["none", "anga", "avartana"],
        "--fill-by" => () => ["room", "hold", "rest"],
        "--clef" => () => ["by-pitch", "treble", "treble-8", "bass"],
        "--key" => () => ["traditional", "accidentals", "non-traditional"],
        "--paper" => () => ["a4", "letter", "unspecified"],
        "--beat-part" => () => ["none", "strokes", "gestures"],
        "--midi-tuning" => () => ["pitch-bend", "tuning-standard", "equal-only"],
        "--midi-text" => () => ["ascii", "utf-8"],
        "--click" => () => ["count-in", "throughout", "none"],
        _ => null,
    };

    private static IEnumerable<string> Patterns() => ["ladder", .. Exercises.All.Select(e => e.Name)];
}
