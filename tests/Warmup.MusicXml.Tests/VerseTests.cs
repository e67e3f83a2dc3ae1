namespace Warmup.MusicXml.Tests;

/// <summary>
/// Verses, melisma and words. Source: the W3C's MusicXML 4.0 documentation of lyric, syllabic, extend and slur; the expected syllables are
/// counted by hand for lines of two to eight notes.
/// </summary>
public class VerseTests
{
    private static readonly Score Two = (Drills.Of(pattern: "ladder.take(3).drop(1)") with { Delivery = Delivery.LineByLine }).ToScore();

    [Fact]
    public void Up_to_three_verses_stand_under_the_notes_each_with_its_number()
    {
        var options = new MusicXmlOptions { FurtherVerses = [MusicXmlVerse.Of(Syllables.Vowel("la")), MusicXmlVerse.OfWords(["one", "two"])] };
        Assert.Equal("S R G S R G M", Verse(Two, options, 1));
        Assert.Equal("la la la la la la la", Verse(Two, options, 2));
        Assert.Equal("one two one one two one two", Verse(Two, options, 3)); // from the beginning of each line
    }

    [Fact]
    public void Words_are_joined_by_hyphens_and_go_on_over_empty_syllables()
    {
        var options = new MusicXmlOptions { FurtherVerses = [MusicXmlVerse.OfWords(["lan-", "tern", "", "glow-"])] };

        // The last hyphen of a line joins nothing.
        Assert.Equal("lan- -tern_ . lan- -tern_ . glow", Verse(Two, options, 2));
        var eight = (Drills.Of(pattern: "ladder.drop(6)") with { Delivery = Delivery.LineByLine }).ToScore();
        Assert.Equal("lan- -tern_ . glow- -lan- -tern_ . glow", Verse(eight, options, 2));
    }

    [Fact]
    public void Syllables_that_are_sung_are_joined_by_their_hyphens_too()
    {
        string[] sung = ["lan-", "tern", "", "glow"];
        var line = new Line([.. sung.Select(s => default(LineNote) with { Sung = s })]);
        Assert.Equal("lan- -tern_ . glow", Verse((Drills.Of() with { Expansion = new([line]) }).ToScore(), new(), 1));
    }

    [Fact]
    public void A_line_on_one_syllable_has_a_slur_and_a_line_behind_the_syllable()
    {
        var options = new MusicXmlOptions { HasOneSyllableALine = true };
        Assert.Equal("S_ . . S_ . . .", Verse(Two, options, 1));
        var slurs = ReadScore.Of(Two, options).Notes.Where(n => !n.IsRest && (!n.TieStop || !n.TieStart)).Select(n => n.Slur ?? ".");

        // The last note of each line is tied over the groups of Adi: the slur ends where its sound ends.
        Assert.Equal("start . . stop start . . . stop", string.Join(' ', slurs));
        Assert.Equal(2, ReadScore.Of(Two, options).All("slur").Count(s => (string?)s.Attribute("type") == "stop"));
        Assert.Empty(ReadScore.Of(Two).All("slur"));
        Assert.Empty(ReadScore.Of(Two).All("extend"));
    }

    [Fact]
    public void A_slur_ends_with_its_line_also_where_lines_run_on()
    {
        var read = ReadScore.Of(Drills.Of(pattern: "ladder.take(2)").ToScore(), new() { HasOneSyllableALine = true });
        Assert.Equal("start stop start . stop", string.Join(' ', read.Notes.Where(n => !n.IsRest).Select(n => n.Slur ?? ".")));
    }

    [Fact]
    public void A_line_of_one_note_has_no_slur() =>
        Assert.Empty(ReadScore.Of(Drills.Of(pattern: "figure(1).take(4)").ToScore(), new() { HasOneSyllableALine = true }).All("slur"));

    [Fact]
    public void More_than_two_further_verses_and_words_without_a_beginning_are_refused()
    {
        var verse = MusicXmlVerse.OfWords(["a"]);
        Assert.Contains("between 0 and 2, not 3", Assert.Throws<ArgumentOutOfRangeException>(() => new MusicXmlOptions { FurtherVerses = [verse, verse, verse] }).Message, StringComparison.Ordinal);
        Assert.Contains("between 1 and 10000", Assert.Throws<ArgumentException>(() => MusicXmlVerse.OfWords([])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => MusicXmlVerse.OfWords(["", "a"]));
        Assert.Equal(MusicXmlVerse.OfWords(["a", "b"]), MusicXmlVerse.OfWords(["a", "b"]));
        Assert.NotEqual(MusicXmlVerse.OfWords(["a"]), MusicXmlVerse.OfWords(["b"]));
    }

    [Fact]
    public void A_control_character_in_the_words_is_refused_before_the_first_byte()
    {
        using var stream = new MemoryStream();
        var format = new MusicXmlFormat(new() { FurtherVerses = [MusicXmlVerse.OfWords(["a", "b\u0007"])] });
        Assert.Contains("U+0007 at position 2", Assert.Throws<ExportException>(() => format.Write(Two, stream)).Message, StringComparison.Ordinal);
        Assert.Equal(0, stream.Length);
    }

    private static string Verse(Score score, MusicXmlOptions options, int number) => string.Join(
        ' ', ReadScore.Of(score, options).Notes.Where(n => !n.IsRest && !n.TieStop).Select(n => n.Verse(number) ?? "."));
}
