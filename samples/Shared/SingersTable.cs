using System.Buffers;
using System.Globalization;
using System.Text.Json;

namespace Warmup.Samples;

/// <summary>Puts the rows of a class's table together: a row without a date begins a singer, one with a date is a measurement of a singer.</summary>
internal sealed class SingersTable(string[] columns)
{
    private const string Alias = "alias";
    private const string Date = "date";

    // What belongs to the singer, not to a measurement.
    private static readonly string[] OfSinger = [Alias, "experience", "voice"];

    private readonly List<Row> _singers = [];
    private readonly Dictionary<string, Row> _known = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Adds a row of as many cells as there are columns.</summary>
    /// <exception cref="WarmupFormatException">It gives its singer another experience or voice than an earlier row.</exception>
    public void Add(int line, string[] cells)
    {
        var row = new Row(line, columns.Zip(cells).ToDictionary(c => c.First, c => c.Second), []);
        if (row.Of(Date).Length == 0)
        {
            Begin(row);
            return;
        }

        if (!_known.TryGetValue(row.Of(Alias), out var singer))
        {
            singer = Begin(new Row(line, OfSinger.ToDictionary(c => c, row.Of), []));
        }

        singer.Measurements.Add(row);
        foreach (var column in OfSinger.Skip(1).Where(c => row.Of(c).Length > 0))
        {
            if (singer.Of(column) is { Length: > 0 } before && before != row.Of(column))
            {
                throw SingersCsv.Fail(line, $"the {column} is {TextError.Quote(row.Of(column))} here and {TextError.Quote(before)} in line {singer.Line}; give each singer one, the present one");
            }

            singer.Cells[column] = row.Of(column);
        }
    }

    public void WriteJson(ArrayBufferWriter<byte> buffer)
    {
        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        json.WriteString("schema", SingersFile.Schema);
        json.WriteStartArray("singers");
        foreach (var singer in _singers)
        {
            if (buffer.WrittenCount + json.BytesPending > SingersFile.LargestFile)
            {
                throw SingersCsv.Fail(1, $"the class is larger than {SingersFile.LargestFile} bytes");
            }

            json.WriteStartObject();
            Write(json, singer, singer.Cells.Keys.Where(c => c != Date));
            if (singer.Measurements.Count > 0)
            {
                json.WriteStartArray("measurements");
                foreach (var measurement in singer.Measurements)
                {
                    json.WriteStartObject();
                    Write(json, measurement, measurement.Cells.Keys.Except(OfSinger));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private Row Begin(Row singer)
    {
        _singers.Add(singer);
        _known.TryAdd(singer.Of(Alias), singer);
        return singer;
    }

    private static void Write(Utf8JsonWriter json, Row row, IEnumerable<string> members)
    {
        foreach (var member in members)
        {
            Write(json, member, row.Of(member), row.Line);
        }
    }

    private static void Write(Utf8JsonWriter json, string column, string cell, int line)
    {
        if (cell.Length == 0 && column != "alias")
        {
            return;
        }

        switch (column)
        {
            case "sustainedSeconds":
                json.WriteNumber(column, Number(cell, column, line));
                break;
            case "trials":
                json.WriteStartArray(column);
                foreach (var trial in cell.Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries))
                {
                    json.WriteNumberValue(Number(trial, column, line));
                }

                json.WriteEndArray();
                break;
            default:
                json.WriteString(column, cell);
                break;
        }
    }

    private static decimal Number(string cell, string column, int line) =>
        decimal.TryParse(cell, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw SingersCsv.Fail(line, $"{column} must be a number of seconds such as 14.5, not {TextError.Quote(cell)}");

    /// <summary>A row of the table; one that begins a singer has the singer's dated rows.</summary>
    private sealed record Row(int Line, Dictionary<string, string> Cells, List<Row> Measurements)
    {
        public string Of(string column) => Cells.GetValueOrDefault(column, string.Empty);
    }
}
