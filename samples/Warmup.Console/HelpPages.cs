using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Warmup.Cli;

/// <summary>What <c>--help</c> prints: what a command does, its options in groups, and examples to copy.</summary>
internal sealed class HelpPages(Terminal terminal) : SynchronousCommandLineAction
{
    private const int NarrowColumn = 30;

    /// <summary>Gives all commands these pages.</summary>
    public static void AddTo(RootCommand root, Terminal terminal)
    {
        foreach (var help in root.Options.OfType<HelpOption>())
        {
            help.Action = new HelpPages(terminal);
        }
    }

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        Write(parseResult.CommandResult.Command);
        return ExitCode.Fine;
    }

    /// <summary>Prints the page of one command.</summary>
    public void Write(Command command)
    {
        var isRoot = command is RootCommand;
        Paragraph(string.Empty, command.Description ?? string.Empty);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Usage: warmup {(isRoot ? "COMMAND" : command.Name)} [options]");
        if (isRoot)
        {
            Heading("Commands");
            foreach (var sub in command.Subcommands.Where(c => !c.Hidden))
            {
                Row(sub.Name, sub.Description ?? string.Empty);
            }
        }

        foreach (var group in OptionGroups.Of(command))
        {
            Heading(group.Title);
            foreach (var option in group.Options)
            {
                Row(OptionGroups.Label(option), OptionGroups.Describe(option));
            }
        }

        Heading("Examples");
        foreach (var example in CommandExamples.Of(command.Name))
        {
            terminal.Out.WriteLine("  " + example);
        }

        terminal.Out.WriteLine();
        terminal.Out.WriteLine(isRoot ? "'warmup COMMAND --help' lists a command's options. Exit codes: 0 fine, 1 a drill does not fit a singer, 2 wrong input or stopped." : CommandExamples.Careful);
    }

    private void Heading(string title)
    {
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(title + ":");
    }

    private void Row(string label, string text)
    {
        var first = "  " + label;
        Paragraph(first.Length < NarrowColumn ? first.PadRight(NarrowColumn) : first + "\n" + new string(' ', NarrowColumn), text);
    }

    /// <summary>Prints a text behind a label, its further lines indented to the label's column.</summary>
    private void Paragraph(string label, string text)
    {
        var indent = label.Length == 0 ? 0 : NarrowColumn;
        var width = Math.Max(NarrowColumn * 2, Math.Min(terminal.Rich.Profile.Width, 120)) - indent;
        terminal.Out.Write(label.ReplaceLineEndings());
        var column = 0;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (column > 0 && column + 1 + word.Length > width)
            {
                terminal.Out.WriteLine();
                terminal.Out.Write(new string(' ', indent));
                column = 0;
            }

            terminal.Out.Write(column > 0 ? " " + word : word);
            column += word.Length + (column > 0 ? 1 : 0);
        }

        terminal.Out.WriteLine();
    }
}
