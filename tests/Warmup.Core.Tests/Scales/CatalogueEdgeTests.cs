namespace Warmup.Tests;

/// <summary>The catalogue's names at their edges. Source: the documented rules of what is found and what is suggested; distances are counted by hand.</summary>
public class CatalogueEdgeTests
{
    private static readonly ValueList<ScaleTone> Notes = Scale.Parse("S R1 M2 N2 S'").Ascent;

    private static Catalogue With(params ReadOnlySpan<string> names)
    {
        var catalogue = Catalogue.Default;
        foreach (var name in names)
        {
            catalogue = catalogue.With(new Scale(name, Notes));
        }

        return catalogue;
    }

    private static string Error(Catalogue catalogue, string text) => catalogue.TryRead(text, out _, out var error) ? "none" : error.Message;

    [Theory]
    [InlineData("qvzqvz1234", true)] // four letters changed are near
    [InlineData("qvzqv12345", false)] // five are not
    [InlineData("qvzqvzqvzq1234", true)] // four more
    [InlineData("qvzqvzqvzq12345", false)]
    public void A_name_at_most_four_letters_away_is_suggested(string typed, bool isNear) =>
        Assert.Equal(isNear, Error(With("Qvzqvzqvzq"), typed).EndsWith("did you mean Qvzqvzqvzq?", StringComparison.Ordinal));

    [Theory]
    [InlineData("qv12", true)] // half of the letters of a short word
    [InlineData("q123", false)]
    [InlineData("q", false)]
    public void A_short_name_is_suggested_where_half_of_it_is_right(string typed, bool isNear) =>
        Assert.Equal(isNear, Error(With("Qvzq"), typed).Contains("Qvzq", StringComparison.Ordinal));

    [Fact]
    public void The_three_nearest_are_suggested_and_of_equally_near_ones_the_first_by_name() => Assert.EndsWith(
        "did you mean Qvzqvz, Qvzqb, Qvzqc?", Error(With("Qvzqd", "Qvzqc", "Qvzqb", "Qvzqvz"), "qvzqvt"), StringComparison.Ordinal);

    [Fact]
    public void A_name_of_more_than_a_hundred_characters_finds_nothing()
    {
        Assert.NotNull(Catalogue.Default.Find("mohanam" + new string(' ', 93)));
        Assert.Null(Catalogue.Default.Find("mohanam" + new string(' ', 94)));
        Assert.NotEmpty(Catalogue.Default.Search("mohanam" + new string(' ', 94)));
    }

    [Theory]
    [InlineData("1", 1)]
    [InlineData(" 72 ", 72)]
    [InlineData("+15", 15)]
    public void A_number_names_its_parent(string text, int number) => Assert.Equal(Catalogue.Default.Parent(number).Scale, Catalogue.Default.Read(text));

    [Fact]
    public void A_spelling_is_a_plain_text()
    {
        var scale = new Scale("Courtyard", Notes);
        Assert.All((string[])["", " ", "a\n", new string('a', 101)], s => Assert.ThrowsAny<ArgumentException>(() => Catalogue.Default.With(scale, s)));
        Assert.ThrowsAny<ArgumentException>(() => Catalogue.Default.With(scale, "yard", ""));
        Assert.Equal(["yard", "court"], Catalogue.Default.With(scale, "yard", "court").Find("court")!.Spellings);
    }

    [Fact]
    public void A_spelling_of_two_added_scales_finds_the_first_and_no_name_is_taken_from_another()
    {
        var catalogue = Catalogue.Default.With(new Scale("One", Notes), "both").With(new Scale("Two", Scale.Parse("S R2 G3 S'").Ascent), "both", "mohanam");
        Assert.Equal("One", catalogue.Read("both").Name);
        Assert.Equal("Mohanam", catalogue.Read("mohanam").Name);
        Assert.Equal("Two", catalogue.Read("two").Name);
    }

    [Fact]
    public void A_row_tells_how_many_notes_it_has_up_and_down_and_its_parent()
    {
        CatalogueEntry Row(string name) => Catalogue.Default.Find(name)!;
        Assert.Equal(("5", 5, 5), (Row("mohanam").NoteCounts, Row("mohanam").NotesUp, Row("mohanam").NotesDown));
        Assert.Equal(("5-7", 5, 7), (Row("bilahari").NoteCounts, Row("bilahari").NotesUp, Row("bilahari").NotesDown));
        Assert.Equal("Mohanam (derived, parent 28)", Row("mohanam").ToString());
        Assert.Equal("Major (western)", Row("major").ToString());
    }

    [Theory]
    [InlineData("ka9", 3, "'9' is not a letter of IAST")]
    [InlineData("ka", 3, "'ka' has fewer than two syllables")]
    [InlineData("", 1, "'' has fewer than two syllables")]
    [InlineData("kakf", 4, "'f' is not a letter of IAST")]
    public void What_has_no_number_says_why(string name, int column, string words)
    {
        var error = Assert.Throws<WarmupFormatException>(() => Katapayadi.NumberOf(name)).Error;
        Assert.Equal((column, words), (error.Column, error.Message));
    }

