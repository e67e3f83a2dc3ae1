namespace Warmup.Tests;

/// <summary>What cannot be put in time, and what is said then. Source: the documented bounds (the project's own settings), with numbers counted by hand.</summary>
public class RefusalTests
{
    private static readonly Drill Mohanam = new() { Scale = Scale.Parse("S R2 G3 P D2 S'"), Pattern = Pattern.Ladder, Tonic = Tonic.Parse("G3") };

    private static string Refusal(Drill drill)
    {
        Assert.False(drill.TryToScore(out var score, out var refusal));
        Assert.Null(score);
        Assert.Equal(refusal, Assert.Throws<PatternException>(() => drill.ToScore()).Finding);
        return refusal.Message;
    }

    [Fact]
    public void Free_rhythm_has_no_beats_to_begin_after_to_fill_up_to_or_to_end_on()
    {
        var free = Mohanam with { Meter = Meter.Free };
        Assert.Equal("free rhythm has no beat after which a line could begin", Refusal(free with { Eduppu = new Rational(1, 2) }));
        Assert.Equal("free rhythm has no anga or avartana to fill lines up to", Refusal(free with { Delivery = Delivery.Continuous with { Fill = Fill.Anga } }));
        Assert.Equal("free rhythm has no first beat to end on", Refusal(free with { IsRepeatedToFirstBeat = true }));

        // Line by line it holds each line without filling anything.
        Assert.Equal(5, (free with { Delivery = Delivery.LineByLine }).ToScore().Sections[0].Lines.Count);
    }

    [Fact]
    public void A_hundred_thousand_notes_are_the_most()
    {
        // A ladder of five lines has 2 + 3 + 4 + 5 + 6 = 20 notes; a line of a hundred notes a thousand times is just enough.
        var hundred = Pattern.Parse("[S R G P D S' D P G R]").Repeat(10).Join();
        Assert.Equal(100_000, (Mohanam with { Pattern = hundred, Repetitions = 1_000 }).ToScore().NoteCount);
        Assert.Equal(
            "singing the drill 1000 times would give 101000 notes; the most is 100000",
            Refusal(Mohanam with { Pattern = hundred + Pattern.Parse("[S]"), Repetitions = 1_000 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mohanam with { Repetitions = 1_001 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Mohanam with { Repetitions = 0 });
    }

    [Fact]
    public void The_lengths_of_all_notes_together_need_at_most_16_383_parts_of_an_akshara()
    {
        // 127 x 128 = 16,256 parts are held; 127 x 131 = 16,637 are not.
        Expansion Of(int a, int b) => new([new Line([Note(new Rational(1, a)), Note(new Rational(1, b))])]);
        Assert.Equal(16_256, (Mohanam with { Expansion = Of(127, 128) }).ToScore().Sections[0].Resolution);
        Assert.Equal("the lengths need 16637 parts of an akshara; the most is 16383", Refusal(Mohanam with { Expansion = Of(127, 131) }));

        static LineNote Note(Rational length) => default(LineNote) with { Length = length };
    }

    [Fact]
    public void Moved_by_octaves_notes_keep_their_letters_and_stay_within_MIDI()
    {
        var section = (Mohanam with { Tonic = Tonic.Parse("Gb3") }).ToScore().Sections[0];
        var up = section.Transposed(12);
        Assert.Equal("Gb4", up.TonicName.ToString());
        Assert.Equal(section.Pitches.Select(p => (p.Name.Letter, p.Name.Alteration, p.Midi + 12)), up.Pitches.Select(p => (p.Name.Letter, p.Name.Alteration, p.Midi)));
        Assert.All(section.Pitches.Zip(up.Pitches), p => Assert.Equal(2 * p.First.Hz, p.Second.Hz, 1e-9));
        Assert.Same(section, section.Transposed(0));

        // The tonic C7 is the highest, and two octaves and a fifth above it lies MIDI note 127: S'' with a G above it is one note too far.
        var high = (Mohanam with { Tonic = Tonic.Parse("C6"), Pattern = Pattern.Parse("[S' P'']") }).ToScore().Sections[0];
        Assert.Equal(127, high.Transposed(12).Pitches[^1].Midi);
        var higher = (Mohanam with { Tonic = Tonic.Parse("C6"), Pattern = Pattern.Parse("[S' D'']") }).ToScore().Sections[0];
        Assert.StartsWith("D2'' would be MIDI note 129; it must lie from 0 to 127", Assert.Throws<ArgumentOutOfRangeException>(() => higher.Transposed(12)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_climb_says_how_far_and_back()
    {
        var climb = new Climb { Drill = Mohanam, Semitones = 5, Step = 2 };
        Assert.Equal([55, 57, 59, 57, 55], climb.Tonics.Select(t => t.Midi)); // a third step would go six semitones up
        Assert.EndsWith(", climbing 5 semitones in steps of 2 and back", climb.ToString(), StringComparison.Ordinal);
        var up = new Climb { Drill = Mohanam, Semitones = 24, Step = 12, IsUpAndDown = false };
        Assert.Equal([55, 67, 79], up.Tonics.Select(t => t.Midi));
        Assert.EndsWith(", climbing 24 semitones in steps of 12", up.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Climb { Drill = Mohanam, Semitones = 25 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new Climb { Drill = Mohanam, Step = 13 });
    }

    [Theory]
    [InlineData("ladder", 0)]
    [InlineData("[S , G ,].glide", 1)]
    [InlineData("[S , G ,].swell", 1)]
    [InlineData("[S G].staccato", 1)]
    [InlineData("[S , G ,].glide.swell", 2)]
    public void Cautions_follow_what_is_sung(string pattern, int further)
    {
        var cautions = (Mohanam with { Pattern = Pattern.Parse(pattern) }).ToScore().Cautions;
        Assert.Equal(Cautions.All, cautions.Take(Cautions.All.Count));
        Assert.Equal(further, cautions.Count - Cautions.All.Count);
        Assert.Equal(further + 1, (Mohanam with { Pattern = Pattern.Parse(pattern), Syllables = Syllables.Straw }).ToScore().Cautions.Count - Cautions.All.Count);
    }
}
