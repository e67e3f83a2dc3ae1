using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Sources: the table of derived scales (rows on which two public lists agree are held strictly, the others must be found and
/// read), the Western scales as two public scale dictionaries have them, and the ten thaats (common practice; a general audio-analysis
/// library agrees). The usual spellings in the theory below are from memory.
/// </summary>
public class CatalogueTests
{
    private const string Strict = "two public lists agree";

    public static TheoryData<string> DerivedNames => [.. Tables.Derived.Select(r => r["name"])];

    public static TheoryData<string> WesternNames => [.. Tables.Western.Where(r => !r["scale"].StartsWith("melodic minor", StringComparison.Ordinal)).Select(r => r["scale"])];

    public static TheoryData<string> ThaatNames => [.. Tables.Thaats.Select(r => r["thaat"])];

    private static Scale Read(string text)
    {
        Assert.True(Catalogue.Default.TryRead(text, out var scale, out var error), $"{text}: {error}");
        return scale!;
    }

    private static IEnumerable<int> Semitones(ValueList<ScaleTone> tones) => tones.Select(t => t.Semitones);

    [Theory]
    [MemberData(nameof(DerivedNames))]
    public void Each_derived_scale_has_the_notes_of_its_row(string name)
    {
        var row = Tables.Derived.Single(r => r["name"] == name);

        // Every row must be readable as written, whatever the catalogue holds.
        var vakra = Scale.TryParse($"{row["arohana"]} / {row["avarohana"]}", out var written, out _) ? string.Empty : "vakra: ";
        written ??= Scale.Parse($"{vakra}{row["arohana"]} / {row["avarohana"]}");
        Assert.Equal(row.Wholes("arohana_semitones"), Semitones(written.Ascent));
        Assert.Equal(row.Wholes("avarohana_semitones"), Semitones(written.Descent));

        var entry = Catalogue.Default.Find(name);
        if (row["status"] != Strict && entry is null)
        {
            return;
        }

        Assert.NotNull(entry);
        Assert.Same(entry, Catalogue.Default.Find(row["alias"]));
        Assert.Equal((ScaleFamily.Derived, (int?)row.Whole("mela")), (entry.Family, entry.Parent));
        Assert.NotEmpty(entry.Source);
        if (row["status"] == Strict)
        {
            Assert.Equal((row["arohana"], row["avarohana"]), (string.Join(' ', entry.Scale.Ascent), string.Join(' ', entry.Scale.Descent)));
            Assert.Equal(row.Wholes("arohana_semitones"), Semitones(entry.Scale.Ascent));
            Assert.Equal(row.Wholes("avarohana_semitones"), Semitones(entry.Scale.Descent));
        }
        else
        {
            Assert.False(entry.Source.StartsWith(Strict, StringComparison.Ordinal), entry.Source);
        }

        // Fourteen rows have notes outside their parent, each flagged by the table.
        if (row["svaras_outside_parent"].Length == 0)
        {
            var parent = Catalogue.Default.Parent(row.Whole("mela")).Scale;
            Assert.All(entry.Scale.Degrees, d => Assert.True(parent.Contains(d), $"{name}: {d}"));
        }
    }

    [Fact]
    public void The_catalogue_has_the_scales_that_are_asked_for()
    {
        var derived = Catalogue.Default.Entries.Where(e => e.Family == ScaleFamily.Derived).ToList();
        Assert.True(derived.Count(e => e.Scale.IsSymmetric && e.Scale.Degrees.Count is 5 or 6) >= 12);
        Assert.True(derived.Count(e => !e.Scale.IsSymmetric) >= 6);
        Assert.All(
            Tables.Derived.Where(r => r["status"] == Strict),
            r => Assert.NotNull(Catalogue.Default.Find(r["name"])));
        Assert.Equal(73, Tables.Derived.Count(r => r["status"] == Strict));
    }

    [Theory]
    [MemberData(nameof(WesternNames))]
    public void Each_western_scale_has_the_published_semitones(string name)
    {
        var row = Tables.Western.Single(r => r["scale"] == name);
        // The table writes "suspended/egyptian pentatonic" for two names and "blues minor hexatonic" for the dictionary's minor blues.
        var kind = name.EndsWith(" pentatonic", StringComparison.Ordinal) ? " pentatonic" : string.Empty;
        var names = name == "blues minor hexatonic" ? ["minor blues"] : name[..^kind.Length].Split('/');
        foreach (var one in names)
        {
            var scale = Read(one + kind);
            Assert.Equal(row.Wholes("semitones"), Semitones(scale.Ascent).Select(s => s % 12).Distinct().Order());
            Assert.Equal(row.Wholes("semitones"), Semitones(scale.Descent).Select(s => s % 12).Distinct().Order());
            if (row["equal_melakarta"].Length > 0)
            {
                Assert.Equal(Semitones(Catalogue.Default.Parent(row.Whole("equal_melakarta")).Scale.Ascent), Semitones(scale.Ascent));
            }
        }
    }

    [Fact]
    public void The_melodic_minor_is_one_scale_that_differs_up_and_down()
    {
        var up = Tables.Western.Single(r => r["scale"] == "melodic minor (ascending)");
        var down = Tables.Western.Single(r => r["scale"] == "melodic minor (descending)");
        var scale = Read("melodic minor");
        Assert.Equal(up.Wholes("semitones").Append(12), Semitones(scale.Ascent));
        Assert.Equal(down.Wholes("semitones").Append(12).Reverse(), Semitones(scale.Descent));
        Assert.False(scale.IsSymmetric);
    }

    [Fact]
    public void The_chromatic_scale_goes_up_in_sharps_and_down_in_flats()
    {
        var scale = Read("chromatic");
        Assert.Equal(Enumerable.Range(0, 13), Semitones(scale.Ascent));
        Assert.Equal(Enumerable.Range(0, 13).Reverse(), Semitones(scale.Descent));
        Assert.All(scale.Ascent, t => Assert.True(t.Degree.Alteration >= 0, t.ToString()));
        Assert.All(scale.Descent, t => Assert.True(t.Degree.Alteration <= 0, t.ToString()));
    }

    [Theory]
    [MemberData(nameof(ThaatNames))]
    public void Each_thaat_has_the_notes_of_the_parent_it_equals(string name)
    {
        var row = Tables.Thaats.Single(r => r["thaat"] == name);
        var scale = Read(name + " thaat");
        Assert.Equal(row.Wholes("semitones").Append(12), Semitones(scale.Ascent));
        Assert.Equal(Catalogue.Default.Parent(row.Whole("equal_melakarta")).Scale.Ascent, scale.Ascent);
        Assert.Equal(scale, Read("thaat " + name));
        Assert.True(scale.IsSymmetric);
        Assert.Equal(ScaleFamily.Thaat, Catalogue.Default.Find(name + " thaat")!.Family);
        Assert.Same(Catalogue.Default.Find(row["mela_name"]), Catalogue.Default.Parent(row.Whole("equal_melakarta")));
    }

    [Theory] // usual spellings, from memory
    [InlineData("Shankarabharanam", "Dhirashankarabharanam")]
    [InlineData("sankarabharanam", "Dhirashankarabharanam")]
    [InlineData("Śaṅkarābharaṇam", "Dhirashankarabharanam")]
    [InlineData("Mayamalavagaula", "Mayamalavagowla")]
    [InlineData("mayamalava gowla", "Mayamalavagowla")]
    [InlineData("Kalyani", "Mechakalyani")]
    [InlineData("Keeravani", "Kiravani")]
    [InlineData("Shanmugapriya", "Shanmukhapriya")]
    [InlineData("Karaharapriya", "Kharaharapriya")]
    [InlineData("mohana", "Mohanam")]
    [InlineData("MOHANAM", "Mohanam")]
    [InlineData("Hamsadhvani", "Hamsadhwani")]
    [InlineData("haṃsadhvani", "Hamsadhwani")]
    [InlineData("Shivaranjani", "Sivaranjani")]
    [InlineData("Bilahari", "Bilahari")]
    public void Usual_spellings_are_forgiven(string typed, string name) => Assert.Equal(name, Read(typed).Name);

    [Theory]
    [InlineData("Mohanzm", "Mohanam")]
    [InlineData("bilahori", "Bilahari")]
    [InlineData("hamsadwhani", "Hamsadhwani")]
    [InlineData("Kharaharapria", "Kharaharapriya")]
    [InlineData("Mayamalavagoulai", "Mayamalavagowla")]
    [InlineData("Harikambodhi", "Harikambhoji")]
    [InlineData("doriam", "Dorian")]
    [InlineData("mixolydan", "Mixolydian")]
    public void A_near_miss_is_forgiven_or_suggests_the_nearest(string typed, string nearest)
    {
        if (Catalogue.Default.TryRead(typed, out var scale, out var error))
        {
            Assert.Equal(nearest, scale!.Name);
            return;
        }

        Assert.Contains(nearest, error!.Message, StringComparison.OrdinalIgnoreCase);
        Assert.Contains(typed, error.Message, StringComparison.Ordinal);
    }

    [Property(MaxTest = 300)]
    public Property One_wrong_letter_suggests_the_right_name() => Prop.ForAll(
        (from number in Gen.Choose(1, 72)
         let name = Tables.Melakarta[number - 1]["name"]
         from place in Gen.Choose(1, name.Length - 2)
         select (Name: name, Typed: name[..place] + 'x' + name[(place + 1)..])).ToArbitrary(),
        p =>
        {
            Assert.False(Catalogue.Default.TryRead(p.Typed, out _, out var error), p.Typed);
            Assert.Contains(p.Name, error!.Message, StringComparison.Ordinal);
        });

    [Fact]
    public void No_two_rows_answer_to_one_name()
    {
        var entries = Catalogue.Default.Entries;
        Assert.Equal(entries.Count, entries.Select(e => e.Scale.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        foreach (var entry in entries)
        {
            Assert.Same(entry, Catalogue.Default.Find(entry.Scale.Name));
            // A spelling of two scales is refused with both, and tested below.
            foreach (var spelling in entry.Spellings.Where(s => s != "asavari"))
            {
                Assert.True(ReferenceEquals(entry, Catalogue.Default.Find(spelling)), $"{spelling} of {entry.Scale.Name} finds {Catalogue.Default.Find(spelling)?.Scale.Name}");
            }
        }
    }

    [Fact]
    public void A_name_of_two_scales_offers_both()
    {
        Assert.False(Catalogue.Default.TryRead("asavari", out _, out var error));
        Assert.Contains("Asaveri (S R1 M1 P D1 S')", error.Message, StringComparison.Ordinal);
        Assert.Contains("Asavari thaat (S R2 G2 M1 P D1 N2 S')", error.Message, StringComparison.Ordinal);
        Assert.Equal("Asaveri", Catalogue.Default.Read("asaveri").Name);
        Assert.Equal("Asavari thaat", Catalogue.Default.Read("asavari thaat").Name);
        Assert.Equal(["Asaveri", "Asavari thaat"], Catalogue.Default.Search("asavari").Select(e => e.Scale.Name));
        Assert.Equal(["Nata", "Chalanata", "Gambhiranata"], Catalogue.Default.Search("nattai").Select(e => e.Scale.Name)); // the one that is called so first
    }

    [Theory]
    [InlineData("nattai", "Nata")]
    [InlineData("naatai", "Nata")]
    [InlineData("hansadhvani", "Hamsadhwani")]
    [InlineData("Hansadhwani", "Hamsadhwani")]
    public void Usual_spellings_are_read_and_found(string typed, string name)
    {
        Assert.Equal(name, Catalogue.Default.Read(typed).Name);
        Assert.Contains(Catalogue.Default.Search(typed), e => e.Scale.Name == name);
    }

    [Fact]
    public void Every_row_says_where_it_comes_from() => Assert.All(Catalogue.Default.Entries, e => Assert.NotEmpty(e.Source));

    [Fact]
    public void Every_scale_is_written_out_and_read_back()
    {
        foreach (var entry in Catalogue.Default.Entries)
        {
            var scale = entry.Scale;
            Assert.True(Scale.TryParse(scale.ToText(), out var read, out var error), $"{scale.Name}: {scale.ToText()}: {error}");
            Assert.Equal(scale, read);
            Assert.Equal(scale, Read(scale.ToText()));
            var unnamed = Read(scale.ToNotesText());
            Assert.Equal((scale.Ascent, scale.Descent), (unnamed.Ascent, unnamed.Descent));
            Assert.Equal(scale.ToNotesText(), unnamed.ToText());
        }
    }

    [Fact]
    public void Searching_finds_every_row_that_holds_the_text()
    {
        Assert.Equal(Catalogue.Default.Entries, Catalogue.Default.Search(string.Empty));
        foreach (var text in new[] { "priya", "PRIYA", "kalyani", "minor", "Śaṅkarā" })
        {
            var found = Catalogue.Default.Search(text);
            Assert.NotEmpty(found);
            if (text.All(char.IsAscii))
            {
                Assert.All(Catalogue.Default.Entries.Where(e => e.Scale.Name.Contains(text, StringComparison.OrdinalIgnoreCase)), e => Assert.Contains(e, found));
            }
        }

        Assert.Empty(Catalogue.Default.Search("no such scale at all"));
        Assert.Contains(Catalogue.Default.Search("Śaṅkarā"), e => e.Parent == 29);
    }

    [Fact]
    public void A_scale_that_is_added_is_found_before_the_librarys_and_leaves_the_first_catalogue_alone()
    {
        var own = new Scale("Mohanam", Scale.Parse("S R1 G3 P D1 S'").Ascent);
        var more = Catalogue.Default.With(own, "studio scale");
        Assert.Equal(own, more.Find("mohanam")!.Scale);
        Assert.Equal(own, more.Read("Studio Scale"));
        Assert.Equal(ScaleFamily.Custom, more.Find("mohanam")!.Family);
        Assert.Equal(Catalogue.Default.Entries.Count + 1, more.Entries.Count);
        Assert.NotEqual(own, Catalogue.Default.Read("mohanam"));
        Assert.Null(Catalogue.Default.Find("studio scale"));
        Assert.Equal(15, more.Parent(15).Parent);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("qqqqqqqqqqqqqqqqqqq")]
    [InlineData(",")]
    [InlineData(",R2 G3")]
    [InlineData("-")]
    [InlineData("'")]
    public void An_unknown_name_is_an_error_with_a_place(string typed)
    {
        Assert.False(Catalogue.Default.TryRead(typed, out var scale, out var error));
        Assert.Null(scale);
        Assert.True(error!.Line == 1 && error.Column >= 1 && error.Message.Length > 0);
        Assert.Equal(error, Assert.Throws<WarmupFormatException>(() => Catalogue.Default.Read(typed)).Error);
    }

    [Fact]
    public void A_very_long_name_is_refused_quickly_and_shortly()
    {
        Assert.False(Catalogue.Default.TryRead(new string('a', 1_000_000), out _, out var error));
        Assert.True(error!.Message.Length < 500);
    }
}
