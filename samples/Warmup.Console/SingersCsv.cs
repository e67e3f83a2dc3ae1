using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;

namespace Warmup.Cli;

/// <summary>A class as a table: a header with the member names of the JSON file, then one row for each singer; blanks separate trials.</summary>
internal static class SingersCsv
{
    private static readonly string[] Columns =
        ["alias", "low", "high", "sustainedSeconds", "trials", "trialRule", "experience", "voice", "fullLow", "fullHigh"];

    // What spreadsheet programs take for a formula, in the usual and the wide forms, and the mark that keeps them from it.
    private const string FormulaStarts = "=+-@\t\r＝＋－＠";
    private const char TextMark = '\'';

    /// <summary>Reads a class; the rules and the messages are those of the JSON file.</summary>
    /// <param name="table">The table's text in UTF-8.</param>
    /// <exception cref="WarmupFormatException">The table is broken; the error names the row or the singer.</exception>
    public static ValueList<Singer> Read(byte[] table)
    {
        var buffer = new ArrayBufferWriter<byte>();
        try
        {
            using var reader = new StreamReader(new MemoryStream(table), new UTF8Encoding(false, throwOnInvalidBytes: true));
            ToJson(reader, buffer);
        }
        catch (CsvHelperException broken)
        {
            throw Fail(broken.Context?.Parser?.RawRow ?? 1, "the text is not a table of cells with commas between them; check its quotes");
        }
        catch (DecoderFallbackException)
        {
            throw Fail(1, "the table is not in UTF-8; save it as CSV UTF-8");
        }

        try
        {
            return SingersFile.Read(buffer.WrittenSpan);
        }
        catch (WarmupFormatException refused)
        {
            // The place is one of the JSON in between; the message names the singer.
            throw Fail(1, refused.Error.Message);
        }
    }

    /// <summary>Writes a class; cells that a spreadsheet program would run as a formula begin with an apostrophe.</summary>
    public static void Write(ValueList<Singer> singers, Stream destination)
    {
        using var text = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true);
        using var writer = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        foreach (var column in Columns)
        {
            writer.WriteField(column);
        }

        writer.NextRecord();
        foreach (var singer in singers)
        {
            foreach (var cell in Cells(singer))
            {
                writer.WriteField(Escaped(cell));
            }

            writer.NextRecord();
        }
    }

    /// <summary>A cell that no spreadsheet program runs; <see cref="Unescaped"/> gives it back.</summary>
    public static string Escaped(string cell) =>
        cell.Length > 0 && (FormulaStarts.Contains(cell[0], StringComparison.Ordinal) || cell[0] == TextMark) ? TextMark + cell : cell;

    private static string Unescaped(string cell) =>
        cell.Length > 1 && cell[0] == TextMark && (FormulaStarts.Contains(cell[1], StringComparison.Ordinal) || cell[1] == TextMark) ? cell[1..] : cell;

    private static string[] Cells(Singer singer) =>
    [
        singer.Alias,
        singer.IsRangeAssumed ? string.Empty : singer.Low.ToString(),
        singer.IsRangeAssumed ? string.Empty : singer.High.ToString(),
        singer.Trials.IsEmpty ? Seconds(singer.SustainedSeconds) : string.Empty,
        string.Join(' ', singer.Trials.ConvertAll(Seconds)),
        singer.Trials.IsEmpty ? string.Empty : singer.TrialRule == TrialRule.Best ? "best" : "median",
        singer.Experience.ToWord(),
        singer.Voice ?? string.Empty,
        singer.FullLow?.ToString() ?? string.Empty,
        singer.FullHigh?.ToString() ?? string.Empty,
    ];

    private static string Seconds(Rational seconds) => Math.Round((decimal)seconds.Numerator / seconds.Denominator, 3).ToString("0.###", CultureInfo.InvariantCulture);

    private static void ToJson(TextReader reader, ArrayBufferWriter<byte> buffer)
    {
        using var csv = new CsvReader(reader, new CsvConfiguration(CultureInfo.InvariantCulture) { TrimOptions = TrimOptions.Trim, IgnoreBlankLines = true });
        if (!csv.Read() || !csv.ReadHeader())
        {
            throw Fail(1, $"the table is empty; its columns are {string.Join(", ", Columns)}");
        }

        var columns = csv.HeaderRecord!.Select(Column).ToArray();
        if (columns.Distinct().Count() != columns.Length)
        {
            throw Fail(1, "a column stands twice in the header; leave one out");
        }

        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        json.WriteString("schema", SingersFile.Schema);
        json.WriteStartArray("singers");
        while (csv.Read())
        {
            if (csv.Parser.Count != columns.Length)
            {
                throw Fail(csv.Parser.RawRow, $"there are {csv.Parser.Count} cells and {columns.Length} columns");
            }

            if (buffer.WrittenCount + json.BytesPending > SingersFile.LargestFile)
            {
                throw Fail(1, $"the class is larger than {SingersFile.LargestFile} bytes");
            }

            json.WriteStartObject();
            for (var c = 0; c < columns.Length; c++)
            {
                Write(json, columns[c], Unescaped(csv.GetField(c)!.Trim()), csv.Parser.RawRow);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static string Column(string header) => Columns.FirstOrDefault(c => c.Equals(header.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? throw Fail(1, $"unknown column {TextError.Quote(header)}; the columns are {string.Join(", ", Columns)}, separated by commas");

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
            : throw Fail(line, $"{column} must be a number of seconds such as 14.5, not {TextError.Quote(cell)}");

    private static WarmupFormatException Fail(int line, string message) => new(new TextError(line, 1, message));
}
