namespace Warmup.Tests;

/// <summary>
/// The flags of the catalogue's rows. Sources: the columns of the tables under Data, each row with its own; the ranks of the chakras are
/// common practice.
/// </summary>
public class ScalesCatalogueTests
{
    [Theory]
    [MemberData(nameof(ScalesTables.Kinds), MemberType = typeof(ScalesTables))]
    public void Kind_vakra_and_foreign_notes_agree_with_the_table(string[] row)
    {
        var entry = Catalogue.Default.Find(row[0])!;
        var (up, down) = (row[1].Split('-')[0], row[1].Split('-')[1]);
        Assert.Equal(up == down ? up : row[1], entry.Kind!.ToString());
        Assert.Equal(row[2] is "arohana" or "both", new Scale("up", entry.Scale.Ascent).IsVakra);
        Assert.Equal(row[2] is "avarohana" or "both", new Scale("down", entry.Scale.Descent.Reverse().ToValueList()).IsVakra);
        Assert.Equal(row[2] is "arohana" or "avarohana" or "both", entry.Scale.IsVakra);
        Assert.Equal(row[3], string.Join(' ', entry.ForeignNotes));
    }

    [Fact]
    public void The_foreign_notes_are_those_that_the_parent_lacks()
    {
        var derived = Catalogue.Default.Search(new ScaleQuery { Family = ScaleFamily.Derived });
        Assert.True(derived.Count >= 75);
        Assert.All(derived.ToArray(), e =>
        {
            var parent = Catalogue.Default.Parent(e.Parent!.Value).Scale;
            Assert.Equal(e.Scale.Degrees.Where(d => !parent.Contains(d)), e.ForeignNotes);
        });

        // Fourteen rows of the table have notes outside their parent.
        Assert.Equal(14, derived.Count(e => !e.ForeignNotes.IsEmpty));
    }

    [Theory]
    [MemberData(nameof(ScalesTables.Chakras), MemberType = typeof(ScalesTables))]
    public void A_parent_has_its_chakra_and_its_name_in_IAST(string[] row)
    {
        var entry = Catalogue.Default.Parent(int.Parse(row[0], System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal((row[1], row[2]), (entry.IastName, entry.Chakra));
        Assert.Equal("sampurna", entry.Kind!.ToString());
    }

    [Fact]
    public void Each_chakra_has_six_parents_with_one_pair_of_R_and_G()
    {
        foreach (var group in Catalogue.Default.Entries.Take(72).GroupBy(e => e.Chakra))
        {
            Assert.Equal(6, group.Count());
            Assert.Single(group.Select(e => (e.Scale.Ascent[1], e.Scale.Ascent[2])).Distinct());
        }
    }

    [Fact]
    public void Every_row_says_how_sure_it_is() =>
        Assert.All(Catalogue.Default.Entries.ToArray(), e => Assert.False(string.IsNullOrWhiteSpace(e.Source)));

    [Fact]
    public void There_are_72_parents_75_derived_scales_or_more_10_thaats_and_21_Western_scales()
    {
        var counts = Catalogue.Default.Entries.GroupBy(e => e.Family).ToDictionary(g => g.Key, g => g.Count());
        Assert.Equal((72, 10, 21), (counts[ScaleFamily.Parent], counts[ScaleFamily.Thaat], counts[ScaleFamily.Western]));
        Assert.InRange(counts[ScaleFamily.Derived], 75, int.MaxValue);
    }

    [Theory]
    [InlineData("Minor blues")]
    [InlineData("Locrian")]
    [InlineData("Chromatic")]
    public void A_scale_outside_the_svaras_has_no_kind(string name) => Assert.Null(Catalogue.Default.Find(name)!.Kind);

    [Theory]
    [InlineData("audava", LetterCount.Audava, LetterCount.Audava)]
    [InlineData(" Shadava-Sampurna ", LetterCount.Shadava, LetterCount.Sampurna)]
    public void A_kind_is_read(string text, LetterCount up, LetterCount down)
    {
        Assert.True(ScaleKind.TryParse(text, out var kind, out _));
        Assert.Equal(new ScaleKind(up, down), kind);
    }

    [Theory]
    [InlineData("")]
    [InlineData("audava-")]
    [InlineData("pentatonic")]
    [InlineData("audava-shadava-sampurna")]
    public void What_is_no_kind_is_refused_with_the_words(string text)
    {
        Assert.False(ScaleKind.TryParse(text, out _, out var error));
        Assert.Contains("sampurna", error.Message, StringComparison.Ordinal);
    }
}
