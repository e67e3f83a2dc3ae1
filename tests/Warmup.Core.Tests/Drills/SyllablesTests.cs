using System.Globalization;
using System.Text;

namespace Warmup.Tests;

/// <summary>
/// What is sung. Sources: movable-do solfa with chromatic syllables and la-based minor (common practice), the full names in
/// Data/tuning-pythagorean.tsv (common practice), svara letters in five scripts (common practice, as in published primers), the names of
/// the combining marks in the Unicode standard.
/// </summary>
public class SyllablesTests
{
    [Theory]
    [InlineData("S", "do")]
    [InlineData("R1", "ra")]
    [InlineData("R2", "re")]
    [InlineData("R3", "ri")]
    [InlineData("G1", "re")]
    [InlineData("G2", "me")]
    [InlineData("G3", "mi")]
    [InlineData("M1", "fa")]
    [InlineData("M2", "fi")]
    [InlineData("P", "sol")]
    [InlineData("D1", "le")]
    [InlineData("D2", "la")]
    [InlineData("D3", "li")]
    [InlineData("N1", "la")]
    [InlineData("N2", "te")]
    [InlineData("N3", "ti")]
    [InlineData("b5", "se")]
    [InlineData("#1", "di")]
    [InlineData("#5", "si")]
    [InlineData("#3", "fa")] // by pitch
    [InlineData("b4", "mi")]
    [InlineData("b1", "ti")]
    [InlineData("#7", "do")]
    public void Solfa_from_the_tonic(string degree, string syllable) => Assert.Equal(syllable, Syllables.Solfa.SyllableOf(Tone(degree)));

    [Theory]
    [InlineData("Natural minor", "la ti do re mi fa sol la")]
    [InlineData("Harmonic minor", "la ti do re mi fa si la")]
    [InlineData("Ascending melodic minor", "la ti do re mi fi si la")]
    [InlineData("Phrygian", "la te do re mi fa sol la")]
    [InlineData("Locrian", "la te do re me fa sol la")]
    [InlineData("Hungarian minor", "la ti do ri mi fa si la")]
    public void Solfa_with_la_as_the_tonic_of_minor_scales(string scale, string line) =>
        Assert.Equal(line, Sung(scale, Syllables.LaBasedSolfa));

    [Fact]
    public void The_major_scale_is_sung_in_each_kind()
    {
        Assert.Equal("do re mi fa sol la ti do", Sung("Major", Syllables.Solfa));
        Assert.Equal("1 2 3 4 5 6 7 1", Sung("Major", Syllables.Numbers));
        Assert.Equal("S R G M P D N S", Sung("Major", Syllables.SvaraLetters));
        Assert.Equal("sa ri ga ma pa da ni sa", Sung("Major", Syllables.SungSvaras));
        Assert.Equal("a a a a a a a a", Sung("Major", Syllables.Vowel()));
        Assert.Equal("1 b2 b3 4 b5 b6 b7 1", Sung("Locrian", Syllables.Numbers));
    }

    [Theory]
    [MemberData(nameof(ScalesTables.Pythagorean), MemberType = typeof(ScalesTables))]
    public void Each_svara_has_its_full_name(string[] row) => Assert.Equal(row[1], Syllables.SvaraNames.SyllableOf(Tone(row[0])));

    [Theory]
    [InlineData("devanagari", "स रि ग म प ध नि", 0x0900)]
    [InlineData("tamil", "ஸ ரி க ம ப த நி", 0x0B80)]
    [InlineData("telugu", "స రి గ మ ప ద ని", 0x0C00)]
    [InlineData("kannada", "ಸ ರಿ ಗ ಮ ಪ ದ ನಿ", 0x0C80)]
    [InlineData("malayalam", "സ രി ഗ മ പ ധ നി", 0x0D00)]
    public void Svara_letters_in_a_script(string name, string letters, int block)
    {
        Assert.True(Syllables.TryParse(name, out var syllables, out _));
        Assert.Equal(letters.Split(' '), "S R2 G3 M1 P D2 N3".Split(' ').Select(s => syllables!.SyllableOf(Tone(s))));

        // Every letter stands in the script's own block of 128 characters (Unicode standard), so none is a look-alike.
        Assert.All(letters.Where(c => c != ' '), c => Assert.InRange(c, block, block + 127));
    }

    [Fact]
    public void A_degree_that_is_no_svara_is_sung_by_its_number()
    {
        foreach (var syllables in Syllables.All.Where(s => s.HasToneNames && s.Name is not ("solfa" or "solfa-la")))
        {
            Assert.Equal("b5", syllables.SyllableOf(Tone("b5")));
        }
    }

