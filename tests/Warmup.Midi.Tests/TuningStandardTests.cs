using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>
/// The MIDI Tuning Standard, single-note change: <c>F0 7F 7F 08 02 pp nn [kk xx yy zz]... F7</c>, xx a semitone and yy zz fourteen bits
/// of a fraction of 100 cents. Half a step is 0.0031 cents.
/// </summary>
public class TuningStandardTests
{
    private static readonly MidiOptions Retuned = new() { Tuning = MidiTuning.TuningStandard };

    [Property(Arbitrary = [typeof(Drills)])]
    public void The_retuned_keys_sound_the_scores_pitches_within_a_hundredth_of_a_cent(Sung sung)
    {
        var score = sung.Score;
        AssertInTune(score, RawFile.Of(score, Retuned));
        AssertInTune(score, RawFile.Of(score, Retuned with { IsSingleTrack = true, HasRunningStatus = true }));
    }

    [Fact]
    public void Every_section_is_retuned_where_it_begins()
    {
        var score = Files.Joined(
            Files.Drill() with { Tuning = Tuning.Just },
            Files.Drill() with { Tonic = Tonic.FromHz(255) },
            Files.Drill() with { Tonic = Tonic.FromMidi(60, 432), Tuning = Tuning.Just });
        var file = RawFile.Of(score, Retuned);
        AssertInTune(score, file);
        var starts = file.Tracks[1].Where(e => e.Status == 0xF0).Select(e => new Rational(e.Tick, file.TicksPerQuarter));
        Assert.Equal([0, score.Sections[0].Length, score.Sections[0].Length + score.Sections[1].Length], starts);
    }

    [Fact]
    public void Each_channel_selects_its_tuning_bank_and_program_by_RPN_4_and_3()
    {
        var file = RawFile.Of(Files.Drill().ToScore(), Retuned);
        foreach (var channel in (int[])[0, 1, 2])
        {
            var controls = file.Tracks.SelectMany(t => t).Where(e => e.Kind == 0xB0 && e.Channel == channel).Select(e => ((int)e.Data[0], (int)e.Data[1]));
            Assert.Equal(
                [(7, 100), (101, 0), (100, 4), (6, 0), (38, 0), (101, 127), (100, 127), (101, 0), (100, 3), (6, channel), (38, 0), (101, 127), (100, 127)],
                controls);
        }
    }

    [Fact]
    public void A_system_exclusive_event_has_its_length_and_ends_with_F7()
    {
        // One line S R: two keys, so 6 + 2 x 4 bytes and the F7. The reader takes exactly as many as the length says.
        var file = RawFile.Of((Files.Drill(pattern: "ladder.take(1)") with { Tuning = Tuning.Just }).ToScore(), Retuned);
        var message = Assert.Single(file.Tracks[1], e => e.Status == 0xF0).Data;

        // 9/8 is 203.910 cents: 62 and 0.0391 of a semitone, 0.0391 x 16384 = 640.6, 641 = 5 x 128 + 1.
        Assert.Equal([0x7F, 0x7F, 0x08, 0x02, 0, 2, 60, 60, 0, 0, 62, 62, 5, 1, 0xF7], message);
    }

    [Fact]
    public void Nothing_is_bent()
    {
        var file = RawFile.Of((Files.Drill() with { Tuning = Tuning.Just }).ToScore(), Retuned);
        Assert.DoesNotContain(file.Tracks.SelectMany(t => t), e => e.Kind == 0xE0);
    }

    [Fact]
    public void Equal_only_writes_the_notes_and_no_tuning_of_any_kind()
    {
        var score = (Files.Drill() with { Tuning = Tuning.Just, Tonic = Tonic.FromHz(255) }).ToScore();
        var file = RawFile.Of(score, new MidiOptions { Tuning = MidiTuning.EqualOnly });
        Assert.DoesNotContain(file.Tracks.SelectMany(t => t), e => e.Kind == 0xE0 || (e.Kind == 0xB0 && e.Data[0] != 7) || e.Status == 0xF0);
        Assert.Equal(
            score.Sections[0].Notes.ConvertAll(n => score.Sections[0].PitchOf(n).Midi),
            file.Tracks[1].Where(e => e.IsNoteOn).Select(e => (int)e.Data[0]).ToValueList());
    }

    [Fact]
    public void Two_pitches_on_one_key_are_retuned_where_they_sound()
    {
        // R2 and G1 are one key; here G1 is tuned 30 cents above R2.
        var drill = Files.Drill(pattern: "ladder.take(1) + ladder.take(1).swapped") with
        {
            Scale = Scale.Parse("S R2 M1 P S' / S' P M1 G1 S"),
            Tuning = Tuning.Equal.With(new Degree(3, -2), Interval.FromCents(230)),
            HasDrone = false,
        };
        var score = drill.ToScore();
        var section = score.Sections[0];
        Assert.Equal((62, 62), (section.PitchOf(section.Notes[1]).Midi, section.PitchOf(section.Notes[3]).Midi));
        Assert.NotEqual(section.Notes[1].PitchIndex, section.Notes[3].PitchIndex);
        AssertInTune(score, RawFile.Of(score, Retuned));
    }

    internal static void AssertInTune(Score score, RawFile file)
    {
        // Programs are the device's, so that a message in one track retunes the channels of another.
        var retuned = new Dictionary<(int Program, int Key), double>();
        var program = new int[16];
        var parameter = new int[16];
        var voice = new List<double>();
        var drone = new List<double>();
        foreach (var e in file.Tracks.SelectMany(t => t))
        {
            switch (e)
            {
                case { Status: 0xF0, Data: [0x7F, 0x7F, 0x08, 0x02, var pp, var count, .. var changes, 0xF7] }:
                    Assert.Equal(4 * count, changes.Length);
                    for (var i = 0; i < changes.Length; i += 4)
                    {
                        retuned[(pp, changes[i])] = (100 * changes[i + 1]) + (100 * ((changes[i + 2] * 128) + changes[i + 3]) / 16384.0);
                    }

                    break;
                case { Kind: 0xB0, Data: [100, var number] }:
                    parameter[e.Channel] = number;
                    break;
                case { Kind: 0xB0, Data: [6, var value] } when parameter[e.Channel] == 3:
                    program[e.Channel] = value;
                    break;
                case { IsNoteOn: true, Channel: not 9 }: // the tenth channel clicks
                    (e.Channel == 0 ? voice : drone).Add(retuned[(program[e.Channel], e.Data[0])]);
                    break;
                default:
                    break;
            }
        }

        var expected = score.Sections.SelectMany(s => s.Notes.ConvertAll(n => Heard.Cents(s.PitchOf(n).Hz))).ToArray();
        AssertNear(expected, voice);
        if (score.Drone is { } strings)
        {
            AssertNear([.. DroneTests.Sounding(score, file.TicksPerQuarter).Select(s => Heard.Cents(strings.Strings[s.StringIndex].Hz))], drone);
        }
    }

    private static void AssertNear(double[] expected, List<double> heard)
    {
        Assert.Equal(expected.Length, heard.Count);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.InRange(heard[i] - expected[i], -0.01, 0.01);
        }
    }
}
