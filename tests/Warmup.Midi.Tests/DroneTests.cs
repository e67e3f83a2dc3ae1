using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>
/// The drone in the file. Its strings and its cycle are the score's (tanpura tunings from the trade tables); that it is free of the
/// beat is common practice.
/// </summary>
public class DroneTests
{
    [Property(Arbitrary = [typeof(Drills)])]
    public void Each_string_sounds_in_tune_on_a_channel_of_the_drone_never_the_voices_or_the_tenth(Sung sung)
    {
        var score = sung.Score;
        var all = Heard.From(score);
        var (strokes, heard) = (Sounding(score, all.TicksPerQuarter), all.Drone);
        Assert.Equal(strokes.Length, heard.Length);
        for (var i = 0; i < heard.Length; i++)
        {
            Assert.DoesNotContain(heard[i].Channel, (int[])[1, 10]);
            Assert.InRange(heard[i].Cents - Heard.Cents(score.Drone!.Strings[strokes[i].StringIndex].Hz), -0.02, 0.02);
        }
    }

    [Property(Arbitrary = [typeof(Drills)])]
    public void Strokes_stand_on_the_ticks_nearest_to_their_seconds(Sung sung)
    {
        var score = sung.Score;
        var heard = Heard.From(score);
        var strokes = Sounding(score, heard.TicksPerQuarter);
        Assert.Equal(strokes.Length, heard.Drone.Length);

        // Half a tick; and, where sections at many tempi let seconds lie on the nearest millionth, that millionth at 400 quarters a minute.
        var most = 0.5 + (400 / 60.0 * heard.TicksPerQuarter / 1_000_000);
        foreach (var (stroke, note) in strokes.Zip(heard.Drone))
        {
            Assert.InRange(note.Tick - Ticks(score, stroke.Onset, heard.TicksPerQuarter), -most, most);
            Assert.InRange(note.Tick + note.Length - Ticks(score, stroke.Onset + stroke.Length, heard.TicksPerQuarter), -most, most);
        }
    }

    /// <summary>The drone's strokes, but for one at the score's very end that is shorter than a tick; none of a climb, which has no drone.</summary>
    internal static DroneStroke[] Sounding(Score score, int ticksPerQuarter) =>
        score.Drone is null ? [] :
        [.. score.Drone.Strokes(score.Seconds).Where(s => Math.Round(Ticks(score, s.Onset, ticksPerQuarter)) < Math.Round(Ticks(score, s.Onset + s.Length, ticksPerQuarter)))];

    /// <summary>Where a second of the whole score stands: the sections before it, and its own aksharas there.</summary>
    private static double Ticks(Score score, Rational seconds, int ticksPerQuarter)
    {
        var before = Rational.Zero;
        foreach (var section in score.Sections)
        {
            if (seconds <= section.Seconds)
            {
                return (before + (section.AksharasAt(seconds) * 4 * section.Meter.BeatValue)).ToDouble() * ticksPerQuarter;
            }

            (seconds, before) = (seconds - section.Seconds, before + (section.Length * 4 * section.Meter.BeatValue));
        }

        return before.ToDouble() * ticksPerQuarter;
    }

    [Fact]
    public void A_tanpura_in_just_tuning_takes_three_channels()
    {
        // Low P bent by 2 cents; S and low S not bent; the second S is the same key as the first and needs its own.
        var heard = Heard.From((Files.Drill() with { Tuning = Tuning.Just }).ToScore()).Drone;
        Assert.Equal([(55, 2), (60, 3), (60, 4), (48, 3)], heard.Take(4).Select(n => (n.Key, n.Channel)));
    }

    [Fact]
    public void A_tanpura_in_equal_tuning_takes_two_channels()
    {
        var heard = Heard.From(Files.Drill().ToScore()).Drone;
        Assert.Equal([(55, 2), (60, 2), (60, 3), (48, 2)], heard.Take(4).Select(n => (n.Key, n.Channel)));
    }

