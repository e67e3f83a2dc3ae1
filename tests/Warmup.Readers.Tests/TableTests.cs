using System.Text.Json;
using System.Text.Json.Nodes;
using Warmup.Cli;

namespace Warmup.Readers.Tests;

/// <summary>
/// The table of patterns as two readers find it that share nothing with what wrote it: hyparquet and DuckDB (npm), run by Node through read_table.mjs
/// from the folder that the environment names. What the cells must hold is counted here, on the lines that the row's own text gives.
/// </summary>
public sealed class TableTests : IDisposable
{
    private const string Variable = "WARMUP_TABLES_DIR";
    private const string Scales = "mohanam, bilahari, kedaram";

    private readonly string _folder = Directory.CreateTempSubdirectory("warmup-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Both_readers_find_the_same_rows_in_both_files_and_the_counts_are_those_of_the_lines()
    {
        var readers = Environment.GetEnvironmentVariable(Variable);
        Assert.SkipWhen(Tool.Missing(Tool.Node) is not null, Tool.Missing(Tool.Node) ?? string.Empty);
        Assert.SkipWhen(string.IsNullOrEmpty(readers), $"the environment variable {Variable} does not name a folder in which npm installed hyparquet and @duckdb/node-api");

        // All exercises, a pattern that two of the scales refuse, and texts with the characters that CSV quotes.
        const string list = "some \"own\", with commas.patterns";
        File.WriteAllLines(In(list), [.. Warmup.Repertoire.Traditional.Select(e => e.Name), "[S M]", "[S , , P , S']", "ladder.transposed(2) + figure(1 5).staccato"]);
        string[] table = ["patterns", "--table", "--file", In(list), "--scale", Scales];
        Run([.. table, "--out", In("a.parquet")]);
        Run([.. table, "--out", In("a.csv")]);
        var (code, output, error) = Tool.Node.Run(_folder, [Path.Combine(AppContext.BaseDirectory, "read_table.mjs"), readers!, In("a.parquet"), In("a.csv")]);
        Assert.True(code == 0, error);
        var read = JsonNode.Parse(output)!;
        var rows = read["duckdb"]!.AsArray();
        Assert.Equal(3 * (Warmup.Repertoire.Traditional.Count + 3), rows.Count);
        Assert.True(JsonNode.DeepEquals(rows, read["hyparquet"]), "the two readers of Parquet differ");
        Assert.True(JsonNode.DeepEquals(rows, read["csv"]), "Parquet and CSV differ");

        Assert.All(rows, row => Holds(row!));
        Assert.Contains(rows, r => (string?)r!["source"] == list + ", line 1");
        Assert.Contains(rows, r => (string?)r!["pattern"] == "[S M]" && ((string?)r["refusal"])?.Contains("has no M", StringComparison.Ordinal) == true);
        Assert.Equal(rows.Sum(r => (int?)r!["notes"] ?? 0), (int)read["sums"]![0]!["notes"]!);
        Assert.Equal(rows.Sum(r => (int?)r!["difficulty"] ?? 0), (int)read["sums"]![0]!["difficulty"]!);

        // Where it comes from: in the Parquet file itself, and beside the CSV file.
        var beside = JsonNode.Parse(File.ReadAllText(In("a.datapackage.json")))!;
        var inside = read["metadata"]!.AsObject();
        Assert.Equal(beside["origin"]!.AsObject().Select(e => (e.Key, (string?)e.Value)), inside.Where(e => e.Key != "table_schema").Select(e => (e.Key, (string?)e.Value)));
        Assert.True(JsonNode.DeepEquals(beside["resources"]![0]!["schema"], JsonNode.Parse((string)inside["table_schema"]!)));
        Assert.Equal(beside["resources"]![0]!["schema"]!["fields"]!.AsArray().Select(f => (string)f!["name"]!), rows[0]!.AsObject().Select(c => c.Key));
    }

    private static void Holds(JsonNode row)
    {
        // A scale keeps the name that was typed.
        var (pattern, known) = (Pattern.Parse((string)row["pattern"]!), Catalogue.Default.Read((string)row["scale"]!));
        var scale = new Scale((string)row["scale"]!, known.Ascent, known.Descent);
        if (!pattern.TryExpand(scale, out var expansion, out var refusal))
        {
            Assert.Equal((refusal.Code, refusal.Describe(), null), ((string?)row["refused"], (string?)row["refusal"], row["notes"]));
            return;
        }

        // The tones' text, read here letter by letter: semitones above S by common practice.
        var lines = expansion.ToTones().Split(" / ").Select(l => l.Split(' ').Select(Semitones).ToList()).ToList();
        var leaps = lines.SelectMany(l => l.Zip(l.Skip(1), (a, b) => b - a)).ToList();
        int Number(string column) => (int)row[column]!;
        Assert.Null(row["refused"]);
        Assert.Equal((lines.Count, lines.Sum(l => l.Count), lines.Max(l => l.Count)), (Number("lines"), Number("notes"), Number("longest_line")));
        Assert.Equal((lines.Min(l => l.Min()), lines.Max(l => l.Max())), (Number("lowest"), Number("highest")));
        int Leaps(int least, int most) => leaps.Count(i => Math.Abs(i) >= least && Math.Abs(i) <= most);
        Assert.Equal(
            [Leaps(0, 0), Leaps(1, 2), Leaps(3, 4), Leaps(5, 5), Leaps(6, 6), Leaps(7, 7), Leaps(8, 9), Leaps(10, 11), Leaps(12, 12), Leaps(13, 99)],
            ((string[])["unisons", "steps", "thirds", "fourths", "tritones", "fifths", "sixths", "sevenths", "octaves", "beyond_octave"]).Select(Number));
        Assert.Equal(lines.Sum(l => l.Zip(l.Skip(1), (a, b) => b - a).ToList() is var i ? i.Zip(i.Skip(1)).Count(p => p.First * p.Second < 0) : 0), Number("turns"));
        Assert.True(!(bool)row["is_palindrome"]! || lines.TrueForAll(l => l.SequenceEqual(Enumerable.Reverse(l))), (string?)row["pattern"]);
        var weighed = (10 * Number("span")) + (40 * Number("hardest_leap_rank")) + (100 * (double)row["mean_leap_rank"]!) + (150 * (double)row["turn_share"]!) + (20 * (double)row["rising_share"]!)
            + (60 * (double)row["starts_away_share"]!) + (80 * (double)row["far_landing_share"]!) + (60 * (double)row["notes_per_second"]!);
        Assert.Equal(Math.Floor(weighed + 0.5 + 1e-9), Number("difficulty"));
    }

    private static int Semitones(string tone)
    {
        var degree = tone.TrimEnd('\'', '_');
        var semitone = degree switch { "S" => 0, "R1" => 1, "R2" or "G1" => 2, "R3" or "G2" => 3, "G3" => 4, "M1" => 5, "M2" => 6, "P" => 7, "D1" => 8, "D2" or "N1" => 9, "D3" or "N2" => 10, "N3" => 11, _ => throw new JsonException(tone) };
        return semitone + (12 * (tone.Count(c => c == '\'') - tone.Count(c => c == '_')));
    }

    private string In(string name) => Path.Combine(_folder, name);

    private static void Run(params string[] arguments)
    {
        using var error = new StringWriter();
        Assert.True(Program.Run(arguments, TextWriter.Null, error) == 0, error.ToString());
    }
}
