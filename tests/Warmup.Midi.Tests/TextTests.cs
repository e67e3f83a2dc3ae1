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