    [Fact]
    public void The_cycle_is_free_of_the_beat()
    {
        // Strokes at 0, 1, 2, 3 and again at 5 s, whatever the tempo: 1 s from stroke to stroke, 2 s behind the last.
        foreach (var tempo in (int[])[48, 60, 97])
        {
            var heard = Heard.From((Files.Drill() with { Tempo = tempo }).ToScore());
            var seconds = heard.Drone.Take(8).Select(n => n.Tick * 60.0 / tempo / heard.TicksPerQuarter).ToArray();
            double[] expected = [0, 1, 2, 3, 5, 6, 7, 8];
            for (var i = 0; i < expected.Length; i++)
            {
                Assert.InRange(seconds[i] - expected[i], -0.002, 0.002);
            }
        }
    }

    [Fact]
    public void The_cycle_goes_on_over_sections_of_different_tempo()
    {
        // 8 aksharas at 60 last 8 s, so the ninth second is 2 aksharas at 120 behind them; strokes at 8 and 10 s.
        var score = Files.Joined(Files.Drill(pattern: "ladder.take(2)"), Files.Drill(pattern: "ladder.take(2)") with { Tempo = 120 });
        Assert.Equal(
            [0L, 480, 960, 1440, 2400, 2880, 3360, 3840, 3840 + (2 * 960), 3840 + (3 * 960)],
            Heard.From(score).Drone.Select(n => n.Tick));
    }

    [Fact]
    public void The_cycle_goes_on_over_a_rise_of_the_tempo()
    {
        // Five aksharas at 60 last 5 s; then eleven at 120, to the end of the second avartana, 5 1/2 s. Strokes at 0, 1, 2, 3 of every five seconds.
        var score = (Files.Drill(pattern: "ladder.take(2)") with { Tempo = new TempoRamp(60, 60, 120) }).ToScore();
        int[] aksharas = [0, 1, 2, 3, 5, 7, 9, 11, 15];
        Assert.Equal(aksharas.Select(a => 480L * a), Heard.From(score).Drone.Select(n => n.Tick));
    }

    [Property(Arbitrary = [typeof(Drills)])]
    public void A_string_plucked_again_has_first_ended(Sung sung)
    {
        foreach (var track in RawFile.Of(sung.Score).Tracks.Skip(1))
        {
            var sounding = new HashSet<(int, byte)>();
            foreach (var e in track)
            {
                if (e.IsNoteOn)
                {
                    Assert.True(sounding.Add((e.Channel, e.Data[0])), "a key that sounds begins again");
                }
                else if (e.IsNoteOff)
                {
                    Assert.True(sounding.Remove((e.Channel, e.Data[0])), "a key that is silent ends");
                }
            }

            Assert.Empty(sounding);
        }
    }

    [Fact]
    public void Notes_that_can_sound_at_once_on_a_channel_have_one_bend()
    {
        var score = (Files.Drill() with { Tuning = Tuning.Just, Tonic = Tonic.FromHz(233) }).ToScore();
        var bends = RawFile.Of(score).Tracks[2].Where(e => e.Kind == 0xE0).ToArray();
        Assert.Equal(3, bends.Length);
        Assert.Equal(3, bends.Select(e => e.Channel).Distinct().Count());
        Assert.All(bends, e => Assert.Equal(0, e.Tick));
    }

    [Fact]
    public void The_drone_is_played_softer_than_the_voice_and_as_the_caller_chooses()
    {
        var heard = Heard.From(Files.Drill().ToScore());
        Assert.All(heard.Drone, d => Assert.All(heard.Voice, v => Assert.True(d.Velocity < v.Velocity)));
        Assert.All(Heard.From(Files.Drill().ToScore(), new MidiOptions { DroneVelocity = 25 }).Drone, d => Assert.Equal(25, d.Velocity));
    }

    [Fact]
    public void Without_a_drone_there_is_no_track_of_it()
    {
        Assert.Equal(2, RawFile.Of((Files.Drill() with { HasDrone = false }).ToScore()).Tracks.Count);
        Assert.Equal(2, RawFile.Of(Files.Drill().ToScore(), new MidiOptions { HasDrone = false }).Tracks.Count);
    }