    [Fact]
    public void The_caller_s_own_syllables_take_the_place_of_the_letters()
    {
        var own = Syllables.Custom("studio", ["no", "na", "ne", "mo", "ma", "me", "nu"]);
        Assert.Equal("no na ne ma me no", Sung("Mohanam", own));
        Assert.Equal(own, Syllables.Custom("studio", ["no", "na", "ne", "mo", "ma", "me", "nu"]));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("studio", ["no", "na"]));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("studio", ["no", "na", "ne", "mo", "ma", "me", " "]));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("studio", ["no", "na", "ne", "mo", "ma", "me", "n\u0007"]));
    }

    [Fact]
    public void A_vowel_is_1_to_20_characters_without_control_characters()
    {
        Assert.Equal("lip trill", Syllables.Vowel("lip trill").SyllableOf(default));
        Assert.Throws<ArgumentException>(() => Syllables.Vowel(" "));
        Assert.Throws<ArgumentException>(() => Syllables.Vowel(new string('a', 21)));
        Assert.Throws<ArgumentException>(() => Syllables.Vowel("a\u202Eb"));
    }

    [Fact]
    public void A_lip_trill_and_a_straw_are_the_same_on_every_note_and_name_no_tone()
    {
        Assert.Equal("brr brr brr brr brr brr", Sung("Mohanam", Syllables.LipTrill));
        Assert.Equal(Syllables.Straw, Syllables.Parse("straw"));
        Assert.Equal(Syllables.LipTrill, Syllables.Parse("Lip-Trill"));
        Assert.Equal(
            ["lip-trill", "straw", "vowel"],
            Syllables.All.Where(s => !s.HasToneNames).Select(s => s.Name).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("S", "S")]
    [InlineData("S'", "S\u0307")]
    [InlineData("R2''", "R\u0308")]
    [InlineData("G3'''", "G\u20DB")]
    [InlineData("P''''", "P\u20DB\u0307")]
    [InlineData("N3_", "N\u0323")]
    [InlineData("D1__", "D\u0324")]
    [InlineData("D1___", "D\u20E8")]
    public void Octaves_are_dots_above_and_below_the_letter(string tone, string dotted) =>
        Assert.Equal(dotted, Syllables.SvaraLetters.WithOctaveDots().SyllableOf(Tone(tone)));

    [Fact]
    public void Dots_stand_on_the_first_letter_behind_its_vowel_sign()
    {
        Assert.Equal("s\u0307ol", Syllables.Solfa.WithOctaveDots().SyllableOf(Tone("P'")));
        Assert.Equal("रि\u0323", Syllables.Devanagari.WithOctaveDots().SyllableOf(Tone("R1_")));
        Assert.Equal("நி\u0307", Syllables.Tamil.WithOctaveDots().SyllableOf(Tone("N3'")));

        // One letter to the eye: the marks combine with what they follow.
        Assert.Equal(1, new StringInfo(Syllables.Tamil.WithOctaveDots().SyllableOf(Tone("N3'"))).LengthInTextElements);
        Assert.All("\u0307\u0308\u0323\u0324\u20DB\u20E8", c => Assert.Equal(UnicodeCategory.NonSpacingMark, CharUnicodeInfo.GetUnicodeCategory(c)));
    }

    [Fact]
    public void Dots_are_put_on_once() =>
        Assert.Equal(Syllables.Tamil.WithOctaveDots(), Syllables.Tamil.WithOctaveDots().WithOctaveDots());

    [Fact]
    public void Kinds_are_read_by_their_names()
    {
        Assert.All(Syllables.All.ToArray(), s =>
        {
            Assert.True(Syllables.TryParse(s.Name.ToUpperInvariant(), out var read, out _));
            Assert.Equal(s, read);
        });
        Assert.Equal(Syllables.All.Count, Syllables.All.Select(s => s.Name).Distinct().Count());
        Assert.True(Syllables.TryParse("vowel: oo", out var vowel, out _));
        Assert.Equal("oo", vowel!.SyllableOf(default));
    }

    [Theory]
    [InlineData("klingon")]
    [InlineData("vowel:")]
    [InlineData("vowel: aaaaaaaaaaaaaaaaaaaaaaaaa")]
    public void Unknown_syllables_are_refused_with_what_there_is(string text)
    {
        Assert.False(Syllables.TryParse(text, out _, out var error));
        Assert.Contains("vowel", error!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Syllables_reach_the_score()
    {
        var drill = new Drill
        {
            Scale = Catalogue.Default.Find("Mohanam")!.Scale,
            Pattern = Pattern.Parse("ladder.drop(4)"),
            Tonic = Tonic.Parse("C#3"),
            Syllables = Syllables.Tamil.WithOctaveDots(),
        };
        var text = new StringBuilder().AppendJoin(' ', drill.ToScore().Sections[0].Sung()).ToString();
        Assert.Equal("ஸ ரி க ப த ஸ\u0307", text);
    }

    private static string Sung(string scale, Syllables syllables) =>
        string.Join(' ', Catalogue.Default.Find(scale)!.Scale.Ascent.Select(syllables.SyllableOf));

    private static ScaleTone Tone(string text) => ScaleTone.Parse(text);
}
