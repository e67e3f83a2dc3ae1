namespace Warmup.Sheets.Tests;

/// <summary>Which letters stand on a sheet whose words do not say the tone. Source: movable do, as choirs read it (common practice).</summary>
public class ChoirLettersTests
{
    private static Score Choir(string scale, Func<Drill, Drill>? change = null)
    {
        var exercise = Repertoire.Find("choir-7")!;
        var drill = new Drill { Scale = Catalogue.Default.Read(scale), Pattern = exercise.Pattern, Tonic = Tonic.Parse("C4"), Meter = exercise.Meter, Speeds = [exercise.Speed] };
        return (change?.Invoke(drill) ?? drill).ToScore();
    }

    private static IEnumerable<string> Letters(Score score)
    {
        var sheet = Sheet.Of(score);
        return score.Sections[0].Scale.Ascent.Take(5).Select(t => sheet.ToneOf(t).Letter);
    }

    [Fact]
    public void Vowels_in_four_four_are_written_in_solfa() => Assert.Equal(["do", "re", "mi", "fa", "sol"], Letters(Choir("major")));

    [Fact]
    public void A_lowered_third_has_its_own_syllable() => Assert.Equal(["do", "re", "me", "fa", "sol"], Letters(Choir("natural minor")));

    [Fact]
    public void In_a_tala_and_where_svaras_are_sung_svara_letters_stay()
    {
        Assert.Equal(["S", "R", "G", "M", "P"], Letters(Choir("major", d => d with { Meter = Meter.Adi })));
        Assert.Equal(["S", "R", "G", "M", "P"], Letters(Choir("major", d => d with { Pattern = Pattern.Parse("run.notes(1 5)") })));
    }
}
