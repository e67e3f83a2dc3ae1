namespace Warmup.Tests;

/// <summary>Source: just ratios 9/8, 5/4, 3/2, 5/3 in cents; the keyboard's hundred cents a semitone; syllables by the letters' names.</summary>
public class TunedTonesTests
{
    private static Section Made(string pattern, string tonic = "G3", Syllables? syllables = null) => new Drill
    {
        Scale = Scale.Parse("S R2 G3 P D2 S'"),
        Pattern = Pattern.Parse(pattern),
        Tonic = Tonic.Parse(tonic),
        Tuning = Tuning.Just,
        Syllables = syllables ?? Syllables.SvaraLetters,
    }.ToScore().Sections[0];

    [Fact]
    public void Tones_stand_at_their_tuned_heights_from_the_lowest()
    {
        var tones = Made("[S]").TonesBetween(-350, 1250);
        double Cents(double ratio) => 1200 * Math.Log2(ratio);
        Assert.Equal(["D2_", "S", "R2", "G3", "P", "D2", "S'"], tones.Select(t => t.Tone.ToString()));
        double[] expected = [Cents(5.0 / 6), 0, Cents(9.0 / 8), Cents(5.0 / 4), Cents(3.0 / 2), Cents(5.0 / 3), 1200];
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], tones[i].Cents, 1e-9);
        }
    }

    [Fact]
    public void What_is_sung_has_its_tone_wherever_it_lies() =>
        Assert.Equal(["R2", "G3", "S''"], Made("[R S'']").TonesBetween(200, 400).Select(t => t.Tone.ToString()));

    [Fact]
    public void Degrees_are_named_on_the_tonic() => Assert.Equal(["G3", "A3", "B3", "D4", "E4"], Made("[S]").DegreeNames().Select(n => n.ToString()));

    [Fact]
    public void A_keyboards_note_is_counted_from_the_tonic()
    {
        Assert.Equal(400, Made("[S]").CentsOf(new NoteName('B', 0, 3)));

        // 222 Hz is A3 and 1200 log2(222/220) = 15.667 cents.
        Assert.Equal(300 - (1200 * Math.Log2(222.0 / 220)), Made("[S]", "222Hz").CentsOf(new NoteName('C', 0, 4)), 1e-9);
    }

    [Fact]
    public void A_section_is_sung_in_the_kind_that_its_syllables_belong_to()
    {
        Assert.True(Made("ladder").IsSungIn(Syllables.SvaraLetters));
        Assert.False(Made("ladder").IsSungIn(Syllables.Solfa));
        Assert.True(Made("ladder", syllables: Syllables.Solfa.WithOctaveDots()).IsSungIn(Syllables.Solfa));
        Assert.False(Made("ladder", syllables: Syllables.Vowel()).IsSungIn(Syllables.SvaraLetters));
        Assert.Throws<ArgumentNullException>(() => Made("ladder").IsSungIn(null!));
    }

    [Fact]
    public void Letters_do_not_tell_variants_apart_and_names_do()
    {
        Assert.All((Syllables[])[Syllables.SvaraLetters, Syllables.Tamil, Syllables.Vowel(), Syllables.SungSvaras], s => Assert.False(s.HasVariants));
        Assert.All((Syllables[])[Syllables.Solfa, Syllables.Numbers, Syllables.SvaraNames], s => Assert.True(s.HasVariants));
    }
}
