using System.Buffers;
using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;

namespace Warmup.Samples;

/// <summary>
/// A class as a table: a header with the member names of the JSON file, then one row for each measurement; blanks separate trials. Rows with a date
/// are measurements of the singer with that alias.
/// </summary>
internal static class SingersCsv
{
    private static readonly string[] Columns =
        ["alias", "date", "low", "high", "sustainedSeconds", "trials", "trialRule", "experience", "voice", "fullLow", "fullHigh"];

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
            foreach (var measurement in singer.Older.Append(singer.Measurement))
            {
                foreach (var cell in Cells(singer, measurement))
                {
                    writer.WriteField(Escaped(cell));
                }

                writer.NextRecord();
            }
        }
    }

    /// <summary>A cell that no spreadsheet program runs; <see cref="Unescaped"/> gives it back.</summary>
    public static string Escaped(string cell) =>
        cell.Length > 0 && (FormulaStarts.Contains(cell[0], StringComparison.Ordinal) || cell[0] == TextMark) ? TextMark + cell : cell;

    private static string Unescaped(string cell) =>
        cell.Length > 1 && cell[0] == TextMark && (FormulaStarts.Contains(cell[1], StringComparison.Ordinal) || cell[1] == TextMark) ? cell[1..] : cell;

    private static string[] Cells(Singer singer, Measurement measurement) =>
    [
        singer.Alias,
        measurement.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? string.Empty,
        measurement.IsRangeAssumed ? string.Empty : measurement.Low.ToString(),
        measurement.IsRangeAssumed ? string.Empty : measurement.High.ToString(),
        measurement.Trials.IsEmpty ? Seconds(measurement.SustainedSeconds) : string.Empty,
        string.Join(' ', measurement.Trials.ConvertAll(Seconds)),
        measurement.Trials.IsEmpty ? string.Empty : measurement.TrialRule == TrialRule.Best ? "best" : "median",
        singer.Experience.ToWord(),
        singer.Voice ?? string.Empty,
        measurement.FullLow?.ToString() ?? string.Empty,
        measurement.FullHigh?.ToString() ?? string.Empty,
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

        var singers = new SingersTable(columns);
        while (csv.Read())
        {
            if (csv.Parser.Count != columns.Length)
            {
                throw Fail(csv.Parser.RawRow, $"there are {csv.Parser.Count} cells and {columns.Length} columns");
            }

            singers.Add(csv.Parser.RawRow, [.. columns.Select((_, c) => Unescaped(csv.GetField(c)!.Trim()))]);
        }

        singers.WriteJson(buffer);
    }

    private static string Column(string header) => Columns.FirstOrDefault(c => c.Equals(header.Trim(), StringComparison.OrdinalIgnoreCase))
        ?? throw Fail(1, $"unknown column {TextError.Quote(header)}; the columns are {string.Join(", ", Columns)}, separated by commas");

    internal static WarmupFormatException Fail(int line, string message) => new(new TextError(line, 1, message));
}
