using System.CommandLine;
using System.Globalization;
using System.Text;
using Warmup.Samples;

namespace Warmup.Cli;

/// <summary>The options of <c>warmup patterns --table</c>, and the table that they describe.</summary>
internal sealed class TableOptions
{
    private const string CsvEnding = ".csv";
    private const string ParquetEnding = ".parquet";

    // The largest number that --take and --seed understand.
    private const int Most = int.MaxValue;

    private readonly Option<string?> _size = new("--size") { Description = $"Of a table: all patterns of up to this number of parts, 1 to {PatternEnumeration.LargestSize}." };

    private readonly Option<string[]> _files = new("--file")
    {
        Description = $"Of a table: the patterns of a file, one a line ({TablePatterns.ListEnding}), or the drills in MusicXML, MIDI or text. Repeat it for more files.",
        AllowMultipleArgumentsPerToken = false,
    };

    private readonly Option<string?> _words = new("--words") { Description = $"Of a table: the words of the patterns; \"{PatternVocabulary.Usual}\" where it is left out." };

    private readonly Option<string?> _take = new("--take") { Description = "Of a table: only this number of patterns, drawn from all." };

    private readonly Option<string> _seed = new("--seed") { Description = "The number that patterns are drawn from; the same number draws the same.", DefaultValueFactory = _ => "1" };

    private readonly Option<string?> _out = new("--out") { Description = $"The table's file: {CsvEnding} or {ParquetEnding}." };

    private readonly Option<bool> _force = new("--force") { Description = "Replace files that exist." };

    /// <summary>Whether a table is wanted.</summary>
    public Option<bool> Table { get; } = new("--table") { Description = "Write a table with a row for each pattern and scale: what is counted and measured, or why the scale refuses it." };

