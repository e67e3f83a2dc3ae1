using System.Text.RegularExpressions;
using Warmup.Audio;
using Warmup.Drawing;
using Warmup.Midi;
using Warmup.MusicXml;
using Warmup.Plans;
using Warmup.Samples;
using Warmup.Sheets;
using Warmup.Testing;

namespace Warmup.Docs.Tests;

/// <summary>What the pages say about the repository itself: rows of data, names of types, folders.</summary>
public sealed partial class FactTests
{
    private static IEnumerable<string> Tables => Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.tsv", SearchOption.AllDirectories)
        .Where(f => Path.GetFileName(Path.GetDirectoryName(f)) == "Data");

    [Fact]
    public void The_page_on_sources_counts_the_rows_of_each_status()
    {
        var told = RowCount().Matches(Text("docs/data-sources.md"))
            .Select(m => (File: m.Groups["file"].Value, Status: m.Groups["status"].Value, Rows: int.Parse(m.Groups["rows"].Value, System.Globalization.CultureInfo.InvariantCulture)))
            .ToList();
        foreach (var path in Tables)
        {
            var file = Path.GetFileName(path);
            var lines = File.ReadLines(path).Where(l => l.Length > 0 && !l.StartsWith('#')).Select(l => l.Split('\t')).ToList();
            var status = Array.IndexOf(lines[0], "source");
            var rows = lines.Skip(1).ToList();
            var here = told.Where(t => t.File == file).ToList();
            Assert.Equal(rows.Count, here.Sum(t => t.Rows));
            if (here.Count > 1 || file == "thaats.tsv")
            {
                Assert.Equal(rows.CountBy(r => r[status]).OrderBy(r => r.Key, StringComparer.Ordinal), here.Select(t => KeyValuePair.Create(t.Status, t.Rows)).OrderBy(r => r.Key, StringComparer.Ordinal));
            }
        }

        Assert.Equal(Tables.Count(), told.Select(t => t.File).Distinct().Count());
    }

    [Fact]
    public void A_row_of_data_that_is_shown_is_in_the_data()
    {
        var rows = Tables.SelectMany(File.ReadLines).ToHashSet(StringComparer.Ordinal);
        var shown = Repository.Blocks.Where(b => b.Language == "tsv").SelectMany(b => b.Code.Split('\n')).ToList();
        Assert.NotEmpty(shown);
        Assert.All(shown, row => Assert.Contains(row, rows));
    }

    [Fact]
    public void The_page_on_measuring_has_the_steps_of_the_form_with_their_sources_and_the_cautions()
    {
        var page = Text("docs/measuring.md");
        Assert.All(MeasuringSteps.All, s => Assert.Contains($". {s.Text} ({s.Source})\n", page, StringComparison.Ordinal));
        Assert.All(MeasuringSteps.All, s => Assert.Contains($"## {s.Part}\n", page, StringComparison.Ordinal));
        Assert.All(Cautions.All.Take(5), c => Assert.Contains(c.Text, page, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_planted_mistake_stands_exactly_once_in_the_file_that_it_names()
    {
        var rows = File.ReadLines(Path.Combine(Repository.Root, "tests/Mutation/mutants.tsv")).Skip(1).Select(r => r.Split('\t')).ToList();
        Assert.NotEmpty(rows);
        Assert.Empty(rows.Where(r => !StandsOnce(Path.Combine(Repository.Root, r[1]), r[2])).Select(r => $"flip {r[0]} in {r[1]}: {r[2]}"));

        static bool StandsOnce(string file, string expression) => File.Exists(file) && File.ReadAllText(file).Split(expression).Length == 2;
    }

    [Fact]
    public void The_page_and_the_schema_of_the_table_have_its_columns()
    {
        Assert.All(TableColumns.All, c => Assert.Contains($"\n| `{c.Name}` | {c.Type} | {c.Unit} | {c.Meaning} |\n", Text("docs/table.md"), StringComparison.Ordinal));
        Assert.Equal(TableSchema.ToJson(), File.ReadAllText(Path.Combine(Repository.Root, "docs/schemas/table-1.json")).ReplaceLineEndings("\n"));

        // What the measured drill is and how the origin is named stand there too.
        Assert.All(new TableOrigin().Entries, e => Assert.Contains($"`{e.Name}`", Text("docs/table.md"), StringComparison.Ordinal));
    }

    [Fact]
    public void Every_type_that_the_overview_names_is_public()
    {
        Type[] one = [typeof(Drill), typeof(Singer), typeof(MidiFormat), typeof(MusicXmlFormat), typeof(HtmlFormat), typeof(PdfFormat), typeof(WavFormat), typeof(Warmup.Takes.Listener), typeof(Warmup.Reading.MusicReader), typeof(WarmupPlan), typeof(LawSuite)];
        var types = one.SelectMany(t => t.Assembly.GetExportedTypes()).Select(t => t.Name.Split('`')[0]).ToHashSet(StringComparer.Ordinal);
        var rows = Text("docs/api.md").Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).ToList();
        var names = rows.SelectMany(r => TypeName().Matches(r.Split('|')[2]).Select(m => m.Groups["name"].Value)).ToList();
        Assert.True(names.Count > 80);
        Assert.All(names, name => Assert.Contains(name, types));
    }

    [Fact]
    public void Every_folder_of_code_is_in_the_developers_table()
    {
        var page = Text("DEVELOPERS.md");
        foreach (var folder in new[] { "src", "samples" }.SelectMany(f => Directory.EnumerateDirectories(Path.Combine(Repository.Root, f))))
        {
            // A folder without a project or source is left over from an earlier build.
            if (Directory.EnumerateFiles(folder, "*.cs*").Any())
            {
                Assert.Contains($"`{Path.GetRelativePath(Repository.Root, folder).Replace('\\', '/')}", page, StringComparison.Ordinal);
            }
        }
    }

    private static string Text(string path) => Repository.Pages.Single(p => p.Path == path).Text;

    [GeneratedRegex("^\\| `(?<file>[a-z0-9]+\\.tsv)` \\| (?<status>[^|]+?) \\| (?<rows>\\d+) \\|$", RegexOptions.Multiline)]
    private static partial Regex RowCount();

    [GeneratedRegex("`(?<name>[A-Z]\\w+)(<T>)?`")]
    private static partial Regex TypeName();
}
