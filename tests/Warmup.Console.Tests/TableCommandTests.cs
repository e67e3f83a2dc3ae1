using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json.Nodes;
using CsvHelper;
using Parquet;
using Warmup.Research;
using Warmup.Samples;

namespace Warmup.Cli.Tests;

/// <summary>
/// <c>warmup patterns --table</c>, read back with the libraries that write it; other readers, and the counts of every row by other means, are in
/// tests/Warmup.Readers.Tests.
/// </summary>
public sealed class TableCommandTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Fact]
    public async Task A_table_has_a_row_for_each_pattern_and_scale_in_the_order_of_the_enumeration()
    {
        var said = Table("--size", "2", "--scale", "mohanam, bilahari", "--out", _shell.At("a.parquet"));
        Assert.Equal($"wrote {_shell.At("a.parquet")} (88 rows, 0 of them refused)\n", said);
        await using var file = await ParquetReader.CreateAsync(_shell.At("a.parquet"), cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(TableColumns.All.Select(c => c.Name), file.Schema.DataFields.Select(f => f.Name));
        var space = new PatternEnumeration(PatternVocabulary.Usual, 2);
        var expected = space.Range(0, space.Count).SelectMany(p => (string[])[$"{p} in mohanam", $"{p} in bilahari"]);
        Assert.Equal(expected, (await Texts(file, "pattern")).Zip(await Texts(file, "scale"), (p, s) => $"{p} in {s}"));
        Assert.Equal(Enumerable.Range(0, 44).SelectMany(i => (long?[])[i, i]), await Values<long>(file, "index"));
        Assert.Equal(["43", "0"], (string[])[file.CustomMetadata["last_index"], file.CustomMetadata["first_index"]]);
        Assert.Equal(PatternVocabulary.Usual.ToString(), file.CustomMetadata["vocabulary"]);
        Assert.Matches("^[0-9a-f]{40}$|^unknown$", file.CustomMetadata["commit"]);
        Assert.Matches("^[0-9]+[.][0-9]+[.][0-9]+", file.CustomMetadata["version"]);
    }

    [Fact]
    public void Equal_command_lines_give_equal_bytes()
    {
        foreach (var ending in (string[])["csv", "parquet"])
        {
            Table("--size", "3", "--take", "50", "--seed", "4", "--out", _shell.At("a." + ending));
            Table("--size", "3", "--take", "50", "--seed", "4", "--out", _shell.At("b." + ending));
            Assert.Equal(File.ReadAllBytes(_shell.At("a." + ending)), File.ReadAllBytes(_shell.At("b." + ending)));
        }

        Assert.Equal(["a.csv", "a.datapackage.json", "a.parquet", "b.csv", "b.datapackage.json", "b.parquet"], _shell.Files);
    }

    [Fact]
    public void A_sample_holds_the_drawn_indexes_and_says_how_they_were_drawn()
    {
        Table("--size", "12", "--words", "ladder run .ends .reversed +", "--take", "30", "--seed", "9", "--out", _shell.At("a.csv"));
        var space = new PatternEnumeration(PatternVocabulary.Parse("ladder run .ends .reversed +"), 12);
        Assert.Equal(space.Sample(30, 9).Select(i => space[i].ToString()), Cells("a.csv", "pattern"));
        var origin = Package("a.datapackage.json")["origin"]!;
        Assert.Equal(("30", "9", PatternEnumeration.SampleMethod), ((string?)origin["taken"], (string?)origin["seed"], (string?)origin["drawn"]));
        Assert.Equal("ladder run .ends .reversed +", (string?)origin["vocabulary"]);
    }

    [Fact]
    public void The_file_beside_a_csv_knows_its_bytes()
    {
        Table("--size", "1", "--out", _shell.At("a.csv"));
        var resource = Package("a.datapackage.json")["resources"]![0]!;
        var bytes = File.ReadAllBytes(_shell.At("a.csv"));
        Assert.Equal(("a.csv", bytes.Length), ((string?)resource["path"], (int?)resource["bytes"]));
        Assert.Equal("sha256:" + Convert.ToHexStringLower(SHA256.HashData(bytes)), (string?)resource["hash"]);
    }

    [Fact]
    public void A_row_that_the_scale_refuses_says_why_and_has_no_counts()
    {
        File.WriteAllText(_shell.At("some.patterns"), "# what mohanam lacks\n\n[S M]\nsarali-10\nladder\n");
        var said = Table("--file", _shell.At("some.patterns"), "--scale", "mohanam", "--out", _shell.At("a.csv"));
        Assert.Contains("(3 rows, 2 of them refused)", said, StringComparison.Ordinal);
        Assert.Equal(["some.patterns, line 3", "some.patterns, line 4", "some.patterns, line 5"], Cells("a.csv", "source"));
        Assert.Equal([FindingCode.PatternRefused, FindingCode.PatternRefused, string.Empty], Cells("a.csv", "refused"));
        Assert.All(Cells("a.csv", "refusal").Take(2), c => Assert.Contains("has no M", c, StringComparison.Ordinal));
        Assert.Equal([string.Empty, string.Empty, "20"], Cells("a.csv", "notes"));

        // The ladder is the first pattern of the usual choice; written lines are not in it.
        Assert.Equal([string.Empty, string.Empty, "0"], Cells("a.csv", "index"));
    }

    [Fact]
    public void Drills_read_from_files_enter_the_same_table_in_their_own_scale_or_in_others()
    {
        string[] drill = _shell.Drill(("--scale", "mohanam"), ("--pattern", "ladder"), ("--out", _shell.At("ladder.mid")));
        Assert.Equal(0, Shell.Run([.. drill, "--out", _shell.At("ladder.musicxml")]).Code);
        File.WriteAllText(_shell.At("typed.txt"), "Scale: mohanam\nTonic: G3\nS G R P\nD P S'\n");
        string[] files = ["--file", _shell.At("ladder.mid"), "--file", _shell.At("ladder.musicxml"), "--file", _shell.At("typed.txt")];
        Table([.. files, "--out", _shell.At("own.csv")]);
        Table([.. files, "--scale", "bilahari, kedaram", "--out", _shell.At("others.csv")]);

        Assert.Equal(["ladder.mid", "ladder.musicxml", "typed.txt"], Cells("own.csv", "source"));
        Assert.Equal(["ladder", "ladder", "[S G R P / D P S']"], Cells("own.csv", "pattern"));
        Assert.Equal(["S R2 G3 P D2 S'"], Cells("own.csv", "scale_notes").Distinct());
        Assert.Equal(["20", "20", "7"], Cells("own.csv", "notes"));
        Assert.Equal(["Bilahari", "Kedaram"], Cells("others.csv", "scale").Select(s => char.ToUpperInvariant(s[0]) + s[1..]).Distinct());
        Assert.Equal(6, Cells("others.csv", "pattern").Count);
        Assert.StartsWith("ladder.mid sha256:", (string?)Package("own.datapackage.json")["origin"]!["file_1"], StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_that_a_spreadsheet_would_run_is_written_as_text()
    {
        File.WriteAllText(_shell.At("=1+1.patterns"), "ladder\n");
        Table("--file", _shell.At("=1+1.patterns"), "--out", _shell.At("a.csv"));
        Assert.Equal("'=1+1.patterns, line 1", Cells("a.csv", "source").Single());
    }

    [Fact]
    public async Task Groups_of_rows_bound_what_is_held()
    {
        // A list of one pattern, measured in all 72 parents, 140 times: one more row than a group has makes a second group.
        File.WriteAllLines(_shell.At("many.patterns"), Enumerable.Repeat("[S]", 139));
        Table("--file", _shell.At("many.patterns"), "--scale", "parents:1-72", "--out", _shell.At("a.parquet"));
        await using var file = await ParquetReader.CreateAsync(_shell.At("a.parquet"), cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal([ParquetTable.GroupRows, (139 * 72) - ParquetTable.GroupRows], file.RowGroups.Select(g => (int)g.RowCount));
    }

    [Theory]
    [InlineData("add --size 4", "--out", "a.csv")]
    [InlineData("add --out table.csv", "--size", "2")]
    [InlineData("--out must end in .csv or .parquet, not '.xlsx'", "--size", "2", "--out", "a.xlsx")]
    [InlineData("--size must be a whole number between 1 and 12, not '13'", "--size", "13", "--out", "a.csv")]
    [InlineData("one of --size and --file", "--size", "2", "--file", "b.patterns", "--out", "a.csv")]
    [InlineData("there is no file", "--file", "b.patterns", "--out", "a.csv")]
    [InlineData("--scale", "--size", "1", "--scale", "mohanim", "--out", "a.csv")]
    [InlineData("--words, column 8", "--size", "1", "--words", "ladder .nothing", "--out", "a.csv")]
    [InlineData("--take must be a whole number between 1 and", "--size", "1", "--take", "0", "--out", "a.csv")]
    [InlineData("--seed draws nothing without --take", "--size", "1", "--seed", "3", "--out", "a.csv")]
    [InlineData("--take draws from an enumeration", "--file", "b.patterns", "--take", "3", "--out", "a.csv")]
    public void Wrong_input_is_one_line_with_the_fix_and_leaves_no_file(string expected, params string[] options)
    {
        var (code, output, error) = Shell.Run(["patterns", "--table", .. options.Select(o => o.StartsWith("a.", StringComparison.Ordinal) ? _shell.At(o) : o)]);
        Assert.Equal((2, string.Empty), (code, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
        Assert.Empty(_shell.Files);
    }

    [Fact]
    public void A_line_of_a_list_that_is_no_pattern_is_named_and_no_file_is_left()
    {
        File.WriteAllText(_shell.At("b.patterns"), "ladder\nladder.nothing\n");
        var (code, _, error) = Shell.Run("patterns", "--table", "--file", _shell.At("b.patterns"), "--out", _shell.At("a.csv"));
        Assert.Equal(2, code);
        Assert.Contains("b.patterns, line 2", error, StringComparison.Ordinal);
        Assert.Equal(["b.patterns"], _shell.Files);
    }

    [Fact]
    public void Options_of_a_table_alone_are_refused() =>
        Assert.Contains("--size belongs to a table; add --table", Shell.Run("patterns", "--size", "3").Error, StringComparison.Ordinal);

    private static string Table(params string[] options)
    {
        var (code, output, error) = Shell.Run(["patterns", "--table", .. options]);
        Assert.True(code == 0, error);
        return output.ReplaceLineEndings("\n");
    }

    private static async Task<string?[]> Texts(ParquetReader file, string column)
    {
        var cells = new string?[file.RowGroups[0].RowCount];
        await file.RowGroups[0].ReadAsync(file.Schema.FindDataField(column), cells.AsMemory(), cancellationToken: TestContext.Current.CancellationToken);
        return cells;
    }

    private static async Task<T?[]> Values<T>(ParquetReader file, string column)
        where T : struct
    {
        var cells = new T?[file.RowGroups[0].RowCount];
        await file.RowGroups[0].ReadAsync(file.Schema.FindDataField(column), cells.AsMemory(), cancellationToken: TestContext.Current.CancellationToken);
        return cells;
    }

    private JsonNode Package(string name) => JsonNode.Parse(File.ReadAllText(_shell.At(name)))!;

    private List<string> Cells(string file, string column)
    {
        using var csv = new CsvReader(new StreamReader(_shell.At(file)), CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        var cells = new List<string>();
        while (csv.Read())
        {
            cells.Add(csv.GetField(column)!);
        }

        return cells;
    }
}
