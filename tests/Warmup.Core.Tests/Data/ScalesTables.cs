using System.Globalization;
using System.Reflection;

namespace Warmup.Tests;

/// <summary>The tables under Data of scales and tunings; the last column of each row says where the row comes from.</summary>
public static class ScalesTables
{
    public static TheoryData<string[]> Kinds { get; } = Theory("scales-kinds", 88);

    public static TheoryData<string[]> Chakras { get; } = Theory("scales-chakras", 72);

    public static TheoryData<string[]> Srutis { get; } = Theory("tuning-sruti22", 22);

    public static TheoryData<string[]> Pythagorean { get; } = Theory("tuning-pythagorean", 16);

    public static IReadOnlyList<string[]> Dictionaries { get; } = Read("scales-dictionaries", 123);

    public static int[] Wholes(string text) => [.. text.Split(',').Select(t => int.Parse(t, CultureInfo.InvariantCulture))];

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    public static Rational Ratio(string text)
    {
        var parts = text.Split('/');
        return new Rational(long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture));
    }

    private static TheoryData<string[]> Theory(string name, int count) => [.. Read(name, count)];

    /// <summary>A table must be whole, or the tests that walk it would pass by walking nothing.</summary>
    private static List<string[]> Read(string name, int count)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name + ".tsv") ?? throw new FileNotFoundException(name);
        using var reader = new StreamReader(stream);
        var columns = reader.ReadLine()!.Split('\t').Length;
        var rows = new List<string[]>();
        while (reader.ReadLine() is { } line)
        {
            var cells = line.Split('\t');
            if (cells.Length != columns || cells[^1].Length == 0)
            {
                throw new InvalidDataException($"{name}: a cell or the source is missing in: {line}");
            }

            rows.Add(cells);
        }

        return rows.Count == count ? rows : throw new InvalidDataException($"{name} has {rows.Count} rows, not {count}");
    }
}
