using System.Globalization;
using System.Text;

namespace Warmup.Plans;

/// <summary>The log of what was sung: a plain text file of one line a drill, to which lines are only ever added.</summary>
/// <remarks>
/// A line has five fields between tabs: date, scale, exercise, tempo, and <c>x</c> for the teacher's tick or <c>-</c>. Each line is written
/// at once and forced to the disk. A crash in the middle of one can only spoil that line: what stood before stays, and the next line begins
/// on a line of its own.
/// </remarks>
public static class PlanLog
{
    /// <summary>The largest log that is read, in bytes.</summary>
    public const int LargestFile = 64_000_000;

    private const int Fields = 5;

    /// <summary>Adds a line.</summary>
    /// <param name="path">The file; it is made if there is none.</param>
    /// <param name="entry">What was sung.</param>
    /// <exception cref="ArgumentException">The scale or the exercise is empty or holds a control character, or the tempo lies outside its range.</exception>
    /// <exception cref="IOException">The disk refuses, or another program is writing.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written to.</exception>
    public static void Append(string path, LogEntry entry)
    {
        var line = ToLine(entry);
        using var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 1);
        var broken = false;
        if (file.Length > 0)
        {
            file.Seek(-1, SeekOrigin.End);
            broken = file.ReadByte() != '\n';
        }

        file.Seek(0, SeekOrigin.End);
        file.Write(Encoding.UTF8.GetBytes(broken ? "\n" + line : line));
        file.Flush(flushToDisk: true);
    }

    /// <summary>Reads a log.</summary>
    /// <param name="utf8">The file's bytes, at most 64,000,000.</param>
    /// <returns>The entries, and the lines that could not be read with their numbers: those are passed over.</returns>
    /// <exception cref="ArgumentException">The log is too large.</exception>
    public static LogReading Read(ReadOnlySpan<byte> utf8)
    {
        Require.InRange(utf8.Length, 0, LargestFile, "the bytes of a log");
        var entries = new List<LogEntry>();
        var errors = new List<TextError>();
        var number = 0;
        while (!utf8.IsEmpty)
        {
            number++;
            var end = utf8.IndexOf((byte)'\n');
            var line = Encoding.UTF8.GetString(end < 0 ? utf8 : utf8[..end]).TrimEnd('\r');
            utf8 = end < 0 ? [] : utf8[(end + 1)..];
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (Parse(line, out var wrong) is { } entry)
            {
                entries.Add(entry);
            }
            else
            {
                errors.Add(new TextError(number, 1, $"{wrong}; the line is passed over"));
            }
        }

        return new LogReading(entries.ToValueList(), errors.ToValueList());
    }

    private static string ToLine(LogEntry entry)
    {
        Require.InRange(entry.Tempo, Tempo.Slowest, Tempo.Fastest, "tempo");
        foreach (var text in (string[])[entry.Scale, entry.Exercise])
        {
            if (text.Length == 0 || text.Length > Scale.LongestName || text.Any(char.IsControl) || text[0] == '#')
            {
                throw new ArgumentException($"a name in the log must have 1 to {Scale.LongestName} characters without tabs and control characters and not begin with #, not '{PlanFile.Shown(string.Concat(text.Where(c => !char.IsControl(c))))}'");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"{entry.Date:yyyy-MM-dd}\t{entry.Scale}\t{entry.Exercise}\t{entry.Tempo}\t{(entry.IsTicked ? "x" : "-")}\n");
    }

    private static LogEntry? Parse(string line, out string wrong)
    {
        wrong = string.Empty;
        var fields = line.Split('\t');
        if (fields.Length != Fields)
        {
            wrong = string.Create(CultureInfo.InvariantCulture, $"a line must have {Fields} fields between tabs, not {fields.Length}");
        }
        else if (!DateOnly.TryParseExact(fields[0], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            wrong = $"'{PlanFile.Shown(fields[0])}' is no date such as 2026-12-01";
        }
        else if (fields[1].Length == 0 || fields[2].Length == 0)
        {
            wrong = "the scale and the exercise must be named";
        }
        else if (!int.TryParse(fields[3], NumberStyles.None, CultureInfo.InvariantCulture, out var tempo) || tempo < Tempo.Slowest || tempo > Tempo.Fastest)
        {
            wrong = $"the tempo must be between {Tempo.Slowest} and {Tempo.Fastest}, not '{PlanFile.Shown(fields[3])}'";
        }
        else if (fields[4] is not ("x" or "-"))
        {
            wrong = $"the tick must be x or -, not '{PlanFile.Shown(fields[4])}'";
        }
        else
        {
            return new LogEntry(date, fields[1], fields[2], tempo, fields[4] == "x");
        }

        return null;
    }
}

/// <summary>What a log holds.</summary>
/// <param name="Entries">The entries in the file's order.</param>
/// <param name="Errors">The lines that could not be read, with their numbers.</param>
public sealed record LogReading(ValueList<LogEntry> Entries, ValueList<TextError> Errors);
