using System.Text;

namespace Warmup.Midi.Tests;

/// <summary>Text in files: ASCII by the standard, UTF-8 on request; RP-017 for lyrics.</summary>
public class TextTests
{
    private static readonly MidiOptions Utf8 = new() { Text = MidiTextEncoding.Utf8 };

    [Theory]
    [InlineData("Māyāmāḷavagauḻa", "Mayamalavagaula")]
    [InlineData("Śaṅkarābharaṇam – ṛṣi", "Sankarabharanam - rsi")]
    [InlineData("e\u0301tude", "etude")]
    [InlineData("E♭ “low”", "Eb \"low\"")]
    [InlineData("ராகம் 1", "????? 1")]
    [InlineData("𝄞 clef", "? clef")]
    public void Names_lose_their_marks_in_ASCII_and_what_has_no_letter_becomes_a_question_mark(string title, string ascii)
    {
        var bytes = RawFile.Of((Files.Drill() with { Title = title }).ToScore()).Tracks[0][0].Data;
        Assert.Equal(ascii, Encoding.Latin1.GetString(bytes));
    }

    [Theory]
    [InlineData("Māyāmāḷavagauḻa")]
    [InlineData("ராகம் 𝄞")]
    public void Names_are_kept_in_UTF_8(string title)
    {
        var bytes = RawFile.Of((Files.Drill() with { Title = title }).ToScore(), Utf8).Tracks[0][0].Data;
        Assert.Equal(Encoding.UTF8.GetBytes(title), bytes);
    }

    [Theory]
    [InlineData("a")]
    [InlineData("brrrr")]
    [InlineData("straws")] // six letters
    [InlineData("strawsy")]
    [InlineData("strawsys")]
    [InlineData("strawsystraws")]
    [InlineData("~ !")] // the ends of what ASCII prints
    public void A_syllable_of_any_length_has_its_space_and_its_end_of_line(string syllable)
    {
        var score = (Files.Drill(pattern: "ladder.take(2)") with { Syllables = Syllables.Vowel(syllable) }).ToScore();
        foreach (var options in (MidiOptions[])[new(), Utf8, new() { IsSingleTrack = true }, new() { HasRunningStatus = true }])
        {
            var lyrics = RawFile.Of(score, options).Tracks.SelectMany(t => t).Where(e => e.IsMeta(0x05)).Select(e => e.Text);
            Assert.Equal([$"{syllable} ", $"{syllable} \r", $"{syllable} ", $"{syllable} ", $"{syllable} \r"], lyrics);
        }
    }

    [Theory]
    [InlineData("a\u0300b\u036Fc", "abc")] // combining marks, from the first to the last of the block
    [InlineData("a\u02FF", "a?")]
    [InlineData("a\u0370", "a?")]
    [InlineData("×·½", "x.?")]
    public void Combining_marks_fall_away_in_ASCII_and_nothing_beside_them(string title, string ascii) =>
        Assert.Equal(ascii, RawFile.Of((Files.Drill() with { Title = title }).ToScore()).Tracks[0][0].Text);

    [Theory]
    [InlineData(127)]
    [InlineData(128)]
    [InlineData(129)]
    public void Long_titles_are_whole_in_both_encodings(int length)
    {
        var title = new string('x', length - 1) + "ā";
        var score = (Files.Drill() with { Title = title }).ToScore();
        Assert.Equal(title[..^1] + "a", RawFile.Of(score).Tracks[0][0].Text);
        Assert.Equal(title, RawFile.Of(score, Utf8).Tracks[0][0].Text);
        Assert.Equal(new string('x', length), RawFile.Of((Files.Drill() with { Title = new string('x', length) }).ToScore()).Tracks[0][0].Text);
    }

    [Fact]
    public void The_place_of_a_syllable_that_cannot_be_written_is_told()
    {
        static Line Line(params string[] sung) => new([.. sung.Select(s => default(LineNote) with { Sung = s })]);
        Score Score(params Line[] lines) => (Files.Drill() with { Expansion = new([.. lines]) }).ToScore();
        static string Refused(Score score) => Assert.Throws<ExportException>(() => Files.Bytes(score)).Message;
        Assert.StartsWith("line 2, note 3: the syllable 'அ' has no ASCII form", Refused(Score(Line("a", "e"), Line("a", "e", "அ"))), StringComparison.Ordinal);
        Assert.StartsWith("section 2, line 1, note 2: the syllable 'அ' has no ASCII form", Refused(Warmup.Score.Join("two", [Score(Line("a")), Score(Line("a", "அ"))])), StringComparison.Ordinal);
        Assert.StartsWith("line 1, note 2: the syllable 'a[' holds '['", Refused(Score(Line("a", "a["))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_syllable_with_marks_loses_them_in_ASCII_and_keeps_them_in_UTF_8()
    {
        var score = (Files.Drill(pattern: "ladder.take(1)") with { Syllables = Syllables.Vowel("ā") }).ToScore();
        Assert.Equal(["a ", "a \r"], Lyrics(score, null));
        Assert.Equal(["ā ", "ā \r"], Lyrics(score, Utf8));
    }

    [Fact]
    public void A_syllable_without_an_ASCII_form_is_refused_with_its_place_and_written_in_UTF_8()
    {
        var score = (Files.Drill(pattern: "ladder.take(1)") with { Syllables = Syllables.Vowel("அ") }).ToScore();
        var refused = Assert.Throws<ExportException>(() => Files.Bytes(score));
        Assert.StartsWith("line 1, note 1: the syllable 'அ'", refused.Message, StringComparison.Ordinal);
        Assert.Equal(["அ ", "அ \r"], Lyrics(score, Utf8));
        Assert.Empty(Lyrics(score, new MidiOptions { HasLyrics = false }));
    }

    [Fact]
    public void A_title_longer_than_127_bytes_keeps_its_length()
    {
        var title = new string('x', Warmup.Drill.LongestTitle);
        Assert.Equal(title, RawFile.Of((Files.Drill() with { Title = title }).ToScore()).Tracks[0][0].Text);
    }

    private static string[] Lyrics(Score score, MidiOptions? options) =>
        [.. RawFile.Of(score, options).Tracks[1].Where(e => e.IsMeta(0x05)).Select(e => e.Text)];
}
