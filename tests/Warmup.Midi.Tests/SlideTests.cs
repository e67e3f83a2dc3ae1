using NAudio.Midi;

namespace Warmup.Midi.Tests;

/// <summary>
/// Slides, swells and short notes. Source: the MIDI 1.0 specification (the pitch bend of 14 bits over the range of registered parameter 0;
/// controller 11 is expression), and the score's own frequencies and times; read by an independent reader.
/// </summary>
public class SlideTests
{
    private const int Expression = 11;

    public static TheoryData<string, double, MidiTuning> Slides => new()
    {
        { "[S , P , S' , P , S , , ,].glide", 261.6, MidiTuning.PitchBend },
        { "[S' , , S , ,].glide", 207.3, MidiTuning.PitchBend },
        { "[S , R S' , , P_ , , S ,].glide", 150.7, MidiTuning.TuningStandard },
        { "[S , G , P , , ,].glide", 220, MidiTuning.EqualOnly },
    };

    private static Drill Drill(string pattern) => Files.Drill(pattern: pattern) with { Tuning = Tuning.Just, HasDrone = false };

    [Theory]
    [MemberData(nameof(Slides))]
    public void A_slide_is_one_key_bent_from_pitch_to_pitch(string pattern, double hz, MidiTuning tuning)
    {
        var section = (Drill(pattern) with { Tonic = Tonic.FromHz(hz) }).ToScore();
        var heard = Heard.From(section, new MidiOptions { Tuning = tuning });
        var notes = section.Sections[0].Notes;
        var key = Assert.Single(heard.Voice);
        Assert.Equal(notes[^1].End, new Rational(key.Tick + key.Length, heard.TicksPerQuarter));

        // The pitch at a tick, in cents above the first note, and the same of the score.
        var bends = heard.Events.OfType<PitchWheelChangeEvent>().Where(e => e.Channel == 1).ToList();
        var range = heard.Events.OfType<ControlChangeEvent>().Single(e => e.Channel == 1 && e.Controller == (MidiController)6 && e.ControllerValue > 2).ControllerValue;
        var start = bends.LastOrDefault(b => b.AbsoluteTime <= 0)?.Pitch ?? 8192;
        double At(long tick) => ((bends.LastOrDefault(b => b.AbsoluteTime <= tick)?.Pitch ?? 8192) - start) / 8192.0 * 100 * range;
        double Cents(ScoreNote note)
        {
            var (first, pitch) = (section.Sections[0].PitchOf(notes[0]), section.Sections[0].PitchOf(note));
            return tuning == MidiTuning.EqualOnly ? 100 * (pitch.Midi - first.Midi) : 1200 * Math.Log2(pitch.Hz / first.Hz);
        }

        for (var n = 0; n < notes.Count; n++)
        {
            var (onset, middle, end) = ((notes[n].Onset * heard.TicksPerQuarter).Floor(), (notes[n].Middle * heard.TicksPerQuarter).Floor(), (notes[n].End * heard.TicksPerQuarter).Floor());
            Assert.InRange(At(onset) - Cents(notes[n]), -0.2, 0.2);
            Assert.InRange(At(middle) - Cents(notes[n]), -0.2, 0.2);
            if (notes[n].Joining == Joining.Glide)
            {
                // Evenly in cents, in steps of at most 5 cents and a unit of the bend.
                Assert.InRange(At((middle + end) / 2) - ((Cents(notes[n]) + Cents(notes[n + 1])) / 2), -6, 6);
                var inside = bends.Where(b => b.AbsoluteTime >= middle && b.AbsoluteTime <= end).Select(b => At(b.AbsoluteTime)).ToList();
                Assert.All(inside.Zip(inside.Skip(1)), s => Assert.InRange(Math.Abs(s.Second - s.First), 0, 5.5));
                Assert.All(inside.Zip(inside.Skip(1)), s => Assert.Equal(Math.Sign(Cents(notes[n + 1]) - Cents(notes[n])), Math.Sign(s.Second - s.First)));
            }
        }

        // Every syllable stands where its note begins.
        var lyrics = heard.Events.OfType<TextEvent>().Where(e => e.MetaEventType == MetaEventType.Lyric);
        Assert.Equal(notes.Select(n => (n.Onset * heard.TicksPerQuarter).Floor()), lyrics.Select(l => l.AbsoluteTime));
    }

    [Fact]
    public void What_follows_a_slide_begins_in_tune()
    {
        foreach (var tuning in Enum.GetValues<MidiTuning>())
        {
            var score = Files.Joined(Drill("[S , P ,].glide"), Drill("[S G]"));
            var bends = Heard.From(score, new MidiOptions { Tuning = tuning }).Events.OfType<PitchWheelChangeEvent>().Where(e => e.Channel == 1).ToList();
            var notes = Heard.From(score, new MidiOptions { Tuning = tuning }).Voice;
            Assert.Equal(3, notes.Length);
            Assert.Equal(8192, bends.Last(b => b.AbsoluteTime <= notes[1].Tick).Pitch);
        }
    }

