namespace Warmup.Tests;

/// <summary>The catalogue's searches against a plain walk over the rows' texts; named results are common practice.</summary>
public class ScalesSearchTests
{
    private static readonly string[] LooseNames =
        ["S", "R1", "R2", "R3", "G1", "G2", "G3", "M1", "M2", "P", "D1", "D2", "D3", "N1", "N2", "N3"];

    private static readonly int[] LooseSemitones = [0, 1, 2, 3, 2, 3, 4, 5, 6, 7, 8, 9, 10, 9, 10, 11];

    [Fact]
    public void Scales_that_contain_svaras_hold_each_of_them_by_name()
    {
        var found = Find(new ScaleQuery { Contains = Degrees("R2 G2 M2 D2") });
        Assert.Equal(Expected(e => new[] { "R2", "G2", "M2", "D2" }.All(Words(e).Contains)), found);
        Assert.Contains("Hemavati", found);
        Assert.Contains("Ranjani", found);
        Assert.DoesNotContain("Kharaharapriya", found);
    }

    [Fact]
    public void A_svara_is_not_its_twin_on_the_same_semitone()
    {
        Assert.Contains("Kanakangi", Find(new ScaleQuery { Contains = Degrees("G1 N1") }));
        Assert.DoesNotContain("Kanakangi", Find(new ScaleQuery { Contains = Degrees("R2") }));
    }

    [Fact]
    public void Scales_of_an_equal_pitch_set_are_found_across_families()
    {
        var found = Find(new ScaleQuery { EqualTo = Degrees("S R2 G3 P D2") });
        Assert.Equal(["Mohanam", "Major pentatonic"], found);
        Assert.Equal(found, Find(new ScaleQuery { EqualTo = Degrees("1 2 3 5 6") }));
        Assert.Equal(
            [
                "Dhirashankarabharanam", "Bilahari", "Arabhi", "Devagandhari", "Begada", "Nilambari", "Atana", "Garudadhvani", "Janaranjani",
                "Kadanakutuhalam", "Behag", "Maand", "Bilaval thaat", "Major",
            ],
            Find(new ScaleQuery { EqualTo = Degrees("do re mi fa sol la ti") }));
    }

    [Fact]
    public void Scales_one_note_away_have_one_more_one_less_or_one_other()
    {
        var set = Set("S R2 G3 P D2");
        var found = Find(new ScaleQuery { OneNoteFrom = Degrees("S R2 G3 P D2") });
        Assert.Equal(
            Expected(e =>
            {
                var own = Pitches(e);
                var (more, less) = (own.Except(set).Count(), set.Except(own).Count());
                return (more, less) is (1, 0) or (0, 1) or (1, 1);
            }),
            found);
        Assert.Contains("Hamsadhwani", found); // N3 for D2
        Assert.Contains("Suddha Saveri", found); // M1 for G3
        Assert.Contains("Sivaranjani", found); // G2 for G3
        Assert.DoesNotContain("Mohanam", found);
    }

    [Fact]
    public void Scales_without_P_have_it_in_neither_list()
    {
        var found = Find(new ScaleQuery { Without = Degrees("P") });
        Assert.Equal(Expected(e => !Words(e).Contains("P")), found);
        Assert.Contains("Hindolam", found);
        Assert.Contains("Sriranjani", found);
        Assert.DoesNotContain("Navarasakannada", found);
    }

    [Theory]
    [InlineData(5, 5, "Mohanam", "Bilahari")]
    [InlineData(5, 7, "Bilahari", "Mohanam")]
    [InlineData(4, 6, "Navarasakannada", "Mohanam")]
    public void Notes_are_counted_in_each_list(int up, int down, string with, string without)
    {
        var found = Find(new ScaleQuery { NotesUp = up, NotesDown = down });
        Assert.Equal(Expected(e => NotesIn(e.Scale.Ascent) == up && NotesIn(e.Scale.Descent) == down), found);
        Assert.Contains(with, found);
        Assert.DoesNotContain(without, found);
    }

    [Fact]
    public void A_parent_is_found_with_its_children()
    {
        var found = Find(new ScaleQuery { Parent = 15 });
        Assert.Equal(
            [
                "Mayamalavagowla", "Revagupti", "Bauli", "Malahari", "Saveri", "Gowla", "Jaganmohini", "Nadanamakriya", "Lalita", "Paras",
                "Bhairav thaat",
            ],
            found);
    }

    [Fact]
    public void Conditions_are_joined()
    {
        var query = new ScaleQuery { Kind = new ScaleKind(LetterCount.Audava, LetterCount.Audava), Parent = 22, Text = "suddha" };
        Assert.Equal(["Suddha Dhanyasi"], Find(query));
        Assert.Equal(14, Find(new ScaleQuery { HasForeignNotes = true }).Length);
        Assert.All(Catalogue.Default.Search(new ScaleQuery { IsVakra = true }).ToArray(), e => Assert.StartsWith("vakra:", e.Scale.ToNotesText(), StringComparison.Ordinal));
    }

    [Fact]
    public void No_condition_finds_all_and_an_impossible_one_none()
    {
        Assert.Equal(Catalogue.Default.Entries, Catalogue.Default.Search(new ScaleQuery()));
        Assert.Empty(Find(new ScaleQuery { Contains = Degrees("P"), Without = Degrees("P") }));
    }

    [Fact]
    public void A_scale_of_the_caller_is_found_like_the_library_s_own()
    {
        var catalogue = Catalogue.Default.With(new Scale("Courtyard five", Scale.Parse("S R1 G2 P D2 S'").Ascent), "yard");
        Assert.Contains(catalogue.Search(new ScaleQuery { EqualTo = Degrees("S R1 G2 P D2") }).ToArray(), e => e.Scale.Name == "Courtyard five");
        Assert.Single(catalogue.Search(new ScaleQuery { Family = ScaleFamily.Custom }).ToArray());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(13)]
    public void A_count_of_notes_out_of_range_is_refused(int notes)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleQuery { NotesUp = notes });
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleQuery { NotesDown = notes });
    }

    [Theory]
    [InlineData(0)]
    [InlineData(73)]
    public void A_parent_s_number_out_of_range_is_refused(int number)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleQuery { Parent = number });
        Assert.Contains("between 1 and 72", refused.Message, StringComparison.Ordinal);
    }

    private static ValueList<Degree> Degrees(string text) =>
        Degree.TryParseList(text, out var degrees, out var error) ? degrees : throw error!.ToException();

    private static string[] Find(ScaleQuery query) => [.. Catalogue.Default.Search(query).Select(e => e.Scale.Name)];

    private static string[] Expected(Func<CatalogueEntry, bool> wanted) => [.. Catalogue.Default.Entries.Where(wanted).Select(e => e.Scale.Name)];

    private static HashSet<string> Words(CatalogueEntry entry) =>
        [.. entry.Scale.ToNotesText().Split([' ', '/', ':'], StringSplitOptions.RemoveEmptyEntries).Select(w => w.TrimEnd('\'', '_'))];

    private static int NotesIn(ValueList<ScaleTone> tones) => tones.Select(t => t.ToString().TrimEnd('\'', '_')).Distinct().Count();

    private static HashSet<int> Set(string svaras) => [.. svaras.Split(' ').Select(s => LooseSemitones[Array.IndexOf(LooseNames, s)])];

    private static HashSet<int> Pitches(CatalogueEntry entry) =>
        [.. entry.Scale.Ascent.Concat(entry.Scale.Descent).Select(t => ((t.Semitones % 12) + 12) % 12)];
}
