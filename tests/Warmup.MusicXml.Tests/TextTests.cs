using System.Text;

namespace Warmup.MusicXml.Tests;

/// <summary>Titles and syllables as people type them. Source: XML 1.0, sections 2.2 (characters) and 2.4 (markup).</summary>
public class TextTests
{
    public static TheoryData<string> Titles =>
    [
        "a < b & c > d \"e\" 'f'", "]]>", "&amp;", "\U0001F3B6 \U0001F469\u200D\U0001F3A4", "\u05E9\u05DC\u05D5\u05DD \u0645\u0631\u062D\u0628\u0627",
        "\u0938\u0930\u0917\u092E", new string('x', 10_000), string.Concat(Enumerable.Repeat("\U0001F3B6", 5_000)), "x" + string.Concat(Enumerable.Repeat("\U0001F3B6", 4_999)),
        new string('&', 10_000), "",
    ];

    [Theory]
    [MemberData(nameof(Titles))]
    public void A_title_reads_back_as_it_was_typed(string title)
    {
        var bytes = ReadScore.Bytes((Drills.Of() with { Title = title }).ToScore());
        Assert.Equal(title, ReadScore.Of(bytes).All("work-title").SingleOrDefault()?.Value ?? string.Empty);
    }

    [Theory]
    [InlineData("<la>")]
    [InlineData("\u0C38\u0C30\u0C3F")]
    public void A_syllable_reads_back_as_it_was_typed(string vowel) =>
        Assert.All(ReadScore.Of((Drills.Of() with { Syllables = Syllables.Vowel(vowel) }).ToScore()).Sung(), n => Assert.Equal(vowel, n.Lyric));

    // The characters as numbers, since an attribute cannot hold a lone surrogate.
    [Fact]
    public void Sections_have_their_titles_and_a_double_bar_between_them()
    {
        var read = ReadScore.Of(Samples.All["three sections"]);
        Assert.Equal(["One", "Two", "Three"], read.Words.Where(w => w.Attribute("font-weight") is not null).Select(w => w.Value));
        Assert.Equal(["light-light", "light-light", "light-heavy"], Right(read).Where(b => b != "regular"));
        Assert.Equal(["60", "80", "60"], read.All("per-minute").Select(p => p.Value));

        // The line before the second section is said again in its first measure, which has dashed lines inside.
        var second = read.Measures.First(m => m.Element.Descendants("words").Any(w => w.Value == "Two")).Element;
        Assert.Equal("light-light", second.Elements("barline").Single(b => (string?)b.Attribute("location") == "left").Element("bar-style")!.Value);

        static IEnumerable<string> Right(ReadScore read) =>
            read.All("barline").Where(b => (string?)b.Attribute("location") == "right").Select(b => b.Element("bar-style")!.Value);
    }

    [Fact]
    public void Attributes_are_restated_where_they_change_and_not_otherwise()
    {
        var twice = ReadScore.Of(Drills.Join([Drills.Of(), Drills.Of(pattern: "ladder.reversed")]));
        Assert.Single(twice.All("key"));
        Assert.Single(twice.All("time"));
        Assert.Single(twice.All("clef"));
        var changing = ReadScore.Of(Samples.All["three sections"]);
        Assert.Equal(["4", "0", "0"], changing.All("fifths").Select(f => f.Value));
        Assert.Equal("F", Assert.Single(changing.All("clef")).Element("sign")!.Value);
    }

    [Fact]
    public void A_hidden_signature_is_restated_where_a_bar_is_longer_or_shorter_and_not_where_a_section_begins()
    {
        static Drill Free(string pattern) => Drills.Of(pattern: pattern) with { Meter = Meter.Free };
        static string Beats(params Drill[] drills) => string.Join(' ', ReadScore.Of(Drills.Join(drills)).All("beats").Select(b => b.Value));
        Assert.Equal("3", Beats(Free("[S R G]"), Free("[G R S]")));
        Assert.Equal("3 4", Beats(Free("[S R G]"), Free("[G R S P]")));
        Assert.Equal("3 8 3", Beats(Free("[S R G]"), Drills.Of(pattern: "[S R G]"), Free("[S R G]")));
    }

    [Fact]
    public void The_bytes_are_plain_UTF8()
    {
        var bytes = ReadScore.Bytes((Drills.Of() with { Title = "\u00E9" }).ToScore());
        Assert.True(bytes.AsSpan().IndexOf("<work-title>\u00C3\u00A9"u8) < 0);
        Assert.True(bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes("<work-title>\u00E9</work-title>")) > 0);
    }
}
