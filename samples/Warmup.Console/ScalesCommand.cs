using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary><c>warmup scales</c>: lists and searches the catalogue, shows one scale, writes tunings.</summary>
internal static class ScalesCommand
{
    private const string Schema = "urn:warmup:scales:1";

    public static Command Create(Terminal terminal)
    {
        var filters = new ScaleFilters();
        var show = new Option<string?>("--show") { Description = "One scale with its notes: a name, a parent's number, or the notes." };
        var tonic = new Option<string>("--tonic") { Description = "With --show, the tonic: a note (G3), a kattai (5.5) or a frequency (220Hz).", DefaultValueFactory = _ => "C4" };
        var tuning = TuningOption.Create();
        var file = new Option<string?>("--out") { Description = "Write the tuning to this .scl file." };
        var force = new Option<bool>("--force") { Description = "Replace a file that exists." };
        var json = new Option<bool>("--json") { Description = "Print as JSON." };
        var command = new Command("scales", "Lists and searches the scales that have a name, shows one, and writes tunings.") { show, tonic, tuning, file, force, json };
        filters.AddTo(command);
        command.SetAction(parsed =>
        {
            var query = filters.Read(parsed);
            var tuned = TuningOption.Read(parsed.GetValue(tuning)!);
            var pitch = Tonic.TryParse(parsed.GetValue(tonic)!, out var read, out var error) ? read! : throw new InputException($"--tonic, {error}");
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
                List(terminal, Catalogue.Default.Search(query), parsed.GetValue(json));
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static void Show(Terminal terminal, string name, Tonic tonic, Tuning tuning, bool json)
    {
        if (!Catalogue.Default.TryRead(name, out var scale, out var error))
        {
            throw new InputException($"--show, {error}");
        }

        var entry = ((IEnumerable<CatalogueEntry>)Catalogue.Default.Entries).FirstOrDefault(e => e.Scale == scale);
        var tuned = TunedScale.Of(scale!, tonic, tuning);
        if (json)
        {
            terminal.Out.WriteLine(JsonSerializer.Serialize(ScaleSheet.ToDetail(tuned, entry), ConsoleJson.Default.ScaleDetail).ReplaceLineEndings("\n"));
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
            var report = new ScaleReport(Schema, ((IEnumerable<CatalogueEntry>)rows).Select(ToRow).ToList());
            terminal.Out.WriteLine(JsonSerializer.Serialize(report, ConsoleJson.Default.ScaleReport).ReplaceLineEndings("\n"));
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
            terminal.Out.WriteLine("no scale is so; any scale can be written out: --scale \"S R2 G3 P D2 S'\"");
            return;
        }

        var table = new Table().Border(TableBorder.Ascii2).AddColumns("name", "family", "parent", "notes", "ascent", "descent", "source");
        foreach (var row in rows)
        {
            table.AddRow(
                Terminal.Plain(row.Scale.Name),
                row.Family.ToString().ToLowerInvariant(),
                row.Parent?.ToString(CultureInfo.InvariantCulture) ?? string.Empty,
                NoteCounts(row),
                Terminal.Plain(string.Join(' ', row.Scale.Ascent)),
                row.Scale.IsSymmetric ? "the same" : Terminal.Plain(string.Join(' ', row.Scale.Descent)),
                Terminal.Plain(row.Source));
        }

        terminal.Rich.Write(table);
    }

    /// <summary>The number of different notes up and down; one number where they agree.</summary>
    private static string NoteCounts(CatalogueEntry entry) => entry.NotesUp == entry.NotesDown
        ? entry.NotesUp.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{entry.NotesUp}-{entry.NotesDown}");

    private static ScaleRow ToRow(CatalogueEntry entry) => new(
        entry.Scale.Name,
        entry.Family.ToString().ToLowerInvariant(),
        entry.Parent,
        NoteCounts(entry),
        string.Join(' ', entry.Scale.Ascent),
        string.Join(' ', entry.Scale.Descent),
        entry.Scale.IsVakra,
        [.. entry.Spellings],
        entry.Source);
}