    [Fact]
    public void A_shift_is_named_by_its_scale_and_its_note()
    {
        var shifts = Catalogue.Default.ShiftsOf(Catalogue.Default.Read("mohanam"));
        Assert.Equal(["Mohanam", "Mohanam from R2", "Mohanam from G3", "Mohanam from P", "Mohanam from D2"], shifts.Select(s => s.Shifted.Name));

        // A name of a hundred characters has no room for more.
        var longest = new Scale(new string('a', 92), Notes);
        Assert.Equal([longest.Name, longest.Name + " from R1", longest.Name + " from M2"], Catalogue.Default.ShiftsOf(longest).Take(3).Select(s => s.Shifted.Name));
        var longer = new Scale(new string('a', 93), Notes);
        Assert.Equal("mode from R1", Catalogue.Default.ShiftsOf(longer)[1].Shifted.Name);
    }

    [Fact]
    public void Notes_beyond_the_octave_are_left_aside_where_scales_are_compared()
    {
        var beyond = new Scale("Beyond", Scale.Parse("S R2 G3 P D2 S'").Ascent.Append(ScaleTone.Parse("R2'")).ToValueList(), Scale.Parse("S R2 G3 P D2 S'").Descent);
        Assert.Contains("Mohanam", Catalogue.Default.ShiftsOf(beyond)[0].Matches.Select(m => m.Scale.Name));
        Assert.DoesNotContain("Bilahari", Catalogue.Default.ShiftsOf(beyond)[0].Matches.Select(m => m.Scale.Name));
    }

    [Fact]
    public void A_run_reaches_three_octaves_at_either_end()
    {
        var scale = Catalogue.Default.Read("mohanam");
        Assert.Equal(16, scale.Run(ScaleTone.Parse("S___"), ScaleTone.Parse("S")).Count);
        Assert.Equal(16, scale.Run(ScaleTone.Parse("S'''"), ScaleTone.Parse("S")).Count);
        Assert.Throws<ArgumentOutOfRangeException>(() => scale.Run(ScaleTone.Parse("S____"), ScaleTone.Parse("S")));
        Assert.Throws<ArgumentOutOfRangeException>(() => scale.Run(ScaleTone.Parse("S''''"), ScaleTone.Parse("S")));
        Assert.Throws<ArgumentOutOfRangeException>(() => scale.Run(ScaleTone.Parse("S"), ScaleTone.Parse("S____")));
    }

    [Fact]
    public void Scales_are_equal_by_name_and_both_lists()
    {
        var (up, down) = (Scale.Parse("S R2 G3 S'"), Scale.Parse("S R1 G3 S'"));
        var scale = new Scale("a", up.Ascent, up.Descent);
        Assert.Equal(new Scale("a", up.Ascent), scale);
        Assert.NotEqual(new Scale("b", up.Ascent), scale);
        Assert.NotEqual(new Scale("a", down.Ascent, up.Descent), scale);
        Assert.NotEqual(new Scale("a", up.Ascent, down.Descent), scale);
        Assert.Equal(["S", "R1", "R2", "G3"], new Scale("a", up.Ascent, down.Descent).Degrees.Select(d => d.ToString()));
        Assert.Equal("descent", Assert.Throws<ArgumentException>(() => new Scale("a", up.Ascent, [])).ParamName);
        Assert.Equal("ascent", Assert.Throws<ArgumentException>(() => new Scale("a", [], up.Descent)).ParamName);
    }

    [Theory]
    [InlineData("C4", "S", "C4")]
    [InlineData("B##4", "N3", "A###5")]
    [InlineData("B##4", "R3", null)] // C with four sharps
    [InlineData("Fbb4", "G1", null)] // A with four flats
    [InlineData("C4", "R3", "D#4")]
    public void A_name_has_at_most_three_accidentals(string tonic, string tone, string? name)
    {
        if (name is null)
        {
            var refused = Assert.Throws<ArgumentOutOfRangeException>(() => Spelling.Name(ScaleTone.Parse(tone), NoteName.Parse(tonic)));
            Assert.Contains($"{tone} on {tonic} cannot be written", refused.Message, StringComparison.Ordinal);
            return;
        }

        Assert.Equal(name, Spelling.Name(ScaleTone.Parse(tone), NoteName.Parse(tonic)).ToString());
    }

    [Fact]
    public void A_kind_is_told_by_the_letters_up_and_down()
    {
        Assert.Equal(["svarantara", "audava", "shadava", "sampurna"], ((LetterCount[])[(LetterCount)4, (LetterCount)5, (LetterCount)6, (LetterCount)7]).Select(c => new ScaleKind(c, c).ToString()));
        Assert.Equal("audava-sampurna", Catalogue.Default.Find("bilahari")!.Kind!.ToString());
        Assert.Equal(new ScaleKind(LetterCount.Audava, LetterCount.Sampurna), ScaleKind.Parse(" Audava-SAMPURNA "));
        Assert.All((string[])["audava-", "-audava", "audava-x", "audava-shadava-sampurna", ""], t => Assert.False(ScaleKind.TryParse(t, out _, out _)));
        Assert.Null(Scale.Parse("S R2 G3 S'").Kind); // three letters
        Assert.Null(Scale.Parse("1 b3 4 b5 5 b7 1'").Kind); // a lowered fifth is no svara
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleKind((LetterCount)3, LetterCount.Audava));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ScaleKind(LetterCount.Audava, (LetterCount)8));
    }
}
