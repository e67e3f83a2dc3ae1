namespace Warmup.Tests;

/// <summary>Source: twelve equal semitones an octave (a factor of 2), and the spelling of the same drill made on the other tonic.</summary>
public class TranspositionTests
{
    private static Drill On(string tonic) => new()
    {
        Scale = Scale.Parse("S R2 G3 M1 P D2 N3 S'"),
        Pattern = Pattern.Parse("ladder.up-down"),
        Tonic = Tonic.Parse(tonic),
        Tuning = Tuning.Just,
        Delivery = Delivery.LineByLine,
    };

    [Theory]
    [InlineData("C4", 12, "C5")]
    [InlineData("C#4", -24, "C#2")]
    [InlineData("Db4", -12, "Db3")]
    public void By_octaves_the_section_is_that_of_the_same_tonic_an_octave_away(string tonic, int semitones, string other)
    {
        var (moved, made) = (On(tonic).ToScore().Sections[0].Transposed(semitones), On(other).ToScore().Sections[0]);
        Same(made, moved);
        Assert.Equal(made.TonicName, moved.TonicName);
    }

    [Theory]
    [InlineData("C4", 7)]
    [InlineData("C4", -5)]
    [InlineData("F#3", 1)]
    [InlineData("Eb4", 3)]
    public void By_other_steps_the_section_is_that_of_a_drill_on_the_other_tonic(string tonic, int semitones)
    {
        var drill = On(tonic);
        var other = (drill with { Tonic = Tonic.FromMidi(drill.Tonic.Midi + semitones) }).ToScore().Sections[0];
        Same(other, drill.ToScore().Sections[0].Transposed(semitones));
    }

    [Fact]
    public void The_times_the_scale_and_the_tuning_stay()
    {
        var section = On("220.5Hz").ToScore().Sections[0];
        var moved = section.Transposed(4);
        Assert.Equal(section.Notes, moved.Notes);
        Assert.Equal(section.Lines, moved.Lines);
        Assert.Equal(section.Breaths, moved.Breaths);
        Assert.Equal((section.Scale, section.Tuning, section.Meter), (moved.Scale, moved.Tuning, moved.Meter));
        for (var p = 0; p < section.Pitches.Count; p++)
        {
            Assert.Equal(section.Pitches[p].Hz * Math.Pow(2, 4 / 12.0), moved.Pitches[p].Hz, 1e-9);
            Assert.Equal(section.Pitches[p].Midi + 4, moved.Pitches[p].Midi);
            Assert.Equal(section.Pitches[p].OffsetCents, moved.Pitches[p].OffsetCents);
        }

        Assert.Same(section, section.Transposed(0));
    }

    [Theory]
    [InlineData("C1", -1)]
    [InlineData("C7", 1)]
    [InlineData("A6", 12)]
    public void A_tonic_that_leaves_its_range_is_refused(string tonic, int semitones)
    {
        var section = On(tonic).ToScore().Sections[0];
        Assert.Throws<ArgumentOutOfRangeException>(() => section.Transposed(semitones));
    }

    [Fact]
    public void A_note_that_leaves_the_keyboard_is_refused_by_its_number()
    {
        // C8 lies 24 semitones above C6 (84): with it the tonic may still rise to C7, but three octaves above it there is no MIDI note.
        var section = (On("C6") with { Pattern = Pattern.Parse("[S S'' S''']") }).ToScore().Sections[0];
        Assert.Contains("MIDI note 132", Assert.Throws<ArgumentOutOfRangeException>(() => section.Transposed(12)).Message, StringComparison.Ordinal);
    }

    private static void Same(Section made, Section moved)
    {
        Assert.Equal(made.Tonic.Midi, moved.Tonic.Midi);
        Assert.Equal(made.Pitches.ConvertAll(p => (p.Tone, p.Name, p.Cents)), moved.Pitches.ConvertAll(p => (p.Tone, p.Name, p.Cents)));
        for (var p = 0; p < made.Pitches.Count; p++)
        {
            Assert.Equal(made.Pitches[p].Hz, moved.Pitches[p].Hz, 1e-9);
            Assert.Equal(made.Pitches[p].OffsetCents, moved.Pitches[p].OffsetCents, 1e-9);
        }
    }
}