    [Theory]
    [InlineData("[S , P , S' , - R , ,].glide.swell")]
    [InlineData("[S , P , / G , ,].swell + [S P].staccato")]
    public void One_track_has_the_same_events(string pattern)
    {
        var score = Drill(pattern).ToScore();
        var several = Heard.From(score).Events.Where(e => e is not MetaEvent).OrderBy(e => e.AbsoluteTime).Select(e => e.ToString());
        var one = Heard.From(score, new MidiOptions { IsSingleTrack = true }).Events.Where(e => e is not MetaEvent).OrderBy(e => e.AbsoluteTime).Select(e => e.ToString());
        Assert.Equal(several.Order(StringComparer.Ordinal), one.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_swell_is_led_by_expression_and_what_follows_is_even()
    {
        var score = Drill("[S , , ,].swell + [P]").ToScore();
        var heard = Heard.From(score);
        var events = heard.Events.OfType<ControlChangeEvent>().Where(e => e.Controller == (MidiController)Expression).ToList();
        int At(Rational akshara) => events.Last(e => e.AbsoluteTime <= (akshara * heard.TicksPerQuarter).Floor()).ControllerValue;
        Assert.Equal((64, 127, 127), (At(0), At(2), At(4)));
        Assert.InRange(At(new Rational(3999, 1000)), 64, 66);
        Assert.InRange(At(1), 94, 97);
        Assert.InRange(At(3), 94, 97);
        Assert.All(events.Zip(events.Skip(1)).SkipLast(1), e => Assert.Equal(1, Math.Abs(e.Second.ControllerValue - e.First.ControllerValue)));
        Assert.Equal(2, heard.Voice.Length);
    }

    [Fact]
    public void A_short_note_lasts_half_its_length()
    {
        var heard = Heard.From(Drill("[S G , P , ,].staccato").ToScore());
        Assert.Equal([240, 480, 720], heard.Voice.Select(n => n.Length));
        Assert.Equal([0L, 480, 1440], heard.Voice.Select(n => n.Tick));
    }

    [Fact]
    public void Drills_without_slides_keep_the_narrow_bend_and_have_no_expression()
    {
        var heard = Heard.From(Drill("[S P].staccato").ToScore());
        Assert.DoesNotContain(heard.Events.OfType<ControlChangeEvent>(), e => e.Controller == (MidiController)Expression);
        Assert.Equal(2, heard.Events.OfType<ControlChangeEvent>().Single(e => e.Channel == 1 && e.Controller == (MidiController)6).ControllerValue);
    }

    [Fact]
    public void A_slide_that_no_bend_reaches_is_refused()
    {
        var refused = Assert.Throws<ExportException>(() => Files.Bytes(Drill("[S_ , S' , ,].glide").ToScore()));
        Assert.Contains("2400 cents", refused.Message, StringComparison.Ordinal);
        Assert.NotEmpty(Files.Bytes(Drill("[S_ , G ,].glide").ToScore()));

        // 22 semitones and the two for the tuning of the first note are the 24 of the widest range; 23 are too many.
        var equal = Drill("[S_ , N ,].glide") with { Tuning = Tuning.Equal };
        Assert.NotEmpty(Files.Bytes((equal with { Scale = Scale.Parse("S R2 G3 M1 P D2 N2 S'") }).ToScore()));
        Assert.Throws<ExportException>(() => Files.Bytes(equal.ToScore()));
    }

    [Theory]
    [InlineData("[S , S' , ,].glide", 14)] // an octave, and the two semitones for the tuning of the first note
    [InlineData("[S , R , ,].glide", 5)] // 204 cents in just tuning need three, and two
    [InlineData("[S , R , / S , P ,].glide", 10)] // the widest of all slides: 702 cents need eight
    [InlineData("[S , P , S' ,].glide", 14)] // from the first key of a chain to the farthest
    [InlineData("[S , S ,].glide", 2)] // nothing slides
    public void The_range_of_the_bend_is_as_wide_as_the_widest_slide_needs(string pattern, int semitones)
    {
        var controls = RawFile.Of(Drill(pattern).ToScore()).Tracks[1].Where(e => e.Kind == 0xB0).Select(e => ((int)e.Data[0], (int)e.Data[1]));
        Assert.Equal([(7, 100), (101, 0), (100, 0), (6, semitones), (38, 0), (101, 127), (100, 127)], controls);
    }

    [Fact]
    public void A_slide_stays_on_its_note_to_the_middle_and_has_arrived_at_its_end()
    {
        // S for two aksharas, then P: 702 cents in 141 steps of at most 5 cents, from 480 to 960 ticks.
        var track = RawFile.Of(Drill("[S , P ,].glide").ToScore()).Tracks[1];
        var bends = track.Where(e => e.Kind == 0xE0).Select(e => (e.Tick, Bend: e.Data[0] | (e.Data[1] << 7))).ToList();
        Assert.Equal((0L, 8192), bends[0]);
        Assert.Equal(1 + 141, bends.Count);
        Assert.InRange(bends[1].Tick, 481, 485);
        Assert.Equal(960, bends[^1].Tick);
        Assert.Equal(8192 + Math.Round(8192 * 701.955 / 1000), bends[^1].Bend); // over ten semitones
    }

    [Fact]
    public void A_swell_inside_a_slide_ends_where_its_note_ends()
    {
        // S swells while it slides to an even G: expression is back at 127 where G begins.
        var line = Drill("[S , , , G ,].glide").ToScore();
        var swelled = Drill("[S , , , G ,].glide").Pattern.Expand(Scale.Parse("S R2 G3 M1 P D2 N3 S'")).Lines[0].Notes;
        var score = (Drill("run") with { Expansion = new([new Line([swelled[0] with { Loudness = Loudness.SwellAndFade }, swelled[1]])]) }).ToScore();
        var expression = RawFile.Of(score).Tracks[1].Where(e => e.Kind == 0xB0 && e.Data[0] == Expression).ToList();
        Assert.Equal(64, expression[0].Data[1]);
        Assert.Equal((0L, 1_920L), (expression[0].Tick, expression[^1].Tick));
        Assert.Equal(127, expression[^1].Data[1]);
        Assert.Equal(127, expression.Last(e => e.Tick <= 960).Data[1]);
        Assert.Equal(64, expression[^2].Data[1]);
        Assert.DoesNotContain(RawFile.Of(line).Tracks[1], e => e.Kind == 0xB0 && e.Data[0] == Expression);
    }
}
