using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Spectre.Console;
using Warmup.Takes;
using Progress = Warmup.Samples.Progress;

namespace Warmup.Cli;

/// <summary>The console program <c>warmup</c>: it reads options, calls the libraries and prints. It holds no music knowledge.</summary>
internal static class Program
{
    public static int Main(string[] args) => Run(args, Console.Out, Console.Error);

    /// <summary>Runs one command.</summary>
    /// <returns>0 if all is well, 1 if a drill does not fit a singer or no rule was found, 2 on wrong usage or input, or when it was stopped.</returns>
    public static int Run(string[] args, TextWriter output, TextWriter error)
    {
        using var signals = new Signals();
        try
        {
            return Run(args, new Terminal(output, error), signals.Token);
        }
        catch (OperationCanceledException stopped)
        {
            error.WriteLine($"warmup: {(stopped is StoppedException ? stopped.Message : "stopped; no half-written file is left")}");
            return ExitCode.WrongInput;
        }
    }

    /// <summary>All commands, with their help and the values that a shell can complete.</summary>
    public static RootCommand Commands(Terminal terminal, CancellationToken cancellation)
    {
        // A new command is one new file and one line here.
        var root = new RootCommand("Makes vocal warm-up drills from rules, checks them against voices, and writes them as notation, MIDI, sheets and sound.")
        {
            DrillCommand.Create(terminal, cancellation),
            CheckCommand.Create(terminal, cancellation),
            GnanaCommand.Create(terminal, cancellation),
            FitCommand.Create(terminal, cancellation),
            PlanCommand.Create(terminal, cancellation),
            ListenCommand.Create(terminal, cancellation),
            MeasureCommand.Create(terminal, cancellation),
            ReadCommand.Create(terminal, cancellation),
            SingersCommand.Create(terminal),
            ScalesCommand.Create(terminal),
            PatternsCommand.Create(terminal, cancellation),
            DemoCommand.Create(terminal, cancellation),
            CompletionCommand.Create(terminal),
        };
        root.Add(ManualCommand.Create(terminal, root));
        HelpPages.AddTo(root, terminal);
        CompletionCommand.AddValues(root);
        return root;
    }

    private static int Run(string[] args, Terminal terminal, CancellationToken cancellation)
    {
        var root = Commands(terminal, cancellation);
        if (args.Length == 0)
        {
            new HelpPages(terminal).Write(root);
            return ExitCode.Fine;
        }

        // "@file" stays plain text: a title or a scale may begin with it.
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0)
        {
            terminal.Error(WrongCommandLine.Describe(parsed));
            return ExitCode.WrongInput;
        }

        terminal.HasWholeCautions = CautionOption.IsWhole(parsed);
        try
        {
            return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = terminal.Out, Error = terminal.ErrorOut });
        }
        catch (Exception refused) when (refused is InputException or WarmupFormatException or PatternException or ExportException or SoundException
            or IOException or UnauthorizedAccessException or ArgumentException)
        {
            terminal.Error(Refusal.Words(refused));
            return ExitCode.WrongInput;
        }
    }
}

/// <summary>What the program tells the shell.</summary>
internal static class ExitCode
{
    public const int Fine = 0;
    public const int DoesNotFit = 1;
    public const int NotFound = 1;
    public const int WrongInput = 2;
}

/// <summary>Wrong input, with the fix in the message.</summary>
internal sealed class InputException(string message) : Exception(message);

/// <summary>Where the program prints: tables and text to the output, one-line errors to the error stream.</summary>
internal sealed class Terminal
{
    private const int PlainWidth = 120;

    public Terminal(TextWriter output, TextWriter error)
    {
        Out = output;
        ErrorOut = error;
        Rich = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(output) });
        if (!ReferenceEquals(output, Console.Out) || Console.IsOutputRedirected)
        {
            Rich.Profile.Width = PlainWidth;
        }
    }

    public TextWriter Out { get; }

    public TextWriter ErrorOut { get; }

    public IAnsiConsole Rich { get; }

    /// <summary>Whether the command line asks for the cautions whole.</summary>
    public bool HasWholeCautions { get; set; }

    /// <summary>Reports on the error stream, where that is a terminal, how far long work has come, until it is disposed.</summary>
    public Progress Working(string what) => new(what, ReferenceEquals(ErrorOut, Console.Error) ? Progress.Terminal : null, TimeProvider.System);

    /// <summary>Prints a report as JSON, with the same line ends on every system.</summary>
    public void Json<T>(T report, JsonTypeInfo<T> type) => Out.WriteLine(JsonSerializer.Serialize(report, type).ReplaceLineEndings("\n"));

    public void Error(string message) => ErrorOut.WriteLine("warmup: " + OneLine(message));

    /// <summary>Text from data, safe for the table library's markup and for a terminal.</summary>
    public static string Plain(string text) => Markup.Escape(OneLine(text));

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
}
