namespace Warmup.Cli.Tests;

/// <summary>The options that say how a drill is counted; the expected sheets follow from the rules of gati, kalam and fill.</summary>
public sealed class TimeOptionTests : IDisposable
{
    private readonly Shell _shell = new();

    public void Dispose() => _shell.Dispose();

    [Theory]
    [InlineData("--tala", "rupaka", "chatusra-jati rupaka (2+4)")]
    [InlineData("--tala", "rupaka-chapu", "rupaka-chapu (3)")]
    [InlineData("--tala", "2+2+3/8", "Time    2+2+3/8, ")]
    [InlineData("--tala", "free", "Time    free, ")]
    [InlineData("--gati", "3", "tisra nadai, three to the akshara")] // with another gati than 4 the third speed is meant
    [InlineData("--gati", "tisra", "tisra nadai, three to the akshara")]
    [InlineData("--gati", "Sankirna", "sankirna nadai, nine to the akshara")]
    [InlineData("--gati", "chatusra", "speed 1, continuous")]
    [InlineData("--speeds", "trikalam", "35 lines, 140 notes")] // seven times the five lines and twenty notes of the ladder
    [InlineData("--speed", "4", "speed 4, continuous")]
    [InlineData("--speeds", "1,2,3", "speed 1 then speed 2 then speed 3")]
    [InlineData("--fill", "avartana", "each line filled up to the avartana by a hold")]
    [InlineData("--count-in", "2", "Count   2 avartanas before the first line")]
    public void Each_option_shows_on_the_sheet(string option, string value, string expected)
    {
        var (code, _, error) = Shell.Run(_shell.Drill((option, value), ("--out", _shell.At("a.txt"))));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(expected, File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("alankara-5", null, "Time    tisra-jati triputa (3+2+2), ")] // the fifth alankara is in triputa (common practice)
    [InlineData("alankara-2", null, "chatusra-jati matya (4+2+4), ")] // and the second in matya
    [InlineData("alankara-5", "adi", "Time    Adi (4+2+2), ")]
    [InlineData("choir-7", null, "Time    4/4, 60 beats a minute, 2 notes a beat")] // choirs sing in four, at two notes a beat
    public void An_exercise_is_named_as_a_pattern_and_brings_its_tala(string exercise, string? tala, string expected)
    {
        (string, string)[] options = [("--pattern", exercise), ("--out", _shell.At("a.txt"))];
        var (code, _, error) = Shell.Run(_shell.Drill(tala is null ? options : [.. options, ("--tala", tala)]));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains(expected, File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);
        Assert.StartsWith($"Mohanam: {Repertoire.Find(exercise)!.Title}\n", File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--tala", "khanda chap", "perhaps khanda chapu")]
    [InlineData("--tala", "0/4", "between 1 and 64, not 0")]
    [InlineData("--gati", "6", "--gati must be tisra or chatusra or khanda or misra or sankirna or 3 or 4 or 5 or 7 or 9, not '6'")]
    [InlineData("--speed", "5", "--speed must be 1 or 2 or 3 or 4, not '5'")]
    [InlineData("--speeds", "1,,2", "--speeds must be 1 or 2 or 3 or 4, not ''")]
    [InlineData("--fill-by", "hold", "--fill-by needs lines that are filled up")]
    [InlineData("--fill", "half", "--fill must be none or anga or avartana, not 'half'")]
    [InlineData("--count-in", "9", "not '9'")]
    public void Wrong_values_are_refused_with_the_option_and_the_choices(string option, string value, string message)
    {
        var (code, _, error) = Shell.Run(_shell.Drill((option, value)));
        Assert.Equal(2, code);
        Assert.Contains(option, error, StringComparison.Ordinal);
        Assert.Contains(message, error, StringComparison.Ordinal);
        Assert.Empty(_shell.Files);
    }

    [Theory]
    [InlineData("--fill", "anga")]
    [InlineData("--count-in", "1")]
    public void Free_rhythm_has_nothing_to_fill_and_no_beat_to_count(string option, string value)
    {
        var (code, _, error) = Shell.Run(_shell.Drill((option, value), ("--tala", "free")));
        Assert.Equal(2, code);
        Assert.Contains($"{option} needs a meter", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 8 * 4)]
    [InlineData("hold", 16 * 4)]
    [InlineData("rest", 16 * 4)]
    public void A_line_that_fills_its_avartana_takes_another_only_for_a_hold_or_a_rest(string? by, int seconds)
    {
        // Sarali 2: four lines of eight svaras in Adi, at 60.
        (string, string)[] options = [("--pattern", "sarali-2"), ("--scale", "15"), ("--tempo", "60"), ("--delivery", "line-by-line"), ("--out", _shell.At("a.txt"))];
        var (code, _, error) = Shell.Run(_shell.Drill(by is null ? options : [.. options, ("--fill-by", by)]));
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Contains($"Length  {seconds}.0 s", File.ReadAllText(_shell.At("a.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void Speed_and_speeds_exclude_each_other()
    {
        var (code, _, error) = Shell.Run(_shell.Drill(("--speed", "1"), ("--speeds", "1,2")));
        Assert.Equal(2, code);
        Assert.Contains("not both", error, StringComparison.Ordinal);
    }
}
