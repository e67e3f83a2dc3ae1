namespace Warmup.Voices.Tests;

/// <summary>
/// Source: the frequencies of the studies beside each case; the classical ranges as usually given (after McKinney); notes from Hz by
/// 69 + 12 log2(Hz / 440).
/// </summary>
public class VoiceTypeTests
{
    [Theory]
    [InlineData("child 7-10, lower quartile", 220, 784)] // Schneider et al. 2010
    [InlineData("child 7-10, upper quartile", 196, 1047)] // Schneider et al. 2010
    [InlineData("girl 6-8, working range", 220.28, 775.90)] // Ivane and Trinite 2021
    [InlineData("girl 9-10, working range", 208.79, 842.20)] // Ivane and Trinite 2021
    [InlineData("girl 11-12, working range", 208.23, 933.46)] // Ivane and Trinite 2021
    public void Measured_ranges_are_the_nearest_notes_of_their_frequencies(string name, double low, double high)
    {
        var type = VoiceTypes.Find(name)!;
        Assert.Equal(VoiceRangeKind.Measured, type.Kind);
        Assert.Equal((Midi(low), Midi(high)), (type.Low.Midi, type.High.Midi));

        static int Midi(double hz) => (int)Math.Round(69 + (12 * Math.Log2(hz / 440)));
    }

    [Theory]
    [InlineData("Soprano", "C4", "C6")]
    [InlineData("mezzo-soprano", "A3", "A5")]
    [InlineData("contralto", "F3", "F5")]
    [InlineData("tenor", "C3", "C5")]
    [InlineData("baritone", "G2", "G4")]
    [InlineData("bass", "E2", "E4")]
    public void Classical_voices_span_two_octaves(string name, string low, string high)
    {
        var type = VoiceTypes.Find(name)!;
        Assert.Equal((low, high, 24, VoiceRangeKind.Classical), (type.Low.ToString(), type.High.ToString(), type.High.Midi - type.Low.Midi, type.Kind));
        Assert.False(type.IsComfortable);
    }

    [Fact]
    public void Every_type_says_how_sure_it_is_and_where_it_comes_from() => Assert.All(VoiceTypes.All, t =>
    {
        Assert.Matches("read|memory|own setting", t.HowSure);
        Assert.NotEmpty(t.Source);
        Assert.True(t.Low.Midi < t.High.Midi);
        Assert.Equal(t.Kind == VoiceRangeKind.ProjectSetting, t.HowSure.Contains("own setting", StringComparison.Ordinal));
    });

    [Fact]
    public void Children_and_changing_voices_carry_a_caution() => Assert.All(
        VoiceTypes.All.Where(t => t.IsComfortable && (t.Name.Contains("child", StringComparison.Ordinal) || t.Name.Contains("changing", StringComparison.Ordinal))),
        t => Assert.NotEmpty(t.Caution));

    [Fact]
    public void An_unknown_type_is_none() => Assert.Null(VoiceTypes.Find("whistler"));
}
