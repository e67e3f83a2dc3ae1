using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>Files as somebody hands them over, by name and content.</summary>
public class HandedOverTests
{
    [Theory]
    [InlineData("lesson 3.txt", "lesson 3")]
    [InlineData("C:\\drills\\lesson 3.txt", "lesson 3")]
    [InlineData("drills/.txt", "")]
    [InlineData("", "")]
    public void What_has_no_title_has_the_name_of_its_file(string name, string title)
    {
        Assert.True(MusicReader.TryRead(name, "S R G"u8.ToArray(), null, out var music, out var refusal));
        Assert.Equal((title, title, null), (music.Title, music.Sections[0].Title, refusal));
        Assert.True(MusicReader.TryRead(name, "Title: mine\nS R G"u8.ToArray(), null, out music, out _));
        Assert.Equal("mine", music.Title);
    }

    [Theory]
    [InlineData("a.txt", "S R x", "line 1, column 5")]
    [InlineData("a.mid", "MThd", "byte 4")]
    [InlineData("a.mscx", "<museScore/>", "export it as MusicXML")]
    [InlineData("a.pdf", "%PDF-1.7", "as MusicXML or MIDI")]
    [InlineData("a.WAV", "RIFF", "recording")]
    [InlineData("a.docx", "PK", "plain text")]
    [InlineData("a.txt", "", "empty")]
    public void A_refusal_is_one_line_that_says_where_and_what_to_do(string name, string text, string words)
    {
        Assert.False(MusicReader.TryRead(name, Encoding.UTF8.GetBytes(text), null, out var music, out var refusal));
        Assert.Null(music);
        Assert.Contains(words, refusal, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', refusal);
        Assert.InRange(refusal.Length, 10, 600);
    }

    [Fact]
    public void Options_count() => Assert.True(
        MusicReader.TryRead("a.txt", "S R G"u8.ToArray(), new ReadingOptions { Tonic = Tonic.Parse("G3") }, out var music, out _) && music.Sections[0].Tonic.ToString() == "G3");

    [Fact]
    public void The_endings_begin_with_a_dot() => Assert.All(MusicReader.Endings, e => Assert.StartsWith(".", e, StringComparison.Ordinal));
}
