using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace Warmup.Samples;

/// <summary>Writes the table of patterns as CSV: UTF-8, commas, a header, line feeds; an empty cell is missing.</summary>
internal static class CsvTable
{
    /// <summary>Writes the rows as they come; no more than one is held.</summary>
    public static void Write(IEnumerable<TableRow> rows, Stream destination)
    {
        using var text = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true);
        using var writer = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        foreach (var column in TableColumns.All)
        {
            writer.WriteField(column.Name);
        }

        writer.NextRecord();
        foreach (var row in rows)
        {
            foreach (var column in TableColumns.All)
            {
                writer.WriteField(Cell(column, row));
            }

            writer.NextRecord();
        }
    }

    private static string? Cell(TableColumn column, TableRow row) => column switch
    {
        TextColumn text => text.Of(row) is { } cell ? SingersCsv.Escaped(cell) : null,
        WholeColumn whole => whole.Of(row)?.ToString(CultureInfo.InvariantCulture),
        LongColumn whole => whole.Of(row)?.ToString(CultureInfo.InvariantCulture),
        NumberColumn number => number.Of(row)?.ToString("R", CultureInfo.InvariantCulture),
        TruthColumn truth => truth.Of(row) switch { true => "true", false => "false", null => null },
        _ => throw new InvalidOperationException($"the column {column.Name} has no known type"),
    };
}
