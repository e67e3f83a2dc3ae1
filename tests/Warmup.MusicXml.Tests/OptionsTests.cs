namespace Warmup.MusicXml.Tests;

/// <summary>
/// What single options write. Sources: the W3C's MusicXML 4.0 documentation for the elements and the names of accidentals; which clef, paper and date
/// are written, by the options' own documentation.
/// </summary>
public class OptionsTests
{
    [Fact]
    public void A_date_is_written_where_one_is_given()
    {
        Assert.Equal("2026-03-05", Assert.Single(ReadScore.Of(Drills.Of().ToScore(), new() { Date = new DateOnly(2026, 3, 5) }).All("encoding-date")).Value);
        Assert.Empty(ReadScore.Of(Drills.Of().ToScore()).All("encoding-date"));
    }

    [Theory]
    [InlineData(MusicXmlClef.Treble, "G", "2", null)]
    [InlineData(MusicXmlClef.TrebleOctaveDown, "G", "2", "-1")]
    [InlineData(MusicXmlClef.Bass, "F", "4", null)]
    public void A_clef_that_is_wanted_is_written_on_any_tonic(MusicXmlClef wanted, string sign, string line, string? change)
    {
        foreach (var tonic in (string[])["C2", "C4", "C5"])
        {
            var clef = Assert.Single(ReadScore.Of(Drills.Of(tonic: tonic).ToScore(), new() { Clef = wanted }).All("clef"));
            Assert.Equal((sign, line, change), (clef.Element("sign")!.Value, clef.Element("line")!.Value, clef.Element("clef-octave-change")?.Value));
        }
    }

    [Theory]
    [InlineData("G#2", "G#2", "F", null)] // below A2, where men's tonics begin
    [InlineData("E3", "F3", "G", "-1")] // their mean lies below F3, where women's and children's begin
    [InlineData("E3", "F#3", "G", null)] // their mean is F3
    public void Of_several_tonics_their_mean_counts(string one, string other, string sign, string? change)
    {
        var clef = Assert.Single(ReadScore.Of(Drills.Join([Drills.Of(tonic: one), Drills.Of(tonic: other)])).All("clef"));
        Assert.Equal((sign, change), (clef.Element("sign")!.Value, clef.Element("clef-octave-change")?.Value));
    }

    [Theory]
    [InlineData(200, null, "0")]
    [InlineData(250, "quarter-sharp", "0.5")]
    [InlineData(150, "quarter-flat", "-0.5")]
    [InlineData(280, "sharp", "0.8")] // nearest in quarter tones: 1.6 of them, two
    [InlineData(120, "flat", "-0.8")]
    [InlineData(210, "natural", "0.1")]
    public void A_microtone_has_the_nearest_named_accidental(int cents, string? accidental, string alter)
    {
        // R2 on C is D; the tuning puts it elsewhere.
        var drill = Drills.Of(pattern: "[R]") with { Tuning = Tuning.Equal.With(Degree.Parse("R2"), Interval.FromCents(cents)) };
        var note = ReadScore.Of(drill.ToScore(), new() { HasMicrotones = true }).Notes.Single(n => !n.IsRest);
        Assert.Equal((accidental, decimal.Parse(alter, System.Globalization.CultureInfo.InvariantCulture)), (note.Accidental, note.Pitch!.Value.Alter));
    }

    [Theory]
    [InlineData("M2", 650, "three-quarters-sharp", "1.5")] // F sharp and a quarter tone
    [InlineData("M2", 700, "double-sharp", "2")]
    [InlineData("R1", 50, "three-quarters-flat", "-1.5")]
    [InlineData("R1", 0, "flat-flat", "-2")]
    public void A_microtone_beside_an_altered_letter_too(string svara, int cents, string accidental, string alter)
    {
        var drill = Drills.Of("S R1 G3 M2 P D2 N3 S'", $"[{svara[0]}]") with { Tuning = Tuning.Equal.With(Degree.Parse(svara), Interval.FromCents(cents)) };
        var note = ReadScore.Of(drill.ToScore(), new() { HasMicrotones = true }).Notes.Single(n => !n.IsRest);
        Assert.Equal((accidental, decimal.Parse(alter, System.Globalization.CultureInfo.InvariantCulture)), (note.Accidental, note.Pitch!.Value.Alter));
    }

    [Fact]
    public void Words_are_1_to_10_000_syllables()
    {
        Assert.Equal(10_000, MusicXmlVerse.OfWords(Enumerable.Repeat("la", 10_000).ToValueList()).Words.Count);
        Assert.Contains("not 10001", Assert.Throws<ArgumentException>(() => MusicXmlVerse.OfWords(Enumerable.Repeat("la", 10_001).ToValueList())).Message, StringComparison.Ordinal);
        Assert.Equal("lan- tern", MusicXmlVerse.OfWords(["lan-", "tern"]).ToString());
    }

