using System.Text;

namespace Warmup.Cli.Tests;

/// <summary>Files are read in the encodings that editors save them in; what could be read in two ways is refused.</summary>
public sealed class InputFileTests : IDisposable
{
    private const string Class = """{"schema": "urn:warmup:singers:1", "singers": [{"alias": "Łucja", "low": "A3", "high": "E5", "sustainedSeconds": 14}]}""";

    private readonly Shell _shell = new();

    public static TheoryData<string> Encodings => ["utf-8", "utf-16", "utf-16BE"];

    public void Dispose() => _shell.Dispose();

    [Theory]
    [MemberData(nameof(Encodings))]
    public void A_class_is_read_in_each_encoding(string encoding)
    {
        File.WriteAllText(_shell.At("class.json"), Class, Encoding.GetEncoding(encoding));
        File.WriteAllText(_shell.At("class.csv"), "alias,low,high,sustainedSeconds\nŁucja,A3,E5,14\n", Encoding.GetEncoding(encoding));
        foreach (var file in (string[])["class.json", "class.csv"])
        {
            var (code, output, error) = Shell.Run("singers", "--singers", _shell.At(file));
            Assert.Equal((0, string.Empty), (code, error));
            Assert.Contains("Łucja", output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_member_that_stands_twice_is_refused_by_name_and_place()
    {
        File.WriteAllText(_shell.At("class.json"), Class.Replace("\"low\"", "\n \"alias\": \"Wren\", \"low\"", StringComparison.Ordinal));
        var (code, _, error) = Shell.Run("singers", "--singers", _shell.At("class.json"));
        Assert.Equal(2, code);
        Assert.Contains("line 2, column 2: the member 'alias' stands twice in one object", error, StringComparison.Ordinal);

        Assert.Equal(0, Shell.Run("demo", "--out", _shell.At("demo")).Code);
        Assert.Equal(0, Shell.Run("plan", "--singers", _shell.At("demo/singers.json"), "--scales", "mohanam", "--start", "2026-12-01", "--days", "3", "--no-repeat", "0", "--least", "10", "--out", _shell.At("plan")).Code);
        var plan = File.ReadAllText(_shell.At("plan/plan.json"));
        File.WriteAllText(_shell.At("twice.json"), plan.Replace("\"seed\":", "\"seed\": 3,\n  \"seed\":", StringComparison.Ordinal));
        (code, _, error) = Shell.Run("plan", "--plan", _shell.At("twice.json"), "--day", "2026-12-01", "--out", _shell.At("day"));
        Assert.Equal(2, code);
        Assert.Contains("the member 'seed' stands twice", error, StringComparison.Ordinal);
    }
}
