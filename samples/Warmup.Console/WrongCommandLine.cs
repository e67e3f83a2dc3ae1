using System.CommandLine;
using System.CommandLine.Parsing;

namespace Warmup.Cli;

/// <summary>Says in one line what is wrong with a command line, and what was probably meant.</summary>
internal static class WrongCommandLine
{
    public static string Describe(ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        var path = string.Empty;
        for (var named = parsed.CommandResult; named is { Command: not RootCommand }; named = (CommandResult)named.Parent!)
        {
            path = named.Command.Name + " " + path;
        }

        return Message(parsed, command) + $"; 'warmup {path}--help' lists {(command is RootCommand ? "the commands" : "the options")}";
    }

    private static string Message(ParseResult parsed, Command command)
    {
        if (parsed.UnmatchedTokens is [var stray, ..])
        {
            return Stray(stray, command);
        }

        foreach (var result in parsed.Errors.Select(e => OptionOf(e.SymbolResult)).OfType<OptionResult>())
        {
            if (result.Tokens.Count == 0 && result.IdentifierTokenCount > 0)
            {
                return $"{result.Option.Name} needs a value after it";
            }

            if (result.IdentifierTokenCount > 1 && result.Tokens.Count > 1)
            {
                return $"{result.Option.Name} stands there {result.IdentifierTokenCount} times; give it once";
            }
        }

        var missing = command.Options.Where(o => o.Required && parsed.GetResult(o) is not { Implicit: false }).Select(o => o.Name).ToList();
        return missing.Count > 0
            ? $"{(missing.Count == 1 ? "an option is" : "these options are")} missing: {string.Join(", ", missing)}"
            : parsed.Errors[0].Message.TrimEnd('.');
    }

    private static string Stray(string stray, Command command)
    {
        var typed = TextError.Quote(stray);
        if (stray.StartsWith('-'))
        {
            var options = command.Options.Where(o => !o.Hidden).Select(o => o.Name);
            return $"there is no option {typed}{Meant(stray, options)}";
        }

        if (command is RootCommand)
        {
            // A person who asks for help, or for the version, is shown how it is written.
            var option = command.Options.Select(o => o.Name).FirstOrDefault(n => n.TrimStart('-').Equals(stray, StringComparison.OrdinalIgnoreCase));
            return $"there is no command {typed}{Meant(stray, command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name), option)}";
        }

        return $"{typed} stands alone; write each value after its option, and put quotes around one that has spaces";
    }

    private static string Meant(string typed, IEnumerable<string> words, string? surely = null) =>
        (surely ?? NearestWord.Of(typed, words)) is { } word ? $"; did you mean {word}?" : string.Empty;

    private static OptionResult? OptionOf(SymbolResult? result) => result as OptionResult ?? result?.Parent as OptionResult;
}
