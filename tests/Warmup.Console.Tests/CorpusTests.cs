using System.CommandLine.Parsing;

namespace Warmup.Cli.Tests;

/// <summary>Two hundred wrong command lines: each is refused in one plain line that says what is wrong, and leaves nothing behind.</summary>
public sealed class CorpusTests : IDisposable
{
    private static readonly (string Option, string Value)[] GoodDrill = [("--scale", "mohanam"), ("--pattern", "ladder"), ("--tonic", "G3"), ("--tempo", "60"), ("--out", "a.mid")];

    private static readonly (string Option, string Value)[] GoodPlan =
        [("--singers", "class.json"), ("--scales", "mohanam"), ("--start", "2026-12-01"), ("--days", "3"), ("--no-repeat", "0"), ("--out", "p")];

    // Words of the runtime, which mean nothing to a singer.
    private static readonly string[] RuntimeWords = ["System.", "Exception", "Parameter", "Nullable", ".partial", "column 1;", "'0)'", "   at "];

    private readonly Shell _shell = new();

    public CorpusTests()
    {
        File.WriteAllText(_shell.At("class.json"), """{"schema": "urn:warmup:singers:1", "singers": [{"alias": "Wren", "low": "G3", "high": "E5", "sustainedSeconds": 18}]}""");
        File.WriteAllText(_shell.At("broken.json"), """{"schema": "urn:warmup:singers:1", "singers": [{"alias": "Wren", "low": "H3"}]}""");
        File.WriteAllText(_shell.At("broken.scl"), "broken\n 2\n 3/2\n");
        File.WriteAllText(_shell.At("twelve.scl"), "twelve\n 12\n" + string.Concat(Enumerable.Range(1, 12).Select(i => $" {i}00.0\n")));
        File.WriteAllText(_shell.At("there.mid"), "there");
        Directory.CreateDirectory(_shell.At("there"));
    }

    public static TheoryData<string, string> Lines
    {
        get
        {
            var rows = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Corpus", "command-lines.tsv")).Where(l => !l.StartsWith('#')).Select(l => l.Split('\t'));
            return new TheoryData<string, string>(rows.Select(r => (r[0], r[1])));
        }
    }

    public static TheoryData<string, string, string> Files
    {
        get
        {
            var rows = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Corpus", "broken-files.tsv")).Where(l => !l.StartsWith('#')).Select(l => l.Split('\t'));
            return new TheoryData<string, string, string>(rows.Select(r => (r[0], r[1], r[2])));
        }
    }

    public void Dispose() => _shell.Dispose();

    [Fact]
    public void There_are_two_hundred_lines() => Assert.InRange(Lines.Count, 200, 1000);

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_wrong_line_is_refused_in_one_plain_line(string line, string must)
    {
        var before = _shell.Files;
        var (code, output, error) = Shell.Run([.. Words(line).Select(InFolder)]);
        var said = error.Replace(_shell.Folder + Path.DirectorySeparatorChar, string.Empty, StringComparison.Ordinal);
        Assert.True(code == 2, $"{line}\nexits with {code}: {output}{said}");
        Assert.True(said.Contains(must, StringComparison.Ordinal), $"{line}\nsays: {said}\nand not: {must}");
        Assert.StartsWith("warmup: ", said, StringComparison.Ordinal);
        Assert.Equal(said.Length - 1, said.IndexOf('\n', StringComparison.Ordinal));
        Assert.All(RuntimeWords, w => Assert.False(said.Contains(w, StringComparison.Ordinal), $"{line}\nsays: {said}"));
        Assert.Equal(string.Empty, output);
        Assert.Equal(before, _shell.Files);
    }

    [Fact]
    public void There_are_seventy_files() => Assert.InRange(Files.Count, 70, 1000);

    [Theory]
    [MemberData(nameof(Files))]
    public void A_broken_file_is_refused_in_one_plain_line(string name, string content, string must)
    {
        var path = _shell.At("broken-" + name);
        File.WriteAllText(path, Unescaped(content));
        string[] command = Path.GetExtension(name) switch
        {
            ".scl" => _shell.Drill(("--tuning", path)),
            _ when name == "plan.json" => ["plan", "--plan", path, "--day", "2026-12-01", "--out", _shell.At("p")],
            _ => ["singers", "--singers", path],
        };
        var (code, output, error) = Shell.Run(command);
        var said = error.Replace(_shell.Folder + Path.DirectorySeparatorChar, string.Empty, StringComparison.Ordinal);
        Assert.True(code == 2, $"{content}\nexits with {code}: {output}{said}");
        Assert.True(said.Contains(must, StringComparison.Ordinal), $"{content}\nsays: {said}\nand not: {must}");
        Assert.Contains("broken-" + name, said, StringComparison.Ordinal);
        Assert.Equal(said.Length - 1, said.IndexOf('\n', StringComparison.Ordinal));
        Assert.All(RuntimeWords, w => Assert.False(said.Contains(w, StringComparison.Ordinal), $"{content}\nsays: {said}"));
    }

    private static string Unescaped(string text)
    {
        var plain = new System.Text.StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            plain.Append(text[i] != '\\' ? text[i] : text[++i] switch { 'n' => '\n', 't' => '\t', '0' => '\0', var other => other });
        }

        return plain.ToString();
    }

    /// <summary>The words of a line; the good options come first, but for those that the line gives itself.</summary>
    private static IEnumerable<string> Words(string line)
    {
        var words = CommandLineParser.SplitCommandLine(line.Replace("\"\"", "\u0001", StringComparison.Ordinal)).Select(w => w.Replace("\u0001", string.Empty, StringComparison.Ordinal)).ToList();
        foreach (var (mark, good) in (ReadOnlySpan<(string, (string, string)[])>)[("...", GoodDrill), (",,,", GoodPlan)])
        {
            if (words.IndexOf(mark) is var at and >= 0)
            {
                words.RemoveAt(at);
                words.InsertRange(at, good.Where(g => !words.Contains(g.Item1) && !(words[0] == "check" && g.Item1 == "--out")).SelectMany(g => new[] { g.Item1, g.Item2 }));
            }
        }

        return words;
    }

    /// <summary>Names of files as they lie in the test's own folder.</summary>
    private string InFolder(string word) => word.EndsWith(".mid", StringComparison.Ordinal) || word.EndsWith(".json", StringComparison.Ordinal) || word.Contains(".scl", StringComparison.Ordinal)
        || word.EndsWith(".xyz", StringComparison.Ordinal) || word is "there" or "p" || word.EndsWith(".txt", StringComparison.Ordinal) ? _shell.At(word) : word;
}
