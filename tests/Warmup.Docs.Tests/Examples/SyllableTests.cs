using Warmup.Sheets;

namespace Warmup.Docs.Tests.Examples;

/// <summary>The page on adding syllables.</summary>
public sealed class SyllableTests
{
    [Fact]
    public void Syllables_for_all_sixteen_svaras()
    {
        #region syllables of the sixteen svaras
        var sixteen = Syllables.Custom("sixteen", degree => degree.ToString() switch
        {
            "S" => "sa",
            "R1" => "ra",
            "R2" => "ri",
            "R3" => "ru",
            "G1" => "ga",
            "G2" => "gi",
            "G3" => "gu",
            "M1" => "ma",
            "M2" => "mi",
            "P" => "pa",
            "D1" => "dha",
            "D2" => "dhi",
            "D3" => "dhu",
            "N1" => "na",
            "N2" => "ni",
            "N3" => "nu",
            _ => null,
        });
        var drill = new Drill { Scale = Catalogue.Default.Read("Bilahari"), Pattern = Pattern.Run, Tonic = Tonic.Parse("G3"), Syllables = sixteen };
        var score = drill.ToScore();
        #endregion

        Assert.Equal("sa ri gu pa dhi sa", string.Join(' ', score.Sections[0].Notes.Select(score.Sections[0].SyllableOf)));

        // All sixteen differ in their svara, and a degree that is not a svara is sung by its number.
        var svaras = Catalogue.Default.Parent(1).Scale.Ascent.Concat(Enumerable.Range(2, 71).SelectMany(n => Catalogue.Default.Parent(n).Scale.Ascent)).Select(t => t.Degree).Distinct().ToList();
        Assert.Equal(16, svaras.Count);
        Assert.Equal(16, svaras.Select(d => sixteen.SyllableOf(new ScaleTone(d))).Distinct().Count());
        Assert.Equal("b5", sixteen.SyllableOf(ScaleTone.Parse("b5")));
        Assert.Equal("gu", sixteen.SyllableOf(ScaleTone.Parse("G3'")));
    }

    [Fact]
    public void Syllables_as_text()
    {
        #region syllables as text
        var own = Syllables.Parse("own: S=sa, R1=ra, R2=ri, R3=ru, G=ga, M=ma, P=pa, D=da, N=ni, b5=bo");
        var same = Syllables.Parse(own.ToText());
        var dotted = own.WithOctaveDots();
        #endregion

        Assert.Equal(own, same);
        Assert.Equal("own: S=sa, R1=ra, R2=ri, R3=ru, G=ga, M=ma, P=pa, b5=bo, D=da, N=ni", own.ToText());
        Assert.Equal(["ra", "ri", "ga", "ga", "bo", "#5"], "R1 R2 G2 G3 b5 #5".Split(' ').Select(t => own.SyllableOf(ScaleTone.Parse(t))));
        Assert.Equal(dotted, Syllables.Parse(dotted.ToText()));
        Assert.Equal("s\u0307a", dotted.SyllableOf(ScaleTone.Parse("S'")));
    }

    [Fact]
    public void Seven_syllables_for_the_letters()
    {
        #region syllables of the letters
        var studio = Syllables.Custom("studio", ["no", "na", "ne", "mo", "ma", "me", "nu"]);
        var options = new TextSheetOptions { Letters = studio };
        #endregion

        Assert.Equal(["na", "na", "nu"], "R1 R3 N2".Split(' ').Select(t => studio.SyllableOf(ScaleTone.Parse(t))));
        Assert.Equal(studio, options.Letters);
    }

    [Theory]
    [InlineData("own: S=sa, X=xa", 12, "'X=xa'")]
    [InlineData("own: S", 6, "'S'")]
    [InlineData("own: S=", 8, "1 to 20")]
    [InlineData(": S=sa", 1, "name")]
    [InlineData("dotted: none", 9, "unknown")]
    public void What_is_not_a_kind_is_refused_at_its_place(string text, int column, string reason)
    {
        Assert.False(Syllables.TryParse(text, out _, out var error));
        Assert.Equal(column, error.Column);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_a_kind_is_refused()
    {
        Assert.Throws<ArgumentNullException>("name", () => Syllables.Custom(null!, d => "a"));
        Assert.Throws<ArgumentNullException>("syllableOf", () => Syllables.Custom("own", (Func<Degree, string?>)null!));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("own", d => null));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("own", d => "a,b"));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("Vowel", d => "a"));
        Assert.Throws<ArgumentException>(() => Syllables.Custom("a:b", d => "a"));
    }
}
