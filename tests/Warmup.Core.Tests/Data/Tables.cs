using System.Globalization;
using System.Reflection;

namespace Warmup.Tests;

/// <summary>A row of a table of the trade's facts, by column name. The last column says where the row comes from.</summary>
public sealed class Row(string table, Dictionary<string, string> cells)
{
    public string this[string column] =>
        cells.TryGetValue(column, out var cell) ? cell : throw new KeyNotFoundException($"{table} has no column {column}");

    public int Whole(string column) => int.Parse(this[column], CultureInfo.InvariantCulture);

    public double Number(string column) => double.Parse(this[column], CultureInfo.InvariantCulture);

    public int[] Wholes(string column) => [.. this[column].Split(',').Select(t => int.Parse(t, CultureInfo.InvariantCulture))];

    public Rational Ratio(string column)
    {
        var parts = this[column].Split('/');
        return new Rational(long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture));
    }

    public override string ToString() => $"{table}: {cells.Values.First()}";
}

/// <summary>The tables under Data: facts from published sources, common practice or computation, as each row states.</summary>
public static class Tables
{
    public static IReadOnlyList<Row> Melakarta { get; } = Read("melakarta");

    public static IReadOnlyList<Row> Derived { get; } = Read("derived");

    public static IReadOnlyList<Row> Western { get; } = Read("western");

    public static IReadOnlyList<Row> Thaats { get; } = Read("thaat");

    public static IReadOnlyList<Row> Svaras { get; } = Read("svarasthana");

    public static IReadOnlyList<Row> Intervals { get; } = Read("intervals");

    public static IReadOnlyList<Row> ReferencePitches { get; } = Read("reference-pitches");

    public static IReadOnlyList<Row> Kattais { get; } = Read("kattai");

    public static double JustRatio(int semitone) => Svaras.First(r => r.Whole("semitone") == semitone).Ratio("just5_ratio").ToDouble();

    private static List<Row> Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name + ".tsv")
            ?? throw new FileNotFoundException(name);
        using var reader = new StreamReader(stream);
        var header = reader.ReadLine()!.Split('\t');
        var rows = new List<Row>();
        while (reader.ReadLine() is { } line)
        {
            var cells = line.Split('\t');
            Assert.True(cells.Length == header.Length, $"{name}: {cells.Length} cells for {header.Length} columns in: {line}");
            rows.Add(new Row(name, header.Zip(cells).ToDictionary(p => p.First, p => p.Second)));
        }

        return rows;
    }
}

/// <summary>The tables must be whole, or the tests that walk them would pass by walking nothing.</summary>
public class TablesTests
{
    [Fact]
    public void The_tables_are_whole_and_each_row_names_its_source()
    {
        Assert.Equal(
            (72, 88, 21, 10, 16, 30, 11, 12),
            (Tables.Melakarta.Count, Tables.Derived.Count, Tables.Western.Count, Tables.Thaats.Count, Tables.Svaras.Count,
                Tables.Intervals.Count, Tables.ReferencePitches.Count, Tables.Kattais.Count));
        Assert.All(Tables.Melakarta.Concat(Tables.Western).Concat(Tables.ReferencePitches), r => Assert.NotEmpty(r["source"]));
        Assert.All(
            Tables.Derived.Concat(Tables.Thaats).Concat(Tables.Svaras).Concat(Tables.Intervals).Concat(Tables.Kattais),
            r => Assert.NotEmpty(r["status"]));
    }
}
