using System.CommandLine;
using System.Globalization;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary><c>warmup scales</c>: lists and searches the catalogue, shows one scale, writes tunings.</summary>
internal static class ScalesCommand
{
    private const string Schema = "urn:warmup:scales:1";

    public static Command Create(Terminal terminal)
    {
        var filters = new ScaleFilters();
        var show = new Option<string?>("--show") { Description = "Show one scale with its notes: a name, the number of a parent, or the notes." };
        var tonic = new Option<string>(TonicOption.Name) { Description = $"With --show, the tonic: {TonicOption.Forms}.", DefaultValueFactory = _ => "C4" };
        var tuning = TuningOption.Create();
        var file = new Option<string?>("--out") { Description = "Write the tuning to this .scl file." };
        var force = new Option<bool>("--force") { Description = "Replace a file that exists." };
        var json = new Option<bool>("--json") { Description = "Print as JSON." };
        var command = new Command("scales", "Lists and searches the catalogue of scales, shows one scale, or writes a tuning.") { show, tonic, tuning, file, force, json };
        filters.AddTo(command);
        command.SetAction(parsed =>
        {
            var rows = filters.Find(parsed);
            var tuned = TuningOption.Read(parsed.GetValue(tuning)!);
            var pitch = TonicOption.Read(parsed.GetValue(tonic)!);
            if (parsed.GetValue(show) is { } name)
            {
                Show(terminal, name, pitch, tuned, parsed.GetValue(json));
            }

            if (parsed.GetValue(file) is { } path)
            {
                WriteTuning(path, tuned, parsed.GetValue(force));
                if (!parsed.GetValue(json))
                {
                    terminal.Out.WriteLine($"wrote {path} (Scala scale file)");
                }
            }
            else if (parsed.GetValue(show) is null)
            {
                List(terminal, rows, parsed.GetValue(json));
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static void Show(Terminal terminal, string name, Tonic tonic, Tuning tuning, bool json)
    {
        var scale = OptionValue.Parsed<Scale>("--show", name, Catalogue.Default.TryRead);
        var entry = Catalogue.Default.Entries.FirstOrDefault(e => e.Scale == scale);
        var tuned = TunedScale.Of(scale, tonic, tuning);
        if (json)
        {
            terminal.Json(ScaleSheet.ToDetail(tuned, entry), ConsoleJson.Default.ScaleDetail);
        }
        else
        {
            ScaleSheet.Print(terminal, tuned, entry);
        }
    }

    private static void WriteTuning(string path, Tuning tuning, bool force)
    {
        if (!TuningOption.IsScalaFile(path))
        {
            throw new InputException($"--out must name a .scl file, not '{path}'");
        }

        Formats.RefuseUnwritable(path, force);
        AtomicFile.Write(path, ScalaFile.FromTuning(tuning).Write, force);
    }

    private static void List(Terminal terminal, ValueList<CatalogueEntry> rows, bool json)
    {
        if (json)
        {
            terminal.Json(new ScaleReport(Schema, rows.Select(ToRow).ToList()), ConsoleJson.Default.ScaleReport);
        }
        else
        {
            Print(terminal, rows);
        }
    }

    private static void Print(Terminal terminal, ValueList<CatalogueEntry> rows)
    {
        if (rows.IsEmpty)
        {
            terminal.Out.WriteLine("no scale in the catalogue matches; you can write out any scale: --scale \"S R2 G3 P D2 S'\"");
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("name", "family", "parent", "notes", "ascent", "descent", "source");
        foreach (var row in rows)
        {
            table.AddRow(
                Terminal.Plain(row.Scale.Name),
                row.Family.ToString().ToLowerInvariant(),
                row.Parent?.ToString(CultureInfo.InvariantCulture) ?? string.Empty,
                row.NoteCounts,
                Terminal.Plain(string.Join(' ', row.Scale.Ascent)),
                row.Scale.IsSymmetric ? "the same" : Terminal.Plain(string.Join(' ', row.Scale.Descent)),
                Terminal.Plain(row.Source));
        }

        terminal.Rich.Write(table);
    }

    private static ScaleRow ToRow(CatalogueEntry entry) => new(
        entry.Scale.Name,
        entry.Family.ToString().ToLowerInvariant(),
        entry.Parent,
        entry.NoteCounts,
        string.Join(' ', entry.Scale.Ascent),
        string.Join(' ', entry.Scale.Descent),
        entry.Scale.IsVakra,
        [.. entry.Spellings],
        entry.Source);
}