    private Option[] Others => [_size, _files, _words, _take, _seed, _out, _force];

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[Table, .. Others])
        {
            command.Add(option);
        }
    }

    /// <summary>Refuses the options of a table where none is wanted.</summary>
    /// <exception cref="InputException">One stands there.</exception>
    public void RefuseOthers(ParseResult parsed)
    {
        if (Others.FirstOrDefault(o => IsTyped(parsed, o)) is { } stray)
        {
            throw new InputException($"{stray.Name} belongs to a table; add --table, or leave it out");
        }
    }

    /// <summary>Makes the table and says what was written.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="scaleText">What was typed after <c>--scale</c>, or <see langword="null"/>.</param>
    /// <param name="terminal">Where to say it.</param>
    /// <param name="cancellation">Stops the work and leaves no file.</param>
    /// <exception cref="InputException">An option's value cannot be used.</exception>
    public void Write(ParseResult parsed, string? scaleText, Terminal terminal, CancellationToken cancellation)
    {
        var path = parsed.GetValue(_out) ?? throw new InputException($"a table needs a file; add --out table{CsvEnding} or --out table{ParquetEnding}");
        var isParquet = Path.GetExtension(path).ToLowerInvariant() switch
        {
            CsvEnding => false,
            ParquetEnding => true,
            var other => throw new InputException($"--out must end in {CsvEnding} or {ParquetEnding}, not {TextError.Quote(other)}"),
        };
        var origin = new TableOrigin();
        using var progress = terminal.Working("making the table");
        var rows = new CountedRows(Rows(parsed, scaleText, origin, progress, cancellation));
        var files = isParquet ? [(path, destination => ParquetTable.Write(rows.All(), origin, destination, cancellation))] : Csv(path, rows, origin);
        Formats.WriteTogether(files, parsed.GetValue(_force));
        progress.Dispose();
        terminal.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"wrote {path} ({rows.Count} rows, {rows.Refused} of them refused)"));
        files.Skip(1).ToList().ForEach(f => terminal.Out.WriteLine($"wrote {f.Path} (its columns, and where it comes from)"));
    }

    private static bool IsTyped(ParseResult parsed, Option option) => parsed.GetResult(option) is { Implicit: false };

    /// <summary>CSV has no place for where it comes from: that stands in a file beside it.</summary>
    private static List<(string Path, Action<Stream> Write)> Csv(string path, CountedRows rows, TableOrigin origin)
    {
        var (bytes, hash) = (0L, string.Empty);
        return
        [
            (path, destination =>
            {
                using var hashed = new HashedStream(destination);
                CsvTable.Write(rows.All(), hashed);
                (bytes, hash) = (hashed.Bytes, hashed.Sha256());
            }),
            (Path.ChangeExtension(path, ".datapackage.json"), destination => destination.Write(Encoding.UTF8.GetBytes(TableSchema.Package(Path.GetFileName(path), bytes, hash, origin)))),
        ];
    }

    private IEnumerable<TableRow> Rows(ParseResult parsed, string? scaleText, TableOrigin origin, Samples.Progress progress, CancellationToken cancellation)
    {
        var files = parsed.GetValue(_files) is { Length: > 0 } typed ? typed : null;
        if (parsed.GetValue(_size) is null == files is null)
        {
            throw new InputException(files is null ? "a table needs patterns; add --size 4 for all of up to four parts, or --file FILE" : "use one of --size and --file at a time");
        }

        if (IsTyped(parsed, _seed) && !IsTyped(parsed, _take))
        {
            throw new InputException("--seed draws nothing without --take; add --take 1000, or leave it out");
        }

        if (files is not null && IsTyped(parsed, _take))
        {
            throw new InputException("--take draws from an enumeration; use it with --size, or leave it out");
        }

        var space = Space(parsed, files is not null);
        origin.Add("vocabulary", parsed.GetValue(_words) ?? PatternVocabulary.Usual.ToString());
        origin.Add("largest_size", space.Size);
        var scales = scaleText is null ? default : OptionValue.Parsed<ValueList<Scale>>("--scale", scaleText, Catalogue.Default.TryReadList);
        scales = scales.IsEmpty && files is null ? [Repertoire.UsualScale] : scales;
        origin.Add("scales", scales.IsEmpty ? $"that of each drill; for a list of patterns {Repertoire.UsualScale.ToText()}" : string.Join("; ", scales.ConvertAll(s => s.ToText())));
        var items = files is null ? Enumerated(parsed, space, origin, progress) : TablePatterns.OfFiles(files, origin, cancellation);
        return new TablePatterns(space, scales).Rows(items, cancellation);
    }

    private PatternEnumeration Space(ParseResult parsed, bool isOfFiles)
    {
        var words = parsed.GetValue(_words) is { } choice ? OptionValue.Parsed<PatternVocabulary>("--words", choice, PatternVocabulary.TryParse) : PatternVocabulary.Usual;
        var size = isOfFiles ? PatternEnumeration.LargestSize : OptionValue.Whole("--size", parsed.GetValue(_size)!, 1, PatternEnumeration.LargestSize);
        var space = new PatternEnumeration(words, size);
        return space.Count <= long.MaxValue
            ? space
            : throw new InputException(string.Create(CultureInfo.InvariantCulture, $"--words: there are {space.Count} patterns of up to {size} parts, and a table numbers at most {long.MaxValue}; choose a smaller size or fewer words"));
    }

    private IEnumerable<TablePatterns.Item> Enumerated(ParseResult parsed, PatternEnumeration space, TableOrigin origin, Samples.Progress progress)
    {
        origin.Add("first_index", 0);
        origin.Add("last_index", space.Count - 1);
        var count = space.Count;
        var indexes = All(space);
        if (parsed.GetValue(_take) is { } typed)
        {
            var take = OptionValue.Whole("--take", typed, 1, Most);
            var seed = OptionValue.Whole("--seed", parsed.GetValue(_seed)!, 0, Most);
            origin.Add("taken", take);
            origin.Add("seed", seed);
            origin.Add("drawn", PatternEnumeration.SampleMethod);
            (indexes, count) = (space.Sample(take, (ulong)seed), Int128.Min(take, count));
        }

        var done = 0L;
        return TablePatterns.Enumerated(indexes.Select(i =>
        {
            progress.Reach(done++ / (double)count);
            return i;
        }));
    }

    private static IEnumerable<Int128> All(PatternEnumeration space)
    {
        for (Int128 index = 0; index < space.Count; index++)
        {
            yield return index;
        }
    }

    /// <summary>Rows that are counted while they are written.</summary>
    private sealed class CountedRows(IEnumerable<TableRow> rows)
    {
        public long Count { get; private set; }

        public long Refused { get; private set; }

        public IEnumerable<TableRow> All()
        {
            foreach (var row in rows)
            {
                Count++;
                Refused += row.Refusal is null ? 0 : 1;
                yield return row;
            }
        }
    }
}