    [Fact]
    public void The_drone_can_be_exported_alone()
    {
        var score = Files.Drill().ToScore();
        var alone = Heard.From(score, new MidiOptions { HasVoice = false });
        Assert.Empty(alone.Voice);
        Assert.Equal(Heard.From(score).Drone, alone.Drone);
    }

    [Fact]
    public void A_string_that_no_key_reaches_is_refused_by_its_number()
    {
        // C-1 is key 0; at A4 = 392 Hz it sounds 200.0 cents lower, just beyond the bend.
        var low = (Files.Drill() with { Tonic = Tonic.FromMidi(24, 391.9), Expansion = new([new Line([default(LineNote) with { Tone = new ScaleTone(default, -2) }])]) }).ToScore();
        var score = Files.Drill().ToScore();
        var strings = score with { Drone = score.Drone! with { Strings = [score.Drone.Strings[1], low.Sections[0].Pitches[0]] } };
        var refused = Assert.Throws<ExportException>(() => Files.Bytes(strings));
        Assert.StartsWith("drone string 2: S__ (C-1, MIDI note 0)", refused.Message, StringComparison.Ordinal);
        Assert.NotEmpty(Files.Bytes(strings, new MidiOptions { Tuning = MidiTuning.EqualOnly }));
    }

    [Fact]
    public void More_strings_than_channels_are_refused()
    {
        var score = Files.Drill().ToScore();
        var s = score.Drone!.Strings[1];
        Score With(int strings) => score with { Drone = score.Drone with { Strings = Enumerable.Repeat(s, strings).ToValueList() } };
        var channels = RawFile.Of(With(14)).Tracks[2].Where(e => e.Kind == 0xC0).Select(e => e.Channel);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13, 14, 15], channels);
        Assert.Contains("string 15", Assert.Throws<ExportException>(() => Files.Bytes(With(15))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_sruti_box_is_one_long_note_a_reed_on_a_reed_organ(bool just)
    {
        // Low C, low G, C: with the just fifth bent by 2 cents, it needs a channel of its own.
        var score = (Files.Drill() with { DroneStyle = DroneStyle.SrutiBox, Tuning = just ? Tuning.Just : Tuning.Equal }).ToScore();
        var heard = Heard.From(score);
        Assert.Equal([48, 55, 60], heard.Drone.Select(n => n.Key).Order());
        Assert.Equal(just ? 2 : 1, heard.Drone.Select(n => n.Channel).Distinct().Count());
        var end = RawFile.Of(score).Tracks[0][^1].Tick;
        Assert.All(heard.Drone, n => Assert.Equal((0L, end), (n.Tick, (long)n.Length)));
        Assert.Equal(score.Drone!.Strings.ConvertAll(s => Math.Round(Heard.Cents(s.Hz), 1)).Order(), heard.Drone.Select(n => Math.Round(n.Cents, 1)).Order());
        Assert.All(Programs(score, null), p => Assert.Equal(21 - 1, p));
        Assert.All(Programs(score, new MidiOptions { HeldDroneProgram = 20 }), p => Assert.Equal(20 - 1, p));
        Assert.All(Programs(Files.Drill().ToScore(), null), p => Assert.Equal(105 - 1, p));
    }

    [Fact]
    public void Five_strings_have_five_strokes_a_cycle()
    {
        // P N S S S in C: G3 B3 C4 C4 C3 at 0, 1, 2, 3, 4 and again from 6 s.
        var heard = Heard.From((Files.Drill() with { DroneStyle = DroneStyle.Tanpura with { StringCount = 5 } }).ToScore());
        Assert.Equal([(0L, 55), (1, 59), (2, 60), (3, 60), (4, 48), (6, 55)], heard.Drone.Take(6).Select(n => (n.Tick / 480, n.Key)));
    }

    private static IEnumerable<int> Programs(Score score, MidiOptions? options) =>
        RawFile.Of(score, options).Tracks[2].Where(e => e.Kind == 0xC0).Select(e => (int)e.Data[0]);
}
