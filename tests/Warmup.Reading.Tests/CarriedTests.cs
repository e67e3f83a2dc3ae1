using Warmup.MusicXml;

namespace Warmup.Reading.Tests;

/// <summary>Lines in another scale: what belongs to a note stays with it.</summary>
public class CarriedTests
{
    private static readonly Scale Harmonic = Catalogue.Default.Parent(15).Scale;
    private static readonly Scale Major = Catalogue.Default.Parent(29).Scale;

    [Fact]
    public void Words_and_slides_stay_with_their_notes()
    {
        var section = Written("[S , P , M G / R S G P].glide.sung(lan- tern glow ri - oh)", Major);
        var carried = section.InScale(Harmonic);
        Assert.Equal(["S P M1 G3", "R1 S G3 P"], carried.Lines.Select(l => l.ToTones()));
        Assert.Equal(Notes(section).Select(n => (n.Sung, n.Joining, n.Length)), Notes(carried).Select(n => (n.Sung, n.Joining, n.Length)));
        Assert.Contains(Notes(carried), n => n is { Joining: Joining.Glide });
        Assert.Contains(Notes(carried), n => n.Sung == "tern");
    }

    [Fact]
    public void Names_of_tones_become_those_of_the_new_tones_and_words_among_them_stay()
    {
        // Each line sings the words from the first on, so that mi stands over a second R, where it is a word. Solfa sings the second degree re in the major scale and ra where it is lowered (common practice).
        var section = Written("[S R G R / S R R S].sung(do re mi hey)", Major);
        Assert.Null(section.Syllables);
        Assert.Equal(["do", "ra", "mi", "hey", "do", "ra", "mi", "hey"], Notes(section.InScale(Harmonic)).Select(n => n.Sung!));
    }

    [Fact]
    public void Lengths_of_another_speed_and_breaths_stay()
    {
        var score = (Drill("alankara-2", Major) with { Speeds = [Speed.Second], Delivery = Delivery.LineByLine }).ToScore();
        var section = Read(score);
        var carried = section.InScale(Harmonic).ToScore().Sections[0];
        Assert.Equal(score.Sections[0].Notes.Select(n => (n.Onset, n.Length)), carried.Notes.Select(n => (n.Onset, n.Length)));
        Assert.Equal(score.Sections[0].Breaths.Count, carried.Breaths.Count);
        Assert.NotEmpty(carried.Breaths);
        Assert.Equal(Drill("alankara-2", Harmonic).ToScore().Sections[0].Lines.Count, carried.Lines.Count);
    }

    [Fact]
    public void A_rule_follows_a_scale_of_fewer_notes_in_the_same_speed_and_what_all_notes_sing_stays()
    {
        var mohanam = Catalogue.Default.Read("Mohanam");
        var section = Read((Drill("ladder", Major) with { Speeds = [Speed.Second], Syllables = Syllables.Vowel("loo") }).ToScore());
        var carried = section.InScale(mohanam);
        Assert.Equal(Pattern.Ladder.Expand(mohanam).ToTones(), string.Join(" / ", carried.Lines.Select(l => l.ToTones())));
        Assert.All(Notes(carried), n => Assert.Equal(("loo", new Rational(1, 2)), (n.Sung, n.Length)));
        Assert.Empty(carried.Findings);
        var slides = Written("ladder.glide.sung(a e)", Major).InScale(mohanam);
        Assert.Equal(ReadingFindingCode.LeftOut, Assert.Single(slides.Findings).Code);
    }

    [Fact]
    public void A_letter_that_the_scale_lacks_is_named() =>
        Assert.Contains("no M", Assert.Throws<PatternException>(() => Written("[S M R G / P M]", Major).InScale(Catalogue.Default.Read("Mohanam"))).Finding.Message, StringComparison.Ordinal);

    [Fact]
    public void Other_syllables_replace_words() =>
        Assert.Equal(["do", "re", "mi"], Written("[S R G].sung(one two three)", Major).SungIn(Syllables.Solfa).ToScore().Sections[0].Sung());

    private static IEnumerable<LineNote> Notes(ReadSection section) => section.Lines.SelectMany(l => l.Notes);

    private static ReadSection Written(string pattern, Scale scale) => Read(Drill(pattern, scale).ToScore());

    private static Drill Drill(string pattern, Scale scale) => new() { Scale = scale, Pattern = Repertoire.Find(pattern)?.Pattern ?? Pattern.Parse(pattern), Tonic = Tonic.Parse("D3") };

    private static ReadSection Read(Score score)
    {
        var bytes = new MemoryStream();
        new MusicXmlFormat().Write(score, bytes);
        return Assert.Single(MusicReader.Read(bytes.ToArray()).Sections);
    }
}
