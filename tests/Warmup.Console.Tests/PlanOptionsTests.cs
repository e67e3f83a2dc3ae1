using System.Text.Json;

namespace Warmup.Cli.Tests;

/// <summary>The options of a new plan, and the command that a refusal prints: it is typed as printed, and works.</summary>
public sealed class PlanOptionsTests : IDisposable
{
    private readonly Shell _shell = new();

    public PlanOptionsTests()
    {
        Write("robin.json", new Singer("Robin", NoteName.FromMidi(53), NoteName.FromMidi(64), 16));
        Write("pip.json", new Singer("Pip", NoteName.FromMidi(62), NoteName.FromMidi(69), 8));
        Write("both.json", new Singer("Pip the small", NoteName.FromMidi(60), NoteName.FromMidi(62), 8), new Singer("Heron", NoteName.FromMidi(48), NoteName.FromMidi(72), 24));
        Write("heron.json", new Singer("Heron", NoteName.FromMidi(48), NoteName.FromMidi(72), 24));

        void Write(string name, params Singer[] singers)
        {
            using var file = File.Create(_shell.At(name));
            SingersFile.Write(singers.ToValueList(), file);
        }
    }

    public void Dispose() => _shell.Dispose();

    private string[] New(string singers, string scales, params string[] more) =>
        ["plan", "--singers", _shell.At(singers), "--scales", scales, "--start", "2026-12-01", "--days", "6", "--formats", "none", "--out", _shell.At("plan of mine"), .. more];

    private JsonElement Plan() => JsonDocument.Parse(File.ReadAllBytes(_shell.At("plan of mine/plan.json"))).RootElement;

    private static IEnumerable<string> Strings(JsonElement list, string name) => list.EnumerateArray().Select(e => e.GetProperty(name).GetString()!);

    /// <summary>The words of a line as a shell would part them.</summary>
    private static List<string> Words(string line)
    {
        var (words, word, isQuoted) = (new List<string>(), string.Empty, false);
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"')
            {
                isQuoted = !isQuoted;
            }
            else if (line[i] == '\\')
            {
                word += line[++i];
            }
            else if (line[i] == ' ' && !isQuoted)
            {
                words.Add(word);
                word = string.Empty;
            }
            else
            {
                word += line[i];
            }
        }

        return [.. words, word];
    }

    [Theory]
    [InlineData("robin.json", "mohanam", "--tonic F3", "--tonic", "E3", "--no-repeat", "0")]
    [InlineData("pip.json", "mohanam", "--no-repeat 1")]
    [InlineData("pip.json", "mohana", "--no-repeat 1", "--no-repeat", "2", "--tempo", "56 to 64 by 2", "--add", "figure(1 2 3 2)", "--tala", "tisra eka")]
    [InlineData("both.json", "15", "--without \"Pip the small\"")]
    [InlineData("heron.json", "mohanam", "--minutes 6", "--least", "0", "--minutes", "5", "--tempo", "22")]
    public void The_command_of_a_refusal_works_as_it_is_printed(string singers, string scales, string change, params string[] more)
    {
        var refused = Shell.Run(New(singers, scales, more));
        Assert.Equal(2, refused.Code);
        Assert.False(Directory.Exists(_shell.At("plan of mine")));
        var command = refused.Error[refused.Error.IndexOf("warmup plan ", StringComparison.Ordinal)..].TrimEnd();
        Assert.EndsWith(change, command, StringComparison.Ordinal);
        var works = Shell.Run([.. Words(command).Skip(1)]);
        Assert.True(works.Code == 0, works.Error);
        Assert.True(File.Exists(_shell.At("plan of mine/plan.json")));
    }

    [Fact]
    public void Drills_of_ones_own_are_sung_each_in_its_own_tala()
    {
        Assert.Equal(0, Shell.Run(New("heron.json", "hamsadhvani, 15", "--add", "figure(1 2 3 2)", "--tala", "tisra eka", "--add", "alankara-7", "--add", "ladder", "--add", "sarali-1", "--tala", "own: I4 + O")).Code);
        var drills = Plan().GetProperty("drills").EnumerateArray().ToList();
        Assert.Equal(["tisra-jati eka", "tisra-jati eka"], Meters("own-1"));
        Assert.Equal(["chatusra-jati eka", "chatusra-jati eka"], Meters("alankara-7"));
        Assert.All(Meters("own-3"), m => Assert.StartsWith("Adi", m, StringComparison.OrdinalIgnoreCase));
        Assert.All(Meters("own-4"), m => Assert.Equal(6, Meter.Parse(m).Beats));

        // The plan is read back with its own talas.
        Assert.Equal(0, Shell.Run("plan", "--plan", _shell.At("plan of mine/plan.json"), "--day", "2026-12-01", "--out", _shell.At("day")).Code);

        IEnumerable<string> Meters(string exercise) => drills.Where(d => d.GetProperty("exercise").GetString() == exercise).Select(d => d.GetProperty("meter").GetString()!);
    }

    [Theory]
    [InlineData("--tala 'adi' follows no --add", "--tala", "adi")]
    [InlineData("--tala 'eka' follows no --add", "--add", "ladder", "--tala", "adi", "--tala", "eka")]
    [InlineData("--add, ", "--add", "nosuch")]
    [InlineData("--tala, ", "--add", "ladder", "--tala", "nosuch")]
    [InlineData("--tempo, ", "--tempo", "60 to 72")]
    [InlineData("whole aksharas or beats a minute", "--tempo", "60 to 72 by 1/2")]
    [InlineData("there is no 'Wren' among the singers", "--without", "Wren")]
    [InlineData("leaves nobody", "--without", "heron")]
    [InlineData("--climb moves the tonic", "--climb", "4", "--tonic", "C4")]
    [InlineData("--climb must be a whole number between 1 and 7", "--climb", "8")]
    public void What_cannot_be_used_is_refused(string message, params string[] more)
    {
        var run = Shell.Run(New("heron.json", "mohanam", more));
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tempo_of_ones_own_is_the_plans_tempo()
    {
        Assert.Equal(0, Shell.Run([.. New("heron.json", "15", "--tempo", "50 to 56 by 3").Select(a => a == "6" ? "30" : a)]).Code);
        var tempi = Plan().GetProperty("days").EnumerateArray().SelectMany(d => d.GetProperty("drills").EnumerateArray()).Select(d => d.GetProperty("tempo").GetInt32()).Distinct().Order();
        Assert.Equal([50, 53, 56], tempi);
    }

    [Fact]
    public void Scales_are_called_as_they_were_typed()
    {
        var run = Shell.Run(New("heron.json", "hamsadhvani, 15"));
        Assert.Equal(["hamsadhvani", "Mayamalavagowla"], Strings(Plan().GetProperty("scales"), "name"));
        Assert.Contains("hamsadhvani", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Hamsadhwani", run.Out, StringComparison.Ordinal);
    }
}
