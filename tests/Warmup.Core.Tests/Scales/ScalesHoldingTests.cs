namespace Warmup.Tests;

/// <summary>Which scale is this: expectations from the rows of the catalogue, counted here once more by the letters of their text.</summary>
public class ScalesHoldingTests
{
    private static string[] Find(string text) =>
        Catalogue.Default.TryFindHolding(text, out var found, out var error) ? [.. found.Select(e => e.Scale.Name)] : throw new InvalidOperationException(error.Message);

    private static HashSet<char> Letters(CatalogueEntry entry) =>
        [.. $"{string.Join(' ', entry.Scale.Ascent)} {string.Join(' ', entry.Scale.Descent)}".Where("SRGMPDN".Contains)];

    [Theory]
    [InlineData("S R G P N")]
    [InlineData("s r g p n")]
    public void Five_letters_find_every_scale_that_holds_them(string text)
    {
        var found = Find(text);
        var derived = Catalogue.Default.Entries.Where(e => e.Family == ScaleFamily.Derived).ToList();
        Assert.Equal(
            derived.Where(e => "SRGPN".All(Letters(e).Contains)).Select(e => e.Scale.Name).Order(StringComparer.Ordinal),
            found.Where(n => derived.Exists(e => e.Scale.Name == n)).Order(StringComparer.Ordinal));
        Assert.Equal("Hamsadhwani", found[0]); // S R2 G3 P N3: the one row with these letters and no other
        Assert.Equal(72, Catalogue.Default.Entries.Count(e => e.Family == ScaleFamily.Parent && found.Contains(e.Scale.Name)));
        Assert.DoesNotContain("Mohanam", found);
        Assert.DoesNotContain("Abhogi", found);
    }

    [Fact]
    public void The_nearest_come_first()
    {
        Assert.True(Catalogue.Default.TryFindHolding("S R G P D", out var found, out _));
        var others = found.Where(e => e.Kind is not null).Select(e => Letters(e).Count - 5).ToList();
        Assert.Equal(others.Order(), others);
        Assert.Equal(0, others[0]);
        Assert.Equal(["Mohanam", "Sivaranjani", "Bhupalam", "Revagupti"], found.Take(4).Select(e => e.Scale.Name));
    }

    [Theory]
    [InlineData("S R2 G3 P N", "Hamsadhwani", "Kharaharapriya")]
    [InlineData("G2 d n", "Kharaharapriya", "Mayamalavagowla")]
    [InlineData("1 b3 P N2", "Suddha Dhanyasi", "Hamsadhwani")]
    public void A_svara_with_its_form_is_held_to_it(string text, string holds, string lacks)
    {
        Assert.Contains(holds, Find(text));
        Assert.DoesNotContain(lacks, Find(text));
    }

    [Theory]
    [InlineData("", "S R G P N", 1)]
    [InlineData("S r G", "capitals", 3)]
    [InlineData("S R X", "'X'", 5)]
    public void What_is_no_letter_is_refused_with_its_place(string text, string said, int column)
    {
        Assert.False(Catalogue.Default.TryFindHolding(text, out var found, out var error));
        Assert.Empty(found);
        Assert.Contains(said, error.Message, StringComparison.Ordinal);
        Assert.Equal(column, error.Column);
        Assert.False(Catalogue.Default.TryFindHolding(new string('S', 401), out _, out error));
        Assert.Contains("400", error.Message, StringComparison.Ordinal);
        Assert.False(Catalogue.Default.TryFindHolding(null, out _, out _));
    }

    [Fact]
    public void A_scale_of_the_caller_is_found()
    {
        var catalogue = Catalogue.Default.With(new Scale("Courtyard three", Scale.Parse("S R1 P S'").Ascent), "yard");
        Assert.True(catalogue.TryFindHolding("S R P", out var found, out _));
        Assert.Equal("Courtyard three", found[0].Scale.Name);
    }
}
