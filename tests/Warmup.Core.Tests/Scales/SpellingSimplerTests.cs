namespace Warmup.Tests;

/// <summary>
/// The simpler spelling, which is asked for. Expectations from the keyboard: white keys have natural names, black keys one accidental.
/// </summary>
public class SpellingSimplerTests
{
    [Theory]
    [InlineData("E#4", "F4")]
    [InlineData("Fb4", "E4")]
    [InlineData("B#3", "C4")]
    [InlineData("Cb4", "B3")]
    [InlineData("Ebb4", "D4")]
    [InlineData("Bbb3", "A3")]
    [InlineData("Cbb4", "Bb3")]
    [InlineData("Fbb4", "Eb4")]
    [InlineData("F##4", "G4")]
    [InlineData("E##4", "F#4")]
    [InlineData("B##3", "C#4")]
    [InlineData("Db4", "Db4")]
    [InlineData("C#4", "C#4")]
    [InlineData("A4", "A4")]
    public void A_name_becomes_simpler(string name, string simpler) => Assert.Equal(simpler, Spelling.Simpler(Name(name)).ToString());

    [Fact]
    public void Every_name_keeps_its_pitch_and_needs_one_accidental_at_most_on_a_black_key()
    {
        for (var letter = 'A'; letter <= 'G'; letter++)
        {
            for (var alteration = -3; alteration <= 3; alteration++)
            {
                var name = new NoteName(letter, alteration, 4);
                var simpler = Spelling.Simpler(name);
                var black = (name.Midi % 12) is 1 or 3 or 6 or 8 or 10;
                Assert.Equal(name.Midi, simpler.Midi);
                Assert.Equal(black ? Math.Sign(alteration) : 0, simpler.Alteration);
            }
        }
    }

    [Fact]
    public void Two_degrees_may_share_a_letter_where_the_theory_needs_double_flats()
    {
        // Kanakangi on C by one letter a degree: C Db Ebb F G Ab Bbb C (common practice); on the keyboard C Db D F G Ab A C.
        var scale = Catalogue.Default.Parent(1).Scale;
        var names = scale.Ascent.Select(t => Spelling.Name(t, Name("C4"))).ToList();
        Assert.Equal(["C", "Db", "Ebb", "F", "G", "Ab", "Bbb", "C"], names.Select(n => n.PitchClass()));
        Assert.Equal(["C", "Db", "D", "F", "G", "Ab", "A", "C"], names.Select(n => Spelling.Simpler(n).PitchClass()));
    }

    [Fact]
    public void A_drill_is_written_simpler_on_request_and_sounds_the_same()
    {
        var drill = new Drill { Scale = Catalogue.Default.Parent(1).Scale, Pattern = Pattern.Ladder, Tonic = Tonic.Parse("C4") };
        var (theory, simpler) = (drill.ToScore().Sections[0], (drill with { HasSimplerSpelling = true }).ToScore().Sections[0]);
        Assert.Equal("C4 Db4 Ebb4 F4 G4 Ab4 Bbb4 C5", string.Join(' ', theory.Pitches.Select(p => p.Name)));
        Assert.Equal("C4 Db4 D4 F4 G4 Ab4 A4 C5", string.Join(' ', simpler.Pitches.Select(p => p.Name)));
        Assert.Equal(theory.Pitches.Select(p => (p.Hz, p.OffsetCents, p.Midi)), simpler.Pitches.Select(p => (p.Hz, p.OffsetCents, p.Midi)));
    }

    private static NoteName Name(string text) => NoteName.Parse(text);
}
