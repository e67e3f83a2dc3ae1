using System.Globalization;

namespace Warmup;

/// <summary>Reads the catalogue's rows, which lie as tab-separated text in the assembly.</summary>
internal static class CatalogueData
{
    public static ValueList<CatalogueEntry> Read() => [.. Parents(), .. Derived(), .. Thaats(), .. Western()];

    private static IEnumerable<CatalogueEntry> Parents() => Rows("parents.tsv").Select(row => new CatalogueEntry(
        new Scale(row[1], Melakarta.Ascent(Number(row[0]))),
        ScaleFamily.Parent,
        Number(row[0]),
        [row[2], .. Spellings(row[4])],
        "computed from the published rule; names: common practice")
    {
        IastName = row[2],
        Chakra = row[3],
        CodeException = row[5].Length == 0 ? null : row[5],
    });

    private static IEnumerable<CatalogueEntry> Derived() => Rows("derived.tsv").Select(row => new CatalogueEntry(
        new Scale(row[0], Tones(row[3]), Tones(row[4])), ScaleFamily.Derived, Number(row[2]), Spellings(row[1]), row[7].Length == 0 ? row[6] : $"{row[6]}: {row[7]}")
    {
        ForeignNotes = Tones(row[5]).ConvertAll(t => t.Degree),
    });

    private static IEnumerable<CatalogueEntry> Thaats() => Rows("thaats.tsv").Select(row => new CatalogueEntry(
        new Scale(row[0], Melakarta.Ascent(Number(row[2]))), ScaleFamily.Thaat, Number(row[2]), Spellings(row[1]), row[3]));

    private static IEnumerable<CatalogueEntry> Western() => Rows("western.tsv").Select(row => new CatalogueEntry(
        new Scale(row[0], Tones(row[2]), row[3].Length == 0 ? null : Tones(row[3])), ScaleFamily.Western, null, Spellings(row[1]), row[4]));

    /// <summary>The rows of one of the core's tables, without comments and header.</summary>
    /// <param name="file">The table's file name.</param>
    public static IEnumerable<string[]> Rows(string file) => EmbeddedTable.Rows(typeof(CatalogueData), $"Warmup.Data.{file}");

    private static ValueList<ScaleTone> Tones(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word =>
        ScaleTone.TryRead(new TextCursor(word), out var tone) ? tone : throw new InvalidOperationException($"the catalogue holds '{word}', which is not a tone")).ToValueList();

    private static ValueList<string> Spellings(string text) =>
        text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToValueList();

    private static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}
