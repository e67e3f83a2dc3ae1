using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using Warmup.Samples;

namespace Warmup.Cli;

/// <summary><c>warmup singers</c>: shows a class and what was measured over time, turns its file into another format, and lists the voice types.</summary>
internal static class SingersCommand
{
    public static Command Create(Terminal terminal)
    {
        var singers = new SingerOptions(required: false);
        var file = new Option<string?>("--out") { Description = "Write the class to a file: .json or .csv. With --history, draw the measurements as lines over the days: .svg or .pdf." };
        var force = new Option<bool>("--force") { Description = "Replace a file that exists." };
        var voices = new Option<bool>("--voices") { Description = "List the voice types, and how sure each range is." };
        var history = new Option<bool>("--history") { Description = "Show the older measurements as well, a line for each." };
        var on = new Option<string?>("--on") { Description = "The day, such as 2026-12-01, on which to say whose voice is to be measured anew." };
        var form = new Option<string?>("--form") { Description = "Write a form for measuring, with the steps and a row for each singer (blank rows without a class): .pdf, .svg, .png or .txt." };
        var json = new Option<bool>("--json") { Description = "Print the class and the voice types as JSON; with --history, the measurements." };
        var command = new Command("singers", "Shows a class, its limits and its measurements over time, writes it as JSON or CSV, or lists the voice types.");
        var measured = new MeasuredOptions();
        singers.AddTo(command);
        measured.AddTo(command);
        foreach (var option in (Option[])[file, force, voices, history, on, json, form, CautionOption.Create()])
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var everyone = measured.Added(parsed, singers.ReadClass(parsed), parsed.GetValue(singers.Alias));
            var people = singers.Chosen(parsed, everyone);
            if (people.IsEmpty && !parsed.GetValue(voices) && parsed.GetValue(form) is null)
            {
                throw new InputException("name a class with --singers FILE, or add --voices or --form FILE");
            }

            var day = PlanOptions.ReadDate(parsed, on);
            if (people.IsEmpty && (day is not null || parsed.GetValue(history)))
            {
                throw new InputException("--history and --on need the class; add --singers FILE");
            }

            var path = parsed.GetValue(file);
            if (path is not null && HistoryDrawn.IsChart(path) && (!parsed.GetValue(history) || measured.IsGiven(parsed)))
            {
                throw new InputException(measured.IsGiven(parsed)
                    ? $"a new measurement goes into the class's file, and '{path}' is a chart; name a .json or .csv, then draw that"
                    : $"'{path}' is a chart of the measurements over time; add --history");
            }

            if (parsed.GetValue(form) is { } sheet)
            {
                MeasuringForm.Write(people, sheet, parsed.GetValue(force));
                Say(terminal, parsed.GetValue(json), sheet);
            }

            if (path is not null && HistoryDrawn.IsChart(path))
            {
                HistoryDrawn.Write(terminal, people, path, parsed.GetValue(force), quiet: parsed.GetValue(json));
            }
            else if (path is not null)
            {
                Write(measured.IsGiven(parsed) ? everyone : people, path, parsed.GetValue(force));
                Say(terminal, parsed.GetValue(json), path);
            }

            if (parsed.GetValue(json))
            {
                PrintJson(terminal, parsed.GetValue(history) ? SingersHistory.ToReport(people, day) : null, () => SingersJson.Of(people, day, parsed.GetValue(voices), [.. new[] { parsed.GetValue(form), path }.OfType<string>()]));
                return ExitCode.Fine;
            }

            if (parsed.GetValue(history))
            {
                SingersHistory.Print(terminal, people, day);
            }
            else
            {
                Print(terminal, people, day);
            }

            if (parsed.GetValue(voices))
            {
                PrintVoices(terminal);
            }

            Report.PrintCautions(terminal, Cautions.All);
            return ExitCode.Fine;
        });
        return command;
    }

    internal static void Write(ValueList<Singer> singers, string path, bool force)
    {
        if (singers.IsEmpty)
        {
            throw new InputException("--out needs the class to write; add --singers FILE");
        }

        Action<Stream> write = Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".CSV" => stream => SingersCsv.Write(singers, stream),
            ".JSON" => stream => SingersFile.Write(singers, stream),
            _ => throw new InputException($"'{path}' must end in .json or .csv, or in .svg or .pdf with --history"),
        };
        Formats.RefuseUnwritable(path, force);
        AtomicFile.Write(path, write, force);
    }

    /// <summary>Names a file that was written, unless a report as JSON is all that may be printed.</summary>
    private static void Say(Terminal terminal, bool json, string path)
    {
        if (!json)
        {
            terminal.Out.WriteLine($"wrote {path}");
        }
    }

    private static void PrintJson(Terminal terminal, HistoryReport? measurements, Func<SingersJson> ofClass)
    {
        if (measurements is not null)
        {
            terminal.Json(measurements, ConsoleJson.Default.HistoryReport);
        }
        else
        {
            terminal.Json(ofClass(), ConsoleJson.Default.SingersJson);
        }
    }

    private static void Print(Terminal terminal, ValueList<Singer> singers, DateOnly? on)
    {
        if (singers.IsEmpty)
        {
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2)
            .AddColumns("singer", "comfortable", "full", "voice", "experience", "tone (s)", "longest phrase (s)", "shortest breath (s)");
        foreach (var singer in singers)
        {
            table.AddRow(
                Terminal.Plain(singer.Alias),
                Terminal.Plain($"{singer.Low} to {singer.High}{(singer.IsRangeAssumed ? " (assumed)" : string.Empty)}"),
                singer.FullLow is null && singer.FullHigh is null ? string.Empty : Terminal.Plain($"{singer.FullLow?.ToString() ?? "?"} to {singer.FullHigh?.ToString() ?? "?"}"),
                Terminal.Plain(singer.Voice ?? string.Empty),
                singer.Experience.ToWord(),
                Number(singer.SustainedSeconds),
                Number(singer.BreathSeconds),
                Number(singer.ShortestBreathSeconds));
        }

        terminal.Rich.Write(table);
        terminal.Out.WriteLine("The longest phrase is a share of the sustained tone that grows with experience: the project's own setting, since no published norm was found.");
        if (singers.Any(s => s.IsRangeAssumed))
        {
            terminal.Out.WriteLine("Assumed ranges come from the voice type; measure the singer's own.");
        }

        if (on is { } day)
        {
            SingersHistory.PrintDue(terminal, singers, day);
        }
    }

    private static void PrintVoices(Terminal terminal)
    {
        var table = new Table().Border(TableBorder.Ascii2).AddColumns("voice type", "range", "kind", "how sure", "source", "caution");
        foreach (var type in VoiceTypes.All)
        {
            table.AddRow(
                Terminal.Plain(type.Name), $"{type.Low} to {type.High}", Kind(type.Kind), Terminal.Plain(type.HowSure), Terminal.Plain(type.Source), Terminal.Plain(type.Caution));
        }

        terminal.Rich.Write(table);
        terminal.Out.WriteLine("These are starting points until you have heard the singer. Only comfortable ranges and own settings can stand in for a range that is not measured.");
    }

    public static string Kind(VoiceRangeKind kind) => kind == VoiceRangeKind.ProjectSetting ? "comfortable, own setting" : kind.ToString().ToLowerInvariant();

    private static string Number(Rational seconds) => seconds.ToDouble().ToString("0.##", CultureInfo.InvariantCulture);
}