    [Theory]
    [InlineData('\u0007', "U+0007 at position 2")]
    [InlineData('\uFFFE', "U+FFFE at position 2")]
    [InlineData('\uD83C', "U+D83C at position 2")] // half of a pair
    public void Words_that_XML_cannot_hold_are_refused_with_their_place(char bad, string place)
    {
        var options = new MusicXmlOptions { FurtherVerses = [MusicXmlVerse.OfWords(["la", $"l{bad}"])] };
        var refused = Assert.Throws<ExportException>(() => ReadScore.Bytes(Drills.Of().ToScore(), options));
        Assert.Contains("a syllable of the words", refused.Message, StringComparison.Ordinal);
        Assert.Contains(place, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_options_say_how_the_notes_are_written()
    {
        Assert.Equal("clef ByPitch, key TraditionalWhereExact, measure Avartana, beat None, paper A4, date ", MusicXmlOptions.Default.ToString());
        Assert.EndsWith("date 2026-03-05", new MusicXmlOptions { Date = new DateOnly(2026, 3, 5) }.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Values_that_an_option_does_not_have_are_refused()
    {
        foreach (var refused in (Func<MusicXmlOptions>[])[
            () => new() { Key = (MusicXmlKey)3 }, () => new() { Measure = (MusicXmlMeasure)2 }, () => new() { FreeBars = (MusicXmlFreeBars)2 }, () => new() { LineMarks = (MusicXmlLineMarks)2 },
            () => new() { Dynamics = (MusicXmlDynamics)7 }, () => new() { Beat = (MusicXmlBeat)3 }, () => new() { Clef = (MusicXmlClef)4 }, () => new() { Paper = (MusicXmlPaper)3 },
            () => new() { Key = (MusicXmlKey)(-1) }, () => new() { SecondVoiceSemitones = -25 }])
        {
            Assert.Throws<ArgumentOutOfRangeException>(refused);
        }

        Assert.ThrowsAny<ArgumentException>(() => new MusicXmlOptions { FurtherVerses = [null!] });
        Assert.Equal((24, -24), (new MusicXmlOptions { SecondVoiceSemitones = 24 }.SecondVoiceSemitones, new MusicXmlOptions { SecondVoiceSemitones = -24 }.SecondVoiceSemitones));
        Assert.Equal((4, 15, 24, 2), (MusicXmlOptions.SmallestStaff, MusicXmlOptions.LargestStaff, MusicXmlOptions.FarthestSecondVoice, MusicXmlOptions.MostFurtherVerses));
    }

    [Theory]
    [InlineData(4, "2100", "150")] // 210 mm and margins of 15 mm in tenths of a space, of which a staff has 40
    [InlineData(15, "560", "40")]
    public void The_staff_can_be_4_to_15_millimetres_high(int height, string width, string margin)
    {
        var read = ReadScore.Of(Drills.Of().ToScore(), new() { StaffMillimetres = height });
        Assert.Equal(height.ToString(System.Globalization.CultureInfo.InvariantCulture), Assert.Single(read.All("millimeters")).Value);
        Assert.Equal((width, "40"), (Assert.Single(read.All("page-width")).Value, Assert.Single(read.All("tenths")).Value));
        Assert.All((string[])["left-margin", "right-margin", "top-margin", "bottom-margin"], m => Assert.Equal(margin, Assert.Single(read.All(m)).Value));
    }

    [Theory]
    [InlineData(60, 60)]
    [InlineData(61, 7)]
    public void A_title_of_sixty_characters_is_still_whole(int length, int shown)
    {
        var title = "Mohanam: ".PadRight(length, 'x');
        Assert.Equal(title[..shown], Assert.Single(ReadScore.Of((Drills.Of() with { Title = title }).ToScore()).All("work-title")).Value);
        Assert.Equal(length - shown > 0 ? 1 : 0, ReadScore.Of((Drills.Of() with { Title = title }).ToScore()).All("miscellaneous-field").Count());

        // Where no colon comes in time, nothing is cut.
        var plain = new string('x', 62) + ": y";
        Assert.Equal(plain, Assert.Single(ReadScore.Of((Drills.Of() with { Title = plain }).ToScore()).All("work-title")).Value);
    }

    [Theory]
    [InlineData("C4", 432, "S = C4 (256.87 Hz, A4 = 432 Hz)")] // 432 x 2^(-9/12)
    [InlineData("C4", 440, "S = C4")]
    [InlineData("192Hz", 440, "S = G3 -35.7 cents (192.00 Hz)")] // 1200 log2(192 / 195.9977)
    public void A_tonic_beside_the_keyboard_is_said_with_its_frequency(string tonic, double a4, string said)
    {
        var read = Tonic.Parse(tonic);
        var drill = Drills.Of() with { Tonic = a4.Equals(440.0) ? read : Tonic.FromMidi(read.Midi, a4) };
        Assert.Equal($"Adi (4+2+2), {said}, S R2 G3 M1 P D2 N3 S'", Assert.Single(ReadScore.Of(drill.ToScore()).Words).Value);
    }
}
