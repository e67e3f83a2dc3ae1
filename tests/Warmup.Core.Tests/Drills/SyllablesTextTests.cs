namespace Warmup.Tests;

/// <summary>The text of syllables of one's own. Source: the documented form: <c>own: S=sa, R1=ra, R2=ri</c>, a letter alone for all its svaras, <c>dotted:</c> before a kind.</summary>
public class SyllablesTextTests
{
    private static string Sung(Syllables syllables, string tones) => string.Join(' ', tones.Split(' ').Select(t => syllables.SyllableOf(ScaleTone.Parse(t))));

    [Theory]
    [InlineData("own: S=so, R=ro, G1=ga, G2=ge", "S R1 R2 R3 G1 G2", "so ro ro ro ga ge")]
    [InlineData("own: R=ro, R2=ri", "R1 R2 R3", "ro ri ro")] // the later pair holds
    [InlineData(" own :S = so ,b5= x", "S b5", "so x")]
    [InlineData("own: S=so", "R2 G3", "2 3")] // what has no syllable is sung by its number
    [InlineData("vowel: ee", "S R2", "ee ee")]
    [InlineData("VOWEL:oo", "S R2", "oo oo")]
    [InlineData("Dotted: solfa", "S S'", "do d\u0307o")]
    public void Kinds_are_read(string text, string tones, string sung) => Assert.Equal(sung, Sung(Syllables.Parse(text), tones));

    [Theory]
    [InlineData("own: S=so, R=ro, G=ga, M=mo, P=po, D=do, N=no")]
    [InlineData("own: S=so, R1=ra, R2=ri, R3=ru")]
    [InlineData("own: S=so, b5=x")]
    [InlineData("own: D=do, #5=x")]
    [InlineData("dotted: own: S=so")]
    [InlineData("vowel: ee")]
    [InlineData("solfa")]
    public void A_kind_is_written_as_it_is_typed(string text)
    {
        var read = Syllables.Parse(text);
        Assert.Equal(read, Syllables.Parse(read.ToText()));
        Assert.Equal(text.Split(": ")[0], read.ToText().Split(": ")[0]);
    }

    [Fact]
    public void A_letter_stands_for_all_its_svaras_only_where_they_are_sung_alike()
    {
        Assert.Equal("own: S=so, R=ro", Syllables.Parse("own: R1=ro, R2=ro, R3=ro, S=so").ToText());
        Assert.Equal("own: R1=ra, R2=ro, R3=ro", Syllables.Parse("own: R=ro, R1=ra").ToText());
        Assert.Equal("own: R1=ro", Syllables.Parse("own: R1=ro").ToText());
    }

    [Theory]
    [InlineData("own: X=so", 6, "'X=so' must be a svara and its syllable")]
    [InlineData("own: S", 6, "'S' must be a svara and its syllable")]
    [InlineData("own: S=so,, R=ro", 11, "must be a svara and its syllable")]
    [InlineData("own: S=", 8, "the syllable '' ")]
    [InlineData("own: S=so, R=abcdefghijklmnopqrstu", 14, "the syllable 'abcdefghijklmnopqrstu' ")]
    [InlineData("abcdefghijklmnopqrstu: S=so", 1, "the name 'abcdefghijklmnopqrstu' of syllables ")]
    [InlineData("vowel: abcdefghijklmnopqrstu", 8, "is not a vowel to sing; write 1 to 20 characters")]
    [InlineData("dotted: humming", 9, "unknown syllables 'humming'; write svara, ")]
    [InlineData("humming", 1, "unknown syllables 'humming'; write svara, ")]
    public void What_is_no_kind_is_refused_at_its_place(string text, int column, string words)
    {
        Assert.False(Syllables.TryParse(text, out _, out var error));
        Assert.Equal((1, column), (error.Line, error.Column));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Syllables_of_one_s_own_are_for_one_degree_at_least_and_have_a_name_and_no_commas()
    {
        Assert.Contains("one degree at least", Assert.Throws<ArgumentException>(() => Syllables.Custom("own", _ => null)).Message, StringComparison.Ordinal);
        Assert.Equal("so 2", Sung(Syllables.Custom("own", d => d == default ? "so" : null), "S R2"));
        Assert.Contains("comma", Assert.Throws<ArgumentException>(() => Syllables.Custom("own", d => "a,b")).Message, StringComparison.Ordinal);
        Assert.All((string[])["vowel", "Dotted", "a:b", ""], name => Assert.ThrowsAny<ArgumentException>(() => Syllables.Custom(name, d => "a")));
        Assert.Contains("7 texts", Assert.Throws<ArgumentException>(() => Syllables.Custom("own", ["a"])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => Syllables.Custom("own", ["a", "b", "c", "d", "e", "f", null!]));
    }

    [Fact]
    public void Letters_of_a_script_take_their_variant_and_S_and_P_have_none()
    {
        string With(Syllables kind, string tone) => kind.SyllableWithVariant(ScaleTone.Parse(tone));
        Assert.Equal(["S", "R1", "M2", "P", "N3"], ((string[])["S", "R1", "M2", "P", "N3"]).Select(t => With(Syllables.SvaraLetters, t)));
        Assert.Equal(["do", "ra", "2"], [With(Syllables.Solfa, "S"), With(Syllables.Solfa, "R1"), With(Syllables.Numbers, "R2")]);
        Assert.Equal("b5", With(Syllables.SvaraLetters, "b5"));
    }
}
