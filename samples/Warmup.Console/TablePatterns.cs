using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Warmup.Reading;
using Warmup.Samples;

namespace Warmup.Cli;

/// <summary>Patterns that become rows of a table, whichever way they were named.</summary>
/// <param name="space">The enumeration in which indexes count.</param>
/// <param name="scales">The scales; where there are none, each pattern is measured in its own.</param>
internal sealed class TablePatterns(PatternEnumeration space, ValueList<Scale> scales)
{
    /// <summary>The ending of a list of patterns, one a line.</summary>
    public const string ListEnding = ".patterns";

    // The project's own bound: a list is read whole.
    private const int LargestList = 16 << 20;

    // Patterns whose rows are made ahead of the one that is written.
    private const int LookAhead = 64;

    /// <summary>The rows of some patterns, in their order, made on all cores.</summary>
    public IEnumerable<TableRow> Rows(IEnumerable<Item> items, CancellationToken cancellation)
    {
        var workers = Math.Min(Environment.ProcessorCount, OrderedParallel.MostWorkers);
        return new OrderedParallel { Workers = workers, LookAhead = LookAhead }.Map(items, RowsOf, cancellation).SelectMany(rows => rows);
    }

    /// <summary>The patterns of the enumeration at some indexes.</summary>
    public static IEnumerable<Item> Enumerated(IEnumerable<Int128> indexes) => indexes.Select(i => new Item(TableRow.Enumerated, (long)i, null, null, null));

    /// <summary>The patterns of files; what the files are is added to the origin at once, and they are read as the patterns are taken.</summary>
    /// <exception cref="InputException">A file is not there or cannot be read; for a list also, while the patterns are taken, where a line is no pattern.</exception>
    public static IEnumerable<Item> OfFiles(IReadOnlyList<string> paths, TableOrigin origin, CancellationToken cancellation)
    {
        var files = new List<(string Path, byte[] Bytes)>();
        foreach (var path in paths)
        {
            var isList = IsList(path);
            var bytes = InputFile.Read(
                "--file", path, isList ? LargestList : ReadingLimits.Bytes, $"a list of patterns ({ListEnding}), or a file such as drill.musicxml, drill.mid or drill.txt", static b => b, isText: false);
            origin.Add($"file_{files.Count + 1}", $"{Path.GetFileName(path)} sha256:{Convert.ToHexStringLower(SHA256.HashData(bytes))}");
            files.Add((path, bytes));
        }

        return files.SelectMany(f => IsList(f.Path) ? OfList(f.Path, f.Bytes) : OfMusic(f.Path, f.Bytes, cancellation));
    }

    private static bool IsList(string path) => Path.GetExtension(path).Equals(ListEnding, StringComparison.OrdinalIgnoreCase);

    /// <summary>A pattern or the name of an exercise on each line; empty lines and those that begin with # are left out.</summary>
    private static IEnumerable<Item> OfList(string path, byte[] bytes)
    {
        var number = 0;
        using var reader = new StreamReader(new MemoryStream(bytes), Encoding.UTF8);
        while (reader.ReadLine() is { } line)
        {
            number++;
            if (line.Trim() is { Length: > 0 } text && text[0] != '#')
            {
                var place = string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(path)}, line {number}");
                yield return new Item(place, null, Repertoire.Find(text)?.Pattern ?? OptionValue.Pattern($"--file: {place}", text), Repertoire.UsualScale, null);
            }
        }
    }

    private static IEnumerable<Item> OfMusic(string path, byte[] bytes, CancellationToken cancellation)
    {
        var music = DrillFile.Read("--file", path, bytes, ReadingOptions.Default, cancellation);
        foreach (var section in music.Sections)
        {
            var place = music.Sections.Count == 1 ? Path.GetFileName(path) : string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileName(path)}, section {section.Number}");
            yield return RuleFinder.FindPattern(section, cancellation) is { } pattern
                ? new Item(place, null, pattern, section.Scale, null)
                : new Item(place, null, null, section.Scale, new Finding(FindingCode.PatternRefused, Severity.Error, DrillFile.NotWrittenOut));
        }
    }

    private TableRow[] RowsOf(Item item, CancellationToken cancellation)
    {
        var where = scales.IsEmpty ? [item.OwnScale ?? Repertoire.UsualScale] : scales;
        if (item.Refusal is { } refusal)
        {
            return [.. where.Select(s => new TableRow(item.Source, null, null, null, s, null, refusal))];
        }

        var pattern = item.Pattern ?? space[item.Index!.Value];
        var normal = item.Pattern is null ? pattern : pattern.Normalize();
        return TableRow.Of(item.Source, item.Index ?? (long?)space.IndexOf(normal), pattern, normal, where, cancellation);
    }

    /// <summary>A pattern that is to be measured: by its index, as it was read, or why there is none.</summary>
    internal sealed record Item(string Source, long? Index, Pattern? Pattern, Scale? OwnScale, Finding? Refusal);
}
