using System.Text;

namespace Warmup.Plans;

/// <summary>The log of what was sung: a text file with a line for each drill, to which lines are only ever added.</summary>
/// <remarks>
/// Each line is a <see cref="LogEntry"/>. It is written at once and forced to the disk. A crash in the middle of a line can only spoil that line:
/// what stood before it stays, and the next line begins on a line of its own. Empty lines and lines that begin with <c>#</c> are remarks.
/// </remarks>
public static class PlanLog
{
    /// <summary>The largest log that is read: 64,000,000 bytes.</summary>
    public static int LargestFile => 64_000_000;

    /// <summary>Adds a line.</summary>
    /// <param name="path">The file; it is made if there is none.</param>
    /// <param name="entry">What was sung.</param>
    /// <exception cref="IOException">The disk refuses, or another program is writing.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written to.</exception>
    public static void Append(string path, LogEntry entry)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(entry);
        var line = $"{entry}\n";
        using var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 1);
        var isBroken = false;
        if (file.Length > 0)
        {
            file.Seek(-1, SeekOrigin.End);
            isBroken = file.ReadByte() != '\n';
        }

        file.Seek(0, SeekOrigin.End);
        file.Write(Encoding.UTF8.GetBytes(isBroken ? "\n" + line : line));
        file.Flush(flushToDisk: true);
    }

    /// <summary>Reads a log.</summary>
    /// <param name="utf8">The file's bytes, at most 64,000,000.</param>
    /// <returns>The entries, and what is wrong with the lines that cannot be read: those are passed over.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The log is too large.</exception>
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

            if (LogEntry.TryRead(line, out var entry, out var error))
            {
                entries.Add(entry);
            }
            else
            {
                errors.Add(new TextError(number, error.Column, error.Message));
            }
        }

        return new LogReading(entries.ToValueList(), errors.ToValueList());
    }
}
