using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>Text as people type it. Expectations are written by hand.</summary>
public class TextTests
{
    [Theory]
    [InlineData("S R G , / R G M -", "S R1 G3 ", 2)]
    [InlineData("> S R G M | P D N S' ||\n> S' N D P | M G R S ||", "", 2)]
    [InlineData("1. sa ri ga ma\n2) ri ga ma pa", "", 2)]
    [InlineData("do re mi fa", "", 1)]
    [InlineData("1 2 3 / 2 3 4", "", 2)]
    [InlineData("S\u0307 N D \u2013 P", "", 1)]
    public void Lines_are_read(string text, string begins, int lines)
    {
        var section = Assert.Single(Read(text).Sections);
        Assert.Equal(lines, section.Lines.Count);
        Assert.StartsWith(begins, section.Lines[0].ToTones() + " ", StringComparison.Ordinal);
    }

    [Fact]
    public void A_mail_gives_title_scale_tonic_tala_and_tempo_and_says_what_it_left_out()
    {
        var music = Read("Morning drill\nScale: mohanam\nTonic: G3\nTala: rupaka\nTempo: 72\n\nS R G P\nplease hum the next line softly\nS' D P G\n");
        var section = music.Sections[0];
        Assert.Equal(("Morning drill", "Mohanam", "G3", new Rational(72)), (music.Title, section.Scale.Name, section.Tonic.ToString(), section.Tempo));
        Assert.Equal(Meter.Parse("rupaka"), section.Meter);
        Assert.Equal(["S R2 G3 P", "S' D2 P G3"], section.Lines.Select(l => l.ToTones()));
        var remark = Assert.Single(music.Remarks);
        Assert.Equal((RemarkKind.Words, new PiecePlace(PlaceKind.TextLine, 8)), (remark.Kind, remark.Place));
    }

    [Theory]
    [InlineData("Speed: 2", 1, 2)]
    [InlineData("kalam: speed 3", 1, 4)]
    [InlineData("Gati: tisra", 1, 3)]
    [InlineData("Nadai: tisra nadai", 1, 3)]
    [InlineData("", 1, 1)]
    public void The_unit_of_typed_lines_is_a_note_of_the_speed_that_they_name(string head, int numerator, int denominator)
    {
        var section = Read($"{head}\nS R G ,").Sections[0];
        var unit = new Rational(numerator, denominator);
        Assert.Equal([unit, unit, 2 * unit], section.ToScore().Sections[0].Notes.Select(n => n.Length));
        Assert.Equal((unit, "S R G ,"), (section.LetterLength, section.ToNotation(0)));
    }

    [Fact]
    public void Variants_choose_the_scale() => Assert.All(["R2", "G3", "D2"], v => Assert.True(Read("S R2 G3 P D2 S'").Sections[0].Scale.Contains(Degree.Parse(v))));

    [Fact]
    public void Dots_over_and_under_letters_are_octaves() =>
        Assert.Equal("N3_ S S'", Read("\u1E46 S \u1E60").Sections[0].Lines[0].ToTones());

    [Theory]
    [InlineData("S R G\nS R x G P", 2, 5)]
    [InlineData("Scale: nonesuch\nS R G", 1, 8)]
    [InlineData("S R 3 G", 1, 5)]
    [InlineData("Speed: 9\nS R G", 1, 8)]
    public void A_fault_has_its_line_and_column(string text, int line, int column)
    {
        var fault = Assert.Throws<ReadingException>(() => Read(text));
        Assert.Equal(new PiecePlace(PlaceKind.TextLine, line, column), fault.Place);
    }

    [Fact]
    public void Text_that_is_no_UTF8_is_refused_with_its_line()
    {
        var fault = Assert.Throws<ReadingException>(() => MusicReader.Read((byte[])[.. "S R G\n"u8, 0x53, 0xE9, 0x20]));
        Assert.Equal(2, fault.Place.Number);
    }

    [Theory]
    [InlineData("")]
    [InlineData("  \n")]
    [InlineData("dear all, see you on Monday")]
    [InlineData("\u0001\u0002")]
    public void What_holds_no_notes_is_refused(string text) => Assert.Throws<ReadingException>(() => Read(text));

    private static ReadMusic Read(string text) => MusicReader.Read(Encoding.UTF8.GetBytes(text));
}
