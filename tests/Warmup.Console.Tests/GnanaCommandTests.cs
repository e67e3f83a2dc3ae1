namespace Warmup.Cli.Tests;

/// <summary><c>warmup gnana</c>: the sheet hides what the sound tells, and the key says it.</summary>
public sealed class GnanaCommandTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    private string[] Gnana(string file, params string[] more) => ["gnana", "--scale", "15", "--tonic", "C4", "--tempo", "60", "--out", _shell.At(file), .. more];

    private string[] Pages(string file) => File.ReadAllText(_shell.At(file)).Split('\f');

    [Fact]
    public void The_key_is_the_lines_of_the_library_for_the_same_seed()
    {
        var (code, output, error) = Shell.Run(Gnana("ear.txt", "--difficulty", "2", "--count", "3", "--seed", "7"));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains("ear.txt", output, StringComparison.Ordinal);
        var lines = SvaraGnana.Lines(Repertoire.UsualScale, 2, 3, 7).Expand(Repertoire.UsualScale).Lines;
        var key = string.Join(' ', Pages("ear.txt")[1].Split((char[])[' ', '|', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.All(lines.ToArray(), l => Assert.Contains(l.ToNotation(), key, StringComparison.Ordinal));
        Assert.DoesNotContain(lines[0].ToNotation(), string.Join(' ', Pages("ear.txt")[0].Split((char[])[' ', '|', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_seed_and_nothing_else_changes_the_files()
    {
        Assert.Equal(0, Shell.Run(Gnana("a.txt", "--seed", "1")).Code);
        Assert.Equal(0, Shell.Run(Gnana("b.txt", "--seed", "1")).Code);
        Assert.Equal(0, Shell.Run(Gnana("c.txt", "--seed", "2")).Code);
        Assert.Equal(Pages("a.txt"), Pages("b.txt"));
        Assert.NotEqual(Pages("a.txt")[1], Pages("c.txt")[1]);
    }

    [Fact]
    public void The_raised_note_is_named_in_the_key_alone()
    {
        Assert.Equal(0, Shell.Run(Gnana("r.txt", "--raised", "--difficulty", "1", "--count", "12")).Code);
        var (question, key) = (Pages("r.txt")[0], Pages("r.txt")[1]);
        var rows = key.Split('\n').Where(l => l.Contains("G3", StringComparison.Ordinal)).ToList();
        Assert.Equal(12, rows.Count);

        // Mayamalavagowla can rise at R1, M1 and D1: each row has one of R2, M2 and D2.
        Assert.All(rows, r => Assert.Equal(1, new[] { "R2", "M2", "D2" }.Count(n => r.Contains(n, StringComparison.Ordinal))));
        Assert.DoesNotContain(
            question.Split('\n').Where(l => !l.StartsWith("  arohana", StringComparison.Ordinal) && !l.StartsWith("  avarohana", StringComparison.Ordinal)),
            l => l.Contains("R2", StringComparison.Ordinal) || l.Contains("M2", StringComparison.Ordinal) || l.Contains("D2", StringComparison.Ordinal));
    }

    [Fact]
    public void The_sound_sings_a_vowel_and_notation_is_refused()
    {
        Assert.Equal(0, Shell.Run(Gnana("ear.mid")).Code);
        Assert.DoesNotContain("pa", System.Text.Encoding.ASCII.GetString(File.ReadAllBytes(_shell.At("ear.mid"))).Split("hear and write down")[^1], StringComparison.Ordinal);
        var (code, _, error) = Shell.Run(Gnana("ear.musicxml"));
        Assert.Equal(2, code);
        Assert.Contains("would be the answer", error, StringComparison.Ordinal);
        Assert.False(File.Exists(_shell.At("ear.musicxml")));
    }

    [Theory]
    [InlineData("--difficulty must be a whole number between 1 and 5", "--difficulty", "6")]
    [InlineData("--count must be a whole number between 1 and 100", "--count", "0")]
    [InlineData("--seed must be a whole number", "--seed", "x")]
    public void Wrong_numbers_are_refused_with_their_range(string said, params string[] options)
    {
        var (code, _, error) = Shell.Run(Gnana("ear.txt", options));
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }
}
