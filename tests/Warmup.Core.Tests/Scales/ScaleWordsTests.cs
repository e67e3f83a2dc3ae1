namespace Warmup.Tests;

/// <summary>Names, forms and descriptions of scales at their edges. Sources: the documented text forms and bounds; scales worked out by hand.</summary>
public class ScaleWordsTests
{
    [Theory]
    [InlineData("Courtyard = S R2 G3 P D2 S'", "Courtyard", "S R2 G3 P D2 S'")]
    [InlineData("a = b = S R2 G3 P D2 S'", "a = b", "S R2 G3 P D2 S'")] // the last sign parts them
    [InlineData("Low = semitones: 0 4 7", "Low", "S G3 P S'")]
    [InlineData("semitones: 0 4 7", "semitones: 0 4 7", "S G3 P S'")]
    [InlineData("  S   G3\tP S' ", "S G3 P S'", "S G3 P S'")]
    [InlineData("Bend = vakra: S G3 R2 S'", "Bend", "S G3 R2 S'")]
    public void A_scale_written_out_has_the_name_before_it_or_its_own_text(string text, string name, string ascent)
    {
        var scale = Catalogue.Default.Read(text);
        Assert.Equal((name, ascent), (scale.Name, string.Join(' ', scale.Ascent)));
    }

    [Fact]
    public void A_text_too_long_for_a_name_gives_none()
    {
        // 24 notes with two marks each are longer than the hundred characters of a name.
        var text = $"vakra: S {string.Join(' ', Enumerable.Repeat("R2 G3", 11))} S' / S' {string.Join(' ', Enumerable.Repeat("G3 R2", 11))} S";
        Assert.Equal("written-out scale", Scale.Parse(text).Name);
    }

    [Theory]
    [InlineData(" = S R2 G3 P S'")]
    [InlineData("a\tb = S R2 G3 P S'")]
    public void A_name_that_is_none_is_refused(string text)
    {
        Assert.False(Scale.TryParse(text, out _, out var error));
        Assert.Equal(1, error.Column);
        Assert.StartsWith("the name '", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_search_asks_for_is_said_in_words()
    {
        Assert.Equal("any scale", new ScaleQuery().ToString());
        var query = new ScaleQuery
        {
            Text = "suddha", Contains = [Degree.Parse("R2"), Degree.Parse("G3")], Without = [Degree.Parse("P")], NotesUp = 5, Parent = 28,
        };
        Assert.Equal("named suddha, has R2 G3, without P, notes up 5, parent 28", query.ToString());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(12)]
    public void Counts_of_notes_go_from_2_to_12(int notes)
    {
        Assert.Equal(notes, new ScaleQuery { NotesUp = notes }.NotesUp);
        Assert.Equal(notes, new ScaleQuery { NotesDown = notes }.NotesDown);
    }

    [Fact]
    public void A_name_called_so_goes_before_names_that_hold_it()
    {
        var found = Catalogue.Default.Search("bhairavi").Select(e => e.Scale.Name).ToList();
        Assert.Equal("Bhairavi", found[0]);
        Assert.Contains(found, n => n != "Bhairavi" && n.Contains("hairavi", StringComparison.OrdinalIgnoreCase));
        Assert.Equal(Catalogue.Default.Entries, Catalogue.Default.Search(string.Empty));
    }

    [Theory]
    [InlineData("S R2 G3", new[] { 0, 2, 4 })]
    [InlineData("S G1 G2", new[] { 0, 2, 3 })] // other letters, the same pitches
    public void Notes_one_pitch_apart_are_neither_equal_nor_two_apart(string notes, int[] semitones)
    {
        // Of a catalogue of two: one with the very pitches, one with another third.
        var catalogue = Catalogue.Default
            .With(Scale.FromSemitones("Three alike", semitones))
            .With(Scale.FromSemitones("Three with another", [.. semitones[..^1], 5]))
            .With(Scale.FromSemitones("Three with two others", [0, 6, 8]));
        Assert.True(Degree.TryParseList(notes, out var degrees, out _));
        var custom = (Func<ScaleQuery, IEnumerable<string>>)(q => catalogue.Search(q).Where(e => e.Family == ScaleFamily.Custom).Select(e => e.Scale.Name));
        Assert.Equal(["Three alike"], custom(new ScaleQuery { EqualTo = degrees }));
        Assert.Equal(["Three with another"], custom(new ScaleQuery { OneNoteFrom = degrees }));
    }

    [Fact]
    public void A_scale_of_semitones_may_name_the_upper_tonic_or_leave_it_out()
    {
        Assert.Equal(Scale.FromSemitones("a", 0, 4, 7).Ascent, Scale.FromSemitones("a", 0, 4, 7, 12).Ascent);
        Assert.Equal("S G3 N3 S'", string.Join(' ', Scale.FromSemitones("a", 0, 4, 11).Ascent));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("a", 0, 12, 12));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("a"));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("a", 0, 4, 3));
        Assert.Throws<ArgumentException>(() => Scale.FromSemitones("a", -1, 4));
    }

    [Fact]
    public void A_name_of_a_hundred_letters_has_a_number_and_one_more_is_refused()
    {
        Assert.Equal(11, Katapayadi.NumberOf("kaka" + new string('a', 96)));
        Assert.Contains("not 101", Assert.Throws<WarmupFormatException>(() => Katapayadi.NumberOf("kaka" + new string('a', 97))).Message, StringComparison.Ordinal);
        Assert.Equal(0, Katapayadi.NumberOf("aña")); // a vowel alone and ña both are 0
        Assert.Equal(99, Katapayadi.NumberOf("dhaḷa"));
    }

    [Theory]
    [InlineData("mohanm", "Mohanam")]
    [InlineData("klyani", "Mechakalyani")] // the 65th parent by its whole name
    public void A_slip_is_told_at_most_three_near_names(string typed, string meant)
    {
        Assert.False(Catalogue.Default.TryRead(typed, out _, out var error));
        Assert.StartsWith($"unknown scale '{typed}'; did you mean ", error.Message, StringComparison.Ordinal);
        var names = error.Message.Split("did you mean ")[1].TrimEnd('?').Split(", ");
        Assert.InRange(names.Length, 1, 3);
        Assert.Equal(meant, names[0]);
    }

    [Fact]
    public void Nothing_near_is_told_where_the_names_are()
    {
        Assert.False(Catalogue.Default.TryRead("qqqqqqqq", out _, out var error));
        Assert.Equal("unknown scale 'qqqqqqqq'; list the names with the catalogue's search, or write the notes out: S R2 G3 P D2 S'", error.Message);
    }

    [Fact]
    public void A_shift_is_described_by_the_names_of_what_it_sounds_like()
    {
        // Mohanam from G3 is Hindolam (common practice).
        var shifts = Catalogue.Default.ShiftsOf(Catalogue.Default.Read("mohanam"));
        Assert.StartsWith("from G3: Hindolam", shifts.Single(s => s.Home == Degree.Parse("G3")).ToString(), StringComparison.Ordinal);
        var unknown = Scale.Parse("S R1 M2 N2 S'");
        Assert.Equal("from S: S R1 M2 N2 S'", Catalogue.Default.ShiftsOf(unknown)[0].ToString());
        Assert.Empty(Catalogue.Default.ShiftsOf(Catalogue.Default.Read("Nadanamakriya")));
    }
}
