using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Tests;

/// <summary>The generators' own shares: at least 30 % of scales that differ up and down, 20 % that zigzag, and enough drills that can be sung.</summary>
public class GeneratorTests
{
    [Fact]
    public void Enough_scales_differ_up_and_down_and_enough_zigzag()
    {
        var scales = Gen.Sample(Generators.Scales, 2_000, 50).ToList();
        Assert.True(scales.Count(s => !s.IsSymmetric) >= 600, scales.Count(s => !s.IsSymmetric).ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(scales.Count(s => s.IsVakra) >= 400, scales.Count(s => s.IsVakra).ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Most_drills_can_be_sung()
    {
        var drills = Gen.Sample(Generators.Drills, 300, 50).ToList();
        var sung = drills.Count(d => d.TryToScore(out _, out _));
        Assert.True(sung >= 150, sung.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Scores_have_several_sections_and_all_that_time_can_bring() =>
        ScoreShares.AssertEnough(Generators.Scores, 600, seed: 1, line => TestContext.Current.TestOutputHelper?.WriteLine(line));
}
