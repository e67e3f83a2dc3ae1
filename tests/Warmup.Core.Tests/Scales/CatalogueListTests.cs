namespace Warmup.Tests;

/// <summary>
/// Lists of scales as a person types them. Expectations: each form means what the catalogue's own searches find; columns are counted by hand.
/// </summary>
public class CatalogueListTests
{
    private static ValueList<Scale> Read(string text) => Catalogue.Default.TryReadList(text, out var scales, out var error) ? scales : throw error.ToException();

    [Fact]
    public void Names_numbers_and_written_scales_keep_their_order() =>
        Assert.Equal(
            [Catalogue.Default.Read("Bilahari"), Catalogue.Default.Parent(15).Scale, Scale.Parse("S R2 G3 P D2 S'")],
            Read(" Bilahari ,15,, S R2 G3 P D2 S' "));

    [Theory]
    [InlineData("hamsadhvani", "Hamsadhwani")]
    [InlineData("MOHANA", "Mohanam")]
    [InlineData("Śaṅkarābharaṇam", "Dhirasankarabharanam")]
    public void A_name_stays_as_it_was_typed(string typed, string known)
    {
        var scale = Assert.Single(Read($" {typed} "));
        Assert.Equal(typed, scale.Name);
        var entry = Catalogue.Default.Find(known)!;
        Assert.Equal((entry.Scale.Ascent, entry.Scale.Descent), (scale.Ascent, scale.Descent));
    }

    [Theory]
    [InlineData("all five-note scales", "audava")]
    [InlineData("Five-Note Scales", "audava")]
    [InlineData("all six-note scales", "shadava")]
    [InlineData("all seven-note scales", "sampurna")]
    [InlineData("audava-sampurna", "audava-sampurna")]
    public void A_kind_is_every_scale_of_that_kind(string text, string kind)
    {
        var scales = Read(text);
        Assert.NotEmpty(scales);
        Assert.All(scales, s => Assert.Equal(kind, s.Kind!.ToString()));
        Assert.Equal(Catalogue.Default.Entries.Count(e => e.Kind?.ToString() == kind), scales.Count);
    }

    [Fact]
    public void A_parent_comes_with_what_is_derived_from_it_and_parents_come_by_number()
    {
        Assert.Equal(Catalogue.Default.Entries.Where(e => e.Parent == 29).Select(e => e.Scale), Read("parent:29"));
        Assert.Equal(Enumerable.Range(1, 12).Select(n => Catalogue.Default.Parent(n).Scale), Read("parents:1-12"));
        Assert.Equal(Read("29"), Read("parents:29"));
        Assert.Equal([Catalogue.Default.Parent(71).Scale, Catalogue.Default.Parent(72).Scale], Read("parents:71-72"));
    }

    [Theory]
    [InlineData("", 1, "names no scale")]
    [InlineData(" , ", 1, "names no scale")]
    [InlineData("mohanam, nosuch", 10, "unknown scale 'nosuch'")]
    [InlineData("mohanam,S R2 H3 S'", 14, "H3")]
    [InlineData("parents:5-2", 1, "two that rise")]
    [InlineData("parents:1-2-3", 1, "between 1 and 72")]
    [InlineData("parent:73", 1, "between 1 and 72, not 'parent:73'")]
    public void A_piece_that_names_no_scale_is_refused_at_its_column(string text, int column, string message)
    {
        Assert.False(Catalogue.Default.TryReadList(text, out var scales, out var error));
        Assert.True(scales.IsEmpty);
        Assert.Equal((1, column), (error.Line, error.Column));
        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    // Common practice: tisra nadai is counted in the third speed; exercises are learnt in the 15th parent.
    [Theory]
    [InlineData(4, 1, 1)]
    [InlineData(3, 3, 3)]
    [InlineData(5, 3, 5)]
    [InlineData(7, 3, 7)]
    [InlineData(9, 3, 9)]
    public void A_gati_alone_means_its_usual_speed(int gati, int kalam, int notes) =>
        Assert.Equal((kalam, gati, (Rational)notes), (Speed.OfGati(gati).Kalam, Speed.OfGati(gati).Gati, Speed.OfGati(gati).NotesPerAkshara));

    [Fact]
    public void Exercises_are_learnt_in_the_fifteenth_parent() => Assert.Equal(Catalogue.Default.Parent(15).Scale, Repertoire.UsualScale);
}
