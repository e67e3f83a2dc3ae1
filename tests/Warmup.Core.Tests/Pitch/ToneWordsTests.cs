namespace Warmup.Tests;

/// <summary>
/// What is said of words that are no tones. Source: the sixteen svaras' names and variants (common practice: R G D N have three, M two, S and P
/// none), and the promise that an error says what to write instead.
/// </summary>
public class ToneWordsTests
{
    [Theory]
    [InlineData("R", "'R' needs a variant: write R1, R2 or R3")]
    [InlineData("G", "'G' needs a variant: write G1, G2 or G3")]
    [InlineData("M", "'M' needs a variant: write M1 or M2")]
    [InlineData("D", "'D' needs a variant: write D1, D2 or D3")]
    [InlineData("N", "'N' needs a variant: write N1, N2 or N3")]
    [InlineData("sa", "'sa' is the name of a svara; write its letter: S")]
    [InlineData("Ri", "'Ri' is the name of a svara; write its letter with a variant: R1, R2 or R3")]
    [InlineData("GA", "'GA' is the name of a svara; write its letter with a variant: G1, G2 or G3")]
    [InlineData("ma", "'ma' is the name of a svara; write its letter with a variant: M1 or M2")]
    [InlineData("pa", "'pa' is the name of a svara; write its letter: P")]
    [InlineData("da", "'da' is the name of a svara; write its letter with a variant: D1, D2 or D3")]
    [InlineData("dha", "'dha' is the name of a svara; write its letter with a variant: D1, D2 or D3")]
    [InlineData("ni", "'ni' is the name of a svara; write its letter with a variant: N1, N2 or N3")]
    [InlineData("s", "'s' is in lower case; write svaras in capitals with their variant, such as S")]
    [InlineData("p", "'p' is in lower case; write svaras in capitals with their variant, such as P")]
    [InlineData("r2", "'r2' is in lower case; write svaras in capitals with their variant, such as R2")]
    [InlineData("m", "'m' is in lower case; write svaras in capitals with their variant, such as M2")]
    public void A_word_that_means_a_svara_is_told_how_to_be_written(string text, string message)
    {
        Assert.False(Degree.TryParse(text, out _, out var error));
        Assert.Equal(message, error.Message);
        Assert.False(ScaleTone.TryParse(text, out _, out error));
        Assert.Equal(message, error.Message);
    }

