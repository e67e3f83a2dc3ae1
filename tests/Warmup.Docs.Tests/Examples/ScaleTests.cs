namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on adding a scale.</summary>
public sealed class ScaleTests
{
    [Fact]
    public void A_scale_in_a_catalogue_of_ones_own()
    {
        #region scale in a program
        var notes = Scale.Parse("S R1 G3 P D1 S' / S' N3 D1 P M1 G3 R1 S");
        var dusk = new Scale("Dusk", notes.Ascent, notes.Descent);
        var catalogue = Catalogue.Default.With(dusk, "evening scale", "sandhya");
        var found = catalogue.Find("Evening Scale");
        #endregion

        // Five letters up, seven down; the two differ, so the scale is not symmetric, and no list bends.
        Assert.Equal(dusk, found?.Scale);
        Assert.Equal("audava-sampurna", dusk.Kind?.ToString());
        Assert.False(dusk.IsSymmetric);
        Assert.False(dusk.IsVakra);
        Assert.Null(Catalogue.Default.Find("Evening Scale"));
    }

    [Fact]
    public void What_to_look_at_before_a_scale_is_trusted()
    {
        #region scale looked at
        var scale = Scale.Parse("S R1 G3 P D1 S' / S' N3 D1 P M1 G3 R1 S");
        Console.WriteLine(Pattern.Run.Expand(scale).ToLetters());
        Console.WriteLine(Pattern.Run.Reversed().Expand(scale).ToLetters());
        Console.WriteLine(Pattern.Ladder.ThereAndBack().Expand(scale).ToLetters());
        #endregion

        Assert.Equal("S R G P D S'", Pattern.Run.Expand(scale).ToLetters());
        Assert.Equal("S' N D P M G R S", Pattern.Run.Reversed().Expand(scale).ToLetters());
        Assert.StartsWith("S R S / S R G R S / S R G P M G R S", Pattern.Ladder.ThereAndBack().Expand(scale).ToLetters(), StringComparison.Ordinal);
    }
}
