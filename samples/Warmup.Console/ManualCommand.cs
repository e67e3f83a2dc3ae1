using System.CommandLine;
using System.Globalization;
using System.Text;

namespace Warmup.Cli;

/// <summary><c>warmup manual</c>: prints the page for the manual, made from the same options as the help.</summary>
internal static class ManualCommand
{
    public static Command Create(Terminal terminal, RootCommand root)
    {
        var command = new Command("manual", "Prints the page for the system's manual (man), made from the same options as the help.");
        command.SetAction(_ =>
        {
            terminal.Out.Write(Page(root));
            return ExitCode.Fine;
        });
        return command;
    }

    private static string Page(RootCommand root)
    {
        var page = new StringBuilder();
        void Line(string line) => page.Append(CultureInfo.InvariantCulture, $"{line}\n");
        Line(".TH WARMUP 1 \"\" \"Warmup\" \"User Commands\"");
        Line(".SH NAME");
        Line($"warmup \\- {Escaped(root.Description!)}");
        Line(".SH SYNOPSIS");
        Line(".B warmup");
        Line(".I command");
        Line("[options]");
        foreach (var command in root.Subcommands.Where(c => !c.Hidden))
        {
            Line($".SH {Escaped(command.Name.ToUpperInvariant())}");
            Line(Escaped(command.Description!));
            foreach (var (title, options) in OptionGroups.Of(command))
            {
                Line($".SS {title}");
                foreach (var option in options)
                {
                    Line(".TP");
                    Line($".B {Escaped(OptionGroups.Label(option))}");
                    Line(Escaped(OptionGroups.Describe(option)));
                }
            }

            Line(".SS Examples");
            Line(".nf");
            foreach (var example in CommandExamples.Of(command.Name))
            {
                Line(Escaped(example));
            }

            Line(".fi");
        }

        Line(".SH EXIT STATUS");
        Line("0: fine. 1: a drill does not fit a singer, or no rule was found. 2: wrong usage or input, or the program was stopped.");
        Line(".SH CAUTION");
        Line(Escaped(CommandExamples.Careful));
        return page.ToString();
    }

    /// <summary>Text that the formatter takes as it stands: no control line, no escape, no hyphen that it may turn into another sign.</summary>
    private static string Escaped(string text)
    {
        var safe = text.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal).Replace("'", "\\(aq", StringComparison.Ordinal);
        return safe.StartsWith('.') ? "\\&" + safe : safe;
    }
}
