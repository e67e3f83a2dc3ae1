using FsCheck.Xunit;
using NAudio.Midi;

namespace Warmup.Midi.Tests;

/// <summary>
/// Files read back by NAudio.Midi, an independent reader, give the score back: pitches within 0.02 cents of the score's frequencies
/// (half a step of the bend is 0.0122), onsets and lengths exactly.
/// </summary>
public class ReadBackTests
{
    private const double Tolerance = 0.02;

    [Property(Arbitrary = [typeof(Drills)], MaxTest = 300)]
    public void Pitches_onsets_and_lengths_are_the_scores(Sung sung)
    {
        var score = sung.Score;
        var heard = Heard.From(score);
        AssertSame(score, heard);
        AssertSame(score, Heard.From(score, new MidiOptions { IsSingleTrack = true, HasRunningStatus = true }));
    }

    public static TheoryData<int, bool, bool> SpeedsDeliveriesTunings()
    {
        var data = new TheoryData<int, bool, bool>();
        for (var kalam = 1; kalam <= 3; kalam++)
        {
            data.Add(kalam, false, false);
            data.Add(kalam, true, false);
            data.Add(kalam, false, true);
            data.Add(kalam, true, true);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(SpeedsDeliveriesTunings))]
    public void Every_speed_delivery_and_tuning_reads_back(int kalam, bool lineByLine, bool just)
    {
        foreach (var tonic in (Tonic[])[Tonic.FromMidi(48), Tonic.FromHz(207.3), Tonic.FromMidi(57, 432), Tonic.FromHz(250, 432)])
        {
            var score = (Files.Drill(pattern: "ladder.there-and-back") with
            {
                Tonic = tonic,
                Speeds = [new Speed(kalam)],
                Delivery = lineByLine ? Delivery.LineByLine : Delivery.Continuous,
                Tuning = just ? Tuning.Just : Tuning.Equal,
            }).ToScore();
            AssertSame(score, Heard.From(score));
        }
    }

    [Fact]
    public void Sections_follow_each_other_each_with_its_tempo_tonic_and_tuning()
    {
        var score = Files.Joined(
            Files.Drill() with { Tempo = 60, Tuning = Tuning.Just },
            Files.Drill(Files.Scales[7]) with { Tempo = new Rational(181, 2), Tonic = Tonic.FromHz(191), Speeds = [new Speed(3, 7)], Delivery = Delivery.LineByLine },
            Files.Drill(Files.Scales[3]) with { Tempo = 100, Tuning = Tuning.Just, Meter = Meter.Free, Speeds = [Speed.Third] });
        AssertSame(score, Heard.From(score));
        AssertSame(score, Heard.From(score, new MidiOptions { IsSingleTrack = true }));
    }

    [Fact]
    public void Just_intervals_sound_in_their_ratios_above_the_tonic()
    {
        // The ratios of five-limit just intonation (trade tables: two reference libraries agree), above A3 = 220 Hz.
        double[] ratios = [1, 9.0 / 8, 5.0 / 4, 4.0 / 3, 3.0 / 2, 5.0 / 3, 15.0 / 8, 2];
        var voice = Heard.From((Files.Drill(pattern: "ladder.drop(6)") with { Tonic = Tonic.FromMidi(57), Tuning = Tuning.Just }).ToScore()).Voice;
        Assert.Equal(ratios.Length, voice.Length);
        for (var i = 0; i < ratios.Length; i++)
        {
            Assert.InRange(voice[i].Cents - (5700 + (1200 * Math.Log2(ratios[i]))), -Tolerance, Tolerance);
        }
    }

    [Fact]
    public void The_first_lines_are_the_keys_and_beats_written_out_by_hand()
    {
        var heard = Heard.From(Files.Drill(pattern: "ladder.take(2)").ToScore());
        Assert.Equal(480, heard.TicksPerQuarter);
        Assert.Equal(
            [(0L, 480, 60), (480, 480, 62), (960, 480, 60), (1440, 480, 62), (1920, 480, 64)],
            heard.Voice.Select(n => (n.Tick, n.Length, n.Key)));
    }

    [Fact]
    public void Line_by_line_in_Adi_at_60_holds_to_seven_and_breathes_to_eight()
    {
        // S, R, hold to 7.0, breath 7.0 to 8.0: the rule's own example.
        var heard = Heard.From((Files.Drill(pattern: "ladder.take(2)") with { Delivery = Delivery.LineByLine }).ToScore());
        Assert.Equal(
            [(0L, 1 * 480, 60), (1 * 480, 6 * 480, 62), (8 * 480, 480, 60), (9 * 480, 480, 62), (10 * 480, 5 * 480, 64)],
            heard.Voice.Select(n => (n.Tick, n.Length, n.Key)));
    }

    [Fact]
    public void Equal_temperament_on_the_standard_pitch_is_never_bent()
    {
        var wheels = Heard.From(Files.Drill().ToScore()).Events.OfType<PitchWheelChangeEvent>();
        Assert.All(wheels, w => Assert.Equal(8192, w.Pitch));
    }

    [Fact]
    public void Beyond_the_bend_range_the_nearest_key_is_taken()
    {
        // A4 = 500 Hz lies 221.3 cents above 440 Hz, more than the two semitones of the range.
        var score = (Files.Drill() with { Tonic = Tonic.FromMidi(60, 500) }).ToScore();
        var voice = Heard.From(score).Voice;
        Assert.Equal(62, voice[0].Key);
        Assert.InRange(voice[0].Cents - (6000 + (1200 * Math.Log2(500.0 / 440))), -Tolerance, Tolerance);
    }

    internal static void AssertSame(Score score, Heard heard)
    {
        var voice = heard.Voice;
        Assert.Equal(score.NoteCount, voice.Length);
        var at = 0;
        var start = Rational.Zero;
        foreach (var section in score.Sections)
        {
            var quarters = 4 * section.Meter.BeatValue;
            foreach (var note in section.Notes)
            {
                var read = voice[at++];
                Assert.Equal(start + (note.Onset * quarters), new Rational(read.Tick, heard.TicksPerQuarter));
                Assert.Equal(note.Length * quarters, new Rational(read.Length, heard.TicksPerQuarter));
                Assert.InRange(read.Cents - Heard.Cents(section.PitchOf(note).Hz), -Tolerance, Tolerance);
            }

            start += section.Length * quarters;
        }

        // The lyrics, too, are the score's: one a note, in order.
        Assert.Equal(
            score.Sections.SelectMany(s => s.Sung()),
            heard.Texts(MetaEventType.Lyric).Select(t => t.TrimEnd(' ', '\r')));
    }
}
