using Parquet;
using Parquet.Schema;

namespace Warmup.Samples;

/// <summary>Writes the table of patterns as Apache Parquet: Snappy, in groups of rows, with where it comes from in the file's own metadata.</summary>
internal static class ParquetTable
{
    /// <summary>The rows of a group, which are held until they are written (the project's own setting).</summary>
    public const int GroupRows = 10_000;

    /// <summary>The name under which the file's metadata holds the columns as a Table Schema.</summary>
    public const string SchemaName = "table_schema";

    /// <summary>Writes the rows; no more than one group of them is held.</summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Write(IEnumerable<TableRow> rows, TableOrigin origin, Stream destination, CancellationToken cancellation) =>
        WriteAsync(rows, origin, destination, cancellation).GetAwaiter().GetResult();

    private static async Task WriteAsync(IEnumerable<TableRow> rows, TableOrigin origin, Stream destination, CancellationToken cancellation)
    {
        var columns = TableColumns.All.Select(Buffer).ToList();
        var options = new ParquetOptions { CompressionMethod = CompressionMethod.Snappy };
        await using var file = await ParquetWriter.CreateAsync(new ParquetSchema(columns.Select(c => c.Field)), destination, options, cancellationToken: cancellation);
        file.CustomMetadata = origin.Entries.Append((Name: SchemaName, Text: TableSchema.ToJson())).ToDictionary(e => e.Name, e => e.Text);
        var isWritten = false;
        var held = 0;
        foreach (var row in rows)
        {
            columns.ForEach(c => c.Add(row));
            if (++held == GroupRows)
            {
                await Flush();
            }
        }

        // A file without rows has a group all the same, so that every reader finds the columns.
        if (held > 0 || !isWritten)
        {
            await Flush();
        }

        async Task Flush()
        {
            using var group = file.CreateRowGroup();
            foreach (var column in columns)
            {
                await column.WriteAsync(group, cancellation);
            }

            (held, isWritten) = (0, true);
        }
    }

    private static ColumnBuffer Buffer(TableColumn column) => column switch
    {
        TextColumn text => new TextBuffer(text),
        WholeColumn whole => new ValueBuffer<int>(whole.Name, whole.Of),
        LongColumn whole => new ValueBuffer<long>(whole.Name, whole.Of),
        NumberColumn number => new ValueBuffer<double>(number.Name, number.Of),
        TruthColumn truth => new ValueBuffer<bool>(truth.Name, truth.Of),
        _ => throw new InvalidOperationException($"the column {column.Name} has no known type"),
    };

    /// <summary>The cells of one column in the group of rows that is held.</summary>
    private abstract class ColumnBuffer(DataField field)
    {
        public DataField Field { get; } = field;

        public abstract void Add(TableRow row);

        /// <summary>Writes the cells and forgets them.</summary>
        public abstract Task WriteAsync(ParquetRowGroupWriter group, CancellationToken cancellation);
    }

    private sealed class TextBuffer(TextColumn column) : ColumnBuffer(new DataField<string>(column.Name, nullable: true))
    {
        private readonly List<string?> _cells = new(GroupRows);

        public override void Add(TableRow row) => _cells.Add(column.Of(row));

        public override async Task WriteAsync(ParquetRowGroupWriter group, CancellationToken cancellation)
        {
            await group.WriteAsync(Field, _cells!);
            _cells.Clear();
        }
    }

    private sealed class ValueBuffer<T>(string name, Func<TableRow, T?> of) : ColumnBuffer(new DataField<T>(name, nullable: true))
        where T : struct
    {
        private readonly T?[] _cells = new T?[GroupRows];
        private int _count;

        public override void Add(TableRow row) => _cells[_count++] = of(row);

        public override async Task WriteAsync(ParquetRowGroupWriter group, CancellationToken cancellation)
        {
            await group.WriteAsync<T>(Field, _cells.AsMemory(0, _count), cancellationToken: cancellation);
            _count = 0;
        }
    }
}
