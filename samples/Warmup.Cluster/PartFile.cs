using System.Globalization;
using Parquet;
using Parquet.Schema;

namespace Warmup.ManyMachines;

/// <summary>
/// A part: the rows of one range as Apache Parquet, written whole or not at all under a name with its first index. A range that is done twice
/// writes the same bytes twice.
/// </summary>
internal static class PartFile
{
    // A row takes at most 33 bytes before compression; the rest is the file's own description.
    private const long LongestFile = (64L * PatternJob.LongestRange) + 65_536;

    private static readonly DataField Index = new DataField<long>("index");
    private static readonly DataField Refused = new DataField<int>("refused");
    private static readonly DataField Lines = new DataField<int>("lines");
    private static readonly DataField Notes = new DataField<int>("notes");
    private static readonly DataField Palindromes = new DataField<int>("palindromes");
    private static readonly DataField IsBroken = new DataField<bool>("is_broken");
    private static readonly DataField Heard = new DataField<ulong>("heard");

    public static string NameOf(long first) => string.Create(CultureInfo.InvariantCulture, $"part-{first:D19}.parquet");

    /// <summary>Works through a range and writes its part; what is there is replaced.</summary>
    /// <returns>The tally of the rows that were written.</returns>
    public static Tally Write(string folder, PatternWork work, int range, CancellationToken stop)
    {
        var rows = work.RowsOf(range, stop).ToArray();
        AtomicFile.Write(Path.Combine(folder, NameOf(work.FirstOf(range))), stream => WriteAsync(stream, work.Job, rows, stop).GetAwaiter().GetResult(), overwrite: true);
        return rows.Aggregate(Tally.Empty, (sum, row) => sum + row);
    }

    /// <summary>Reads a range's part and adds up its rows.</summary>
    /// <exception cref="InvalidDataException">The part is missing, cannot be read, or is not that of the range.</exception>
    public static Tally Read(string folder, PatternWork work, int range)
    {
        var path = Path.Combine(folder, NameOf(work.FirstOf(range)));
        try
        {
            return new FileInfo(path) is not { Exists: true } file ? throw new InvalidDataException("is missing")
                : file.Length > LongestFile ? throw new InvalidDataException("is too long")
                : ReadAsync(path, work.FirstOf(range), work.CountOf(range)).GetAwaiter().GetResult();
        }
        catch (Exception wrong) when (wrong is not OutOfMemoryException)
        {
            throw new InvalidDataException($"{Path.GetFileName(path)} {(wrong is InvalidDataException ? wrong.Message : "cannot be read")}", wrong);
        }
    }

    private static async Task WriteAsync(Stream stream, PatternJob job, Found[] rows, CancellationToken stop)
    {
        var schema = new ParquetSchema(Index, Refused, Lines, Notes, Palindromes, IsBroken, Heard);
        await using var file = await ParquetWriter.CreateAsync(schema, stream, new ParquetOptions { CompressionMethod = CompressionMethod.Snappy }, cancellationToken: stop);
        file.CustomMetadata = new Dictionary<string, string> { ["words"] = job.Words, ["size"] = job.Size.ToString(CultureInfo.InvariantCulture), ["scales"] = job.Scales, ["version"] = job.Version };
        using var group = file.CreateRowGroup();
        await Write(Index, row => row.Index);
        await Write(Refused, row => row.Refused);
        await Write(Lines, row => row.Lines);
        await Write(Notes, row => row.Notes);
        await Write(Palindromes, row => row.Palindromes);
        await Write(IsBroken, row => row.IsBroken);
        await Write(Heard, row => row.Heard);

        Task Write<T>(DataField field, Func<Found, T> of)
            where T : struct => group.WriteAsync<T>(field, Array.ConvertAll(rows, row => of(row)).AsMemory(), cancellationToken: stop);
    }

    private static async Task<Tally> ReadAsync(string path, long first, int count)
    {
        // Opened here, since the reader does not close a file that it cannot read.
        await using var stream = File.OpenRead(path);
        await using var file = await ParquetReader.CreateAsync(stream);
        if (file.RowGroups is not [{ } group] || group.RowCount != count)
        {
            throw new InvalidDataException("does not have the rows of its range");
        }

        var index = await Column<long>(Index);
        var (refused, lines, notes, palindromes) = (await Column<int>(Refused), await Column<int>(Lines), await Column<int>(Notes), await Column<int>(Palindromes));
        var (broken, heard) = (await Column<bool>(IsBroken), await Column<ulong>(Heard));
        var sum = Tally.Empty;
        for (var i = 0; i < count; i++)
        {
            sum += index[i] == first + i
                ? new Found(index[i], refused[i], lines[i], notes[i], palindromes[i], broken[i], heard[i])
                : throw new InvalidDataException("does not have the indexes of its range");
        }

        return sum;

        async Task<T[]> Column<T>(DataField field)
            where T : struct
        {
            var cells = new T[count];
            await group.ReadAsync<T>(file.Schema.FindDataField(field.Name), cells.AsMemory());
            return cells;
        }
    }
}
