using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Spectre.Console;

namespace Warmup.Cli;

/// <summary><c>warmup scales</c>: lists the catalogue.</summary>
internal static class ScalesCommand
{
    private const string Schema = "urn:warmup:scales:1";

    public static Command Create(Terminal terminal)
    {
        var find = new Option<string?>("--find") { Description = "Only scales whose name holds this text." };
        var json = new Option<bool>("--json") { Description = "Print the rows as JSON." };
        var command = new Command("scales", "Lists the scales that have a name.") { find, json };
        command.SetAction(parsed =>
        {
            var rows = Catalogue.Default.Search(parsed.GetValue(find) ?? string.Empty);
            if (parsed.GetValue(json))
            {
                var report = new ScaleReport(Schema, ((IEnumerable<CatalogueEntry>)rows).Select(ToRow).ToList());
                terminal.Out.WriteLine(JsonSerializer.Serialize(report, ConsoleJson.Default.ScaleReport).ReplaceLineEndings("\n"));
            }
            else
            {
                Print(terminal, rows);
            }

            return ExitCode.Fine;
        });
        return command;
    }

    private static void Print(Terminal terminal, ValueList<CatalogueEntry> rows)
    {
        if (rows.IsEmpty)
        {
            terminal.Out.WriteLine("no scale has such a name; any scale can be written out: --scale \"S R2 G3 P D2 S'\"");
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