    [Theory]
    [InlineData("R4")]
    [InlineData("P1")]
    [InlineData("x")]
    [InlineData("bx")]
    [InlineData("RG")]
    [InlineData("8")]
    public void Any_other_word_is_told_what_there_is(string text)
    {
        Assert.False(Degree.TryParse(text, out _, out var error));
        Assert.StartsWith($"there is no svara '{text}'; the svaras are S R1 R2 R3 G1 G2 G3 M1 M2 P D1 D2 D3 N1 N2 N3", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_told_what_to_write()
    {
        Assert.False(Degree.TryParse(" ", out _, out var error));
        Assert.StartsWith("the degree is missing", error.Message, StringComparison.Ordinal);
        Assert.False(ScaleTone.TryParse("", out _, out error));
        Assert.StartsWith("the tone is missing", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("R2'_")] // up and down at once
    [InlineData("R2''''''''''")] // ten octaves; nine are the most
    [InlineData("R2__________")]
    [InlineData("'R2")]
    public void Octave_marks_go_one_way_and_not_too_far(string text) => Assert.False(ScaleTone.TryParse(text, out _, out _));

    [Theory]
    [InlineData("S\u2019", 1)]
    [InlineData("R2'''''''''", 9)]
    [InlineData("R2_________", -9)]
    public void Octave_marks_count_octaves(string text, int octave) => Assert.Equal(octave, ScaleTone.Parse(text).Octave);

    [Theory]
    [InlineData("do re me", "S R2 G2")] // solfa: me is the lowered third
    [InlineData("DO, so'", "S P")]
    [InlineData("S R2 S' R2_", "S R2")] // a note that stands twice counts once, in any octave
    [InlineData("se", "b5")]
    public void A_list_holds_svaras_and_solfa_and_each_note_once(string text, string degrees)
    {
        Assert.True(Degree.TryParseList(text, out var read, out _));
        Assert.Equal(degrees, string.Join(' ', read));
    }

    [Theory]
    [InlineData("do'_ re")]
    [InlineData("do re mo")]
    public void A_list_with_another_word_is_refused_with_its_place(string text)
    {
        Assert.False(Degree.TryParseList(text, out var none, out var error));
        Assert.True(none.IsEmpty);
        Assert.Equal(text.StartsWith("do'_", StringComparison.Ordinal) ? 1 : 7, error.Column);
    }

    [Fact]
    public void A_list_of_nothing_and_one_of_more_than_400_characters_are_refused()
    {
        Assert.False(Degree.TryParseList(" , ", out _, out var error));
        Assert.StartsWith("there are no notes", error.Message, StringComparison.Ordinal);
        Assert.True(Degree.TryParseList("S" + new string(' ', 399), out _, out _));
        Assert.False(Degree.TryParseList("S" + new string(' ', 400), out _, out error));
        Assert.Equal("a list of notes must be at most 400 characters long, not 401", error.Message);
        Assert.False(Degree.TryParseList(null, out _, out _));
    }

    [Theory]
    [InlineData("sa ri ga ma", "'sa' is the name of a svara")]
    [InlineData("s r g", "'s' is in lower case")]
    [InlineData(".ni sa' ri_", "there is no svara '.ni'")]
    [InlineData("sa re", null)] // re is no svara's name: the words may be a scale's
    [InlineData("sa", null)]
    public void Names_of_svaras_alone_are_meant_as_a_scale_written_out(string text, string? reason)
    {
        Assert.False(Catalogue.Default.TryRead(text, out _, out var error));
        Assert.Equal(reason is not null, error.Message.Contains(reason ?? "svara '", StringComparison.Ordinal) || error.Message.Contains("name of a svara", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_degree_has_its_solfa_and_the_same_word_with_la_as_the_tonic()
    {
        // Raised notes take i, lowered ones e or a; a degree without a word of its own takes the one of its pitch (common practice).
        string[] degrees = ["S", "R1", "R2", "R3", "G1", "G2", "G3", "M1", "M2", "b5", "P", "#5", "D1", "D2", "D3", "N1", "N2", "N3", "#1", "b1"];
        string[] solfa = ["do", "ra", "re", "ri", "re", "me", "mi", "fa", "fi", "se", "sol", "si", "le", "la", "li", "la", "te", "ti", "di", "ti"];
        Assert.Equal(solfa, degrees.Select(d => Syllables.Solfa.SyllableOf(new ScaleTone(Degree.Parse(d)))));

        // The tonic is la: the natural minor is la ti do re mi fa sol, the raised seventh si, the raised sixth fi.
        string[] minor = ["S", "R2", "G2", "M1", "P", "D1", "N2", "D2", "N3", "G3", "R1", "M2"];
        string[] la = ["la", "ti", "do", "re", "mi", "fa", "sol", "fi", "si", "di", "te", "ri"];
        Assert.Equal(la, minor.Select(d => Syllables.LaBasedSolfa.SyllableOf(new ScaleTone(Degree.Parse(d)))));
    }

    [Fact]
    public void Dots_stand_above_and_below_the_first_letter_one_for_each_octave()
    {
        // Unicode: U+0307, U+0308 and U+20DB are one, two and three dots above, U+0323, U+0324 and U+20E8 below.
        string Dotted(int octave) => Syllables.SvaraLetters.WithOctaveDots().SyllableOf(new ScaleTone(Degree.Parse("R2"), octave));
        Assert.Equal(
            ["R\u20E8\u0323", "R\u20E8", "R\u0324", "R\u0323", "R", "R\u0307", "R\u0308", "R\u20DB", "R\u20DB\u0307", "R\u20DB\u0308", "R\u20DB\u20DB"],
            Enumerable.Range(-4, 11).Select(Dotted));
    }
}
