namespace Warmup.Core.Tests;

/// <summary>
/// Letters at more than one pitch. The variants are read off the scales: Bhairavi goes up with D2 and down with D1, Kapi up with N3 and down with N2
/// (janya.tsv names the sources); the chromatic scale has each variant once.
/// </summary>
public class VariantLettersTests
{
    private const string Bhairavi = "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S";

    [Fact]
    public void A_letter_at_two_pitches_is_sung_with_its_variant_and_the_others_without()
    {
        var up = new[] { "S", "R", "G", "M", "P", "D2", "N", "S" };
        var down = new[] { "N", "D1", "P", "M", "G", "R", "S" };
        Assert.Equal([.. up, .. down], Made(Bhairavi, "ladder.there-and-back").Sections[0].Sung().TakeLast(15));
    }

    [Fact]
    public void A_letter_at_one_pitch_stands_alone_whatever_the_scale_has_besides()
    {
        Assert.Equal(["S", "R", "G", "M", "P", "D", "N", "S"], Made(Bhairavi, "ladder").Sections[0].Sung().TakeLast(8));

        // The same svara in two octaves is one svara.
        Assert.Equal(["N", "S", "N"], Sung("N3_ S N3"));
    }

    [Fact]
    public void The_dot_of_the_octave_is_on_the_letter_and_not_on_the_number()
    {
        Assert.Equal(["D\u03232", "D1"], Sung("D2_ D1", Syllables.SvaraLetters.WithOctaveDots()));
        Assert.Equal(["da2", "da1"], Sung("D2 D1", Syllables.SungSvaras));
    }

    [Fact]
    public void All_five_scripts_take_the_variant()
    {
        foreach (var script in (Syllables[])[Syllables.Devanagari, Syllables.Tamil, Syllables.Telugu, Syllables.Kannada, Syllables.Malayalam])
        {
            var letter = script.SyllableOf(new ScaleTone(Degree.Parse("N2")));
            Assert.Equal([letter + "2", letter + "3"], Sung("N2 N3", script));
        }
    }

    [Fact]
    public void Syllables_that_tell_the_tones_apart_and_the_callers_own_stay_as_they_are()
    {
        Assert.Equal(["te", "ti"], Sung("N2 N3", Syllables.Solfa));
        Assert.Equal(["b7", "7"], Sung("N2 N3", Syllables.Numbers));
        Assert.Equal(["a", "a"], Sung("N2 N3", Syllables.Vowel()));
        Assert.Equal(["no", "no"], Sung("N2 N3", Syllables.Custom("own", ["so", "ro", "go", "mo", "po", "do", "no"])));
        Assert.Equal(["so"], Sung("P", Syllables.Custom("own", ["do", "re", "mi", "fa", "so", "la", "ti"])));
    }

    [Fact]
    public void Solfa_and_numbers_never_have_one_text_for_two_pitches()
    {
        // Definition: two degrees of different semitones are two pitches in every tuning the library has a name for.
        foreach (var kind in (Syllables[])[Syllables.Solfa, Syllables.LaBasedSolfa, Syllables.Numbers, Syllables.SvaraNames])
        {
            var names = from letter in Enumerable.Range(1, 7)
                        from alteration in Enumerable.Range(-2, 4)
                        let degree = new Degree(letter, alteration)
                        group ((degree.Semitones % 12) + 12) % 12 by kind.SyllableOf(new ScaleTone(degree));
            Assert.All(names, name => Assert.Single(name.Distinct()));
        }
    }

    [Fact]
    public void A_section_knows_its_letters_and_what_it_is_sung_in()
    {
        var section = Of("D2 D1 S b5", Syllables.Tamil).Sections[0];
        Assert.True(section.HasSeveralOf(Degree.Parse("D1")));
        Assert.True(section.HasSeveralOf(Degree.Parse("D3")));
        Assert.False(section.HasSeveralOf(Degree.Parse("N2")));
        Assert.False(section.HasSeveralOf(Degree.Parse("S")));
        Assert.False(section.HasSeveralOf(Degree.Parse("b5")));
        Assert.True(section.IsSungIn(Syllables.Tamil));
        Assert.False(section.IsSungIn(Syllables.SvaraLetters));
        Assert.True(Of("D2 D1_", Syllables.Tamil.WithOctaveDots()).Sections[0].IsSungIn(Syllables.Tamil));
    }

    private static List<string> Sung(string tones, Syllables? syllables = null) => Of(tones, syllables).Sections[0].Sung().ToList();

    /// <summary>A score of one line, whatever its scale.</summary>
    private static Score Of(string tones, Syllables? syllables = null)
    {
        var notes = tones.Split(' ').Select(t => new LineNote(ScaleTone.Parse(t), ScaleDirection.Ascent, Approach.Leap, 1)).ToValueList();
        return Drill("S R2 G3 P D2 S'", Pattern.Ladder, syllables).ToScore(new Expansion([new Line(notes)]));
    }

    private static Score Made(string scale, string pattern) => Drill(scale, Pattern.Parse(pattern), null).ToScore();

    private static Drill Drill(string scale, Pattern pattern, Syllables? syllables) => new()
    {
        Scale = Scale.Parse(scale),
        Pattern = pattern,
        Tonic = Tonic.Parse("C4"),
        Syllables = syllables ?? Syllables.SvaraLetters,
    };
}
