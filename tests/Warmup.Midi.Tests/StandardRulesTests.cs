using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>
/// The rules of the Standard MIDI Files 1.0 specification and of RP-017 (lyrics), checked on the bytes by a reader of the tests' own,
/// which itself refuses wrong lengths, a missing end of track and bytes that are no events.
/// </summary>
public class StandardRulesTests
{
    [Fact]
    public void Format_1_has_a_conductor_a_voice_and_a_drone_track()
    {
        var file = RawFile.Of(Files.Drill().ToScore());
        Assert.Equal(1, file.Format);
        Assert.Equal(["A drill", "Voice", "Drone"], file.Tracks.Select(t => t[0].Text));
    }

    [Fact]
    public void Format_0_has_one_track_on_request()
    {
        var file = RawFile.Of(Files.Drill().ToScore(), new MidiOptions { IsSingleTrack = true });
        Assert.Equal(0, file.Format);
        var track = Assert.Single(file.Tracks);
        Assert.Equal("A drill", Assert.Single(track, e => e.IsMeta(0x03)).Text);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Format_0_holds_the_events_of_format_1(bool running)
    {
        var score = Files.Joined(Files.Drill(), Files.Drill() with { Tempo = 77, Tuning = Tuning.Just });
        var options = new MidiOptions { HasRunningStatus = running };
        var one = RawFile.Of(score, options with { IsSingleTrack = true });
        var several = RawFile.Of(score, options);
        static IEnumerable<string> Sorted(IEnumerable<RawEvent> events) =>
            events.Where(e => !e.IsMeta(0x2F) && !e.IsMeta(0x03)).Select(e => $"{e.Tick} {e.Status} {e.Type} {Convert.ToHexString(e.Data)}").Order();
        Assert.Equal(Sorted(several.Tracks.SelectMany(t => t)), Sorted(one.Tracks[0]));
    }

    [Fact]
    public void Tempo_time_signature_and_key_signature_are_in_the_first_track_at_tick_0_even_at_the_defaults()
    {
        // 120 quarters a minute in 4/4 and C major would be the standard's defaults; nothing is left out for being usual.
        var file = RawFile.Of((Files.Drill() with { Tempo = 120 }).ToScore());
        var start = file.Tracks[0].TakeWhile(e => e.Tick == 0).ToArray();
        Assert.Equal([0x07, 0xA1, 0x20], Assert.Single(start, e => e.IsMeta(0x51)).Data);
        Assert.Equal([8, 2, 24, 8], Assert.Single(start, e => e.IsMeta(0x58)).Data);
        Assert.Equal([0, 0], Assert.Single(start, e => e.IsMeta(0x59)).Data);
        Assert.DoesNotContain(file.Tracks.Skip(1).SelectMany(t => t), e => e.IsMeta(0x51) || e.IsMeta(0x58) || e.IsMeta(0x59));
    }

    [Fact]
    public void Each_track_begins_with_its_name_at_tick_0()
    {
        var file = RawFile.Of(Files.Drill().ToScore());
        Assert.All(file.Tracks, t =>
        {
            Assert.True(t[0].IsMeta(0x03));
            Assert.Equal(0, t[0].Tick);
        });
    }

    [Fact]
    public void End_of_track_is_last_and_present_in_every_track_at_the_scores_end()
    {
        var score = Files.Drill().ToScore();
        var file = RawFile.Of(score);
        Assert.All(file.Tracks, t =>
        {
            Assert.True(t[^1].IsMeta(0x2F));
            Assert.Empty(t[^1].Data);
            Assert.Single(t, e => e.IsMeta(0x2F));
            Assert.Equal(score.Sections[0].Length, new Rational(t[^1].Tick, file.TicksPerQuarter));
        });
    }

    [Property(Arbitrary = [typeof(Drills)])]
    public void At_equal_ticks_note_off_comes_before_note_on(Sung sung)
    {
        foreach (var track in Both(sung.Score).SelectMany(f => f.Tracks))
        {
            for (var i = 1; i < track.Count; i++)
            {
                Assert.False(track[i].IsNoteOff && track[i - 1].IsNoteOn && track[i].Tick == track[i - 1].Tick);
            }

            foreach (var tick in track.GroupBy(e => e.Tick))
            {
                var kinds = tick.Where(e => e.IsNoteOn || e.IsNoteOff).Select(e => e.IsNoteOn).ToArray();
                Assert.Equal(kinds.Order(), kinds);
            }
        }
    }

    [Property(Arbitrary = [typeof(Drills)])]
    public void A_pitch_bend_comes_after_the_note_before_ended_and_before_the_note_it_belongs_to(Sung sung)
    {
        foreach (var track in Both(ScoreGenerators.Join(sung.Drills.Select(d => (d with { Tuning = Tuning.Just }).ToScore()))).SelectMany(f => f.Tracks))
        {
            var sounding = new int[16];
            for (var i = 0; i < track.Count; i++)
            {
                var e = track[i];
                sounding[e.Channel] += e.IsNoteOn ? 1 : e.IsNoteOff ? -1 : 0;
                if (e.Kind == 0xE0)
                {
                    Assert.Equal(0, sounding[e.Channel]);
                    // A string of the drone that a short drill never reaches has a bend and no note.
                    var next = track.Skip(i).FirstOrDefault(n => n.IsNoteOn && n.Channel == e.Channel);
                    Assert.True(next?.Tick == e.Tick || e.Tick == 0, "a bend stands at its note's tick, the first one at the beginning");
                }
            }
        }
    }

    [Theory]
    [InlineData(60, 1, 1_000_000)]
    [InlineData(10, 1, 6_000_000)]
    [InlineData(400, 1, 150_000)]
    [InlineData(145, 2, 827_586)] // 60,000,000 / 72.5 = 827,586.2
    [InlineData(97, 1, 618_557)] // 618,556.7
    [InlineData(120_000_000, 2_000_001, 1_000_001)] // 1,000,000.5
    [InlineData(60_000_000_001, 1_000_000_000, 1_000_000)] // 999,999.99998
    public void The_tempo_is_the_nearest_whole_microsecond(long numerator, long denominator, int microseconds)
    {
        var file = RawFile.Of((Files.Drill() with { Tempo = new Rational(numerator, denominator) }).ToScore());
        var data = Assert.Single(file.Tracks[0], e => e.IsMeta(0x51)).Data;
        Assert.Equal(microseconds, (data[0] << 16) | (data[1] << 8) | data[2]);
    }

    [Fact]
    public void A_time_beyond_a_variable_length_quantity_is_refused_and_nothing_is_written()
    {
        // In steps of 1/67 of a whole note: 32,160 ticks a quarter (480 x 67) are 1,920 a step, and 139,810 of those are the most below
        // 0x0FFFFFFF. One step more is refused.
        var buffer = new System.Buffers.ArrayBufferWriter<byte>();
        var refused = Assert.Throws<ExportException>(() => new MidiFormat().Write(Apart(139_811), buffer));
        Assert.Contains("268435455", refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, buffer.WrittenCount);
        var track = RawFile.Of(Apart(139_810)).Tracks[1];
        Assert.Equal(1_920 * 139_810L, track.Last(e => e.IsNoteOn).Tick - track.First(e => e.IsNoteOff).Tick);
    }

    /// <summary>Two notes with silence between them: after the first to the end of 2,086 bars, and a bar counted in before the second.</summary>
    private static Score Apart(int steps)
    {
        var first = new Rational((2_087 * 67) - steps, 67);
        var plain = Files.Drill() with { Meter = Meter.Parse("1/1"), HasDrone = false };
        var before = plain with { Expansion = new([new Line([default(LineNote) with { Length = first, Rest = 2_086 - first }])]) };
        var after = plain with { CountIn = 1, Expansion = new([new Line([default(LineNote)])]) };
        return Score.Join("apart", [before.ToScore(), after.ToScore()]);
    }

    [Fact]
    public void Each_syllable_is_one_lyric_event_a_space_ends_a_word_and_a_carriage_return_a_line()
    {
        var track = RawFile.Of(Files.Drill(pattern: "ladder.take(2)").ToScore()).Tracks[1];
        Assert.Equal(["S ", "R \r", "S ", "R ", "G \r"], track.Where(e => e.IsMeta(0x05)).Select(e => e.Text));
        Assert.Equal(track.Where(e => e.IsNoteOn).Select(e => e.Tick), track.Where(e => e.IsMeta(0x05)).Select(e => e.Tick));
    }

    [Fact]
    public void A_melisma_has_an_empty_lyric_event_on_each_further_note()
    {
        // "sa" over three notes, then "ga" over the rest of the line.
        var drill = Files.Drill(pattern: "[S R G M]");
        var line = drill.Pattern.Expand(drill.Scale).Lines[0];
        string[] sung = ["sa", "", "", "ga"];
        var notes = line.Notes.Select((n, i) => n with { Sung = sung[i] }).ToValueList();
        var track = RawFile.Of(drill.ToScore(new Expansion([new Line(notes)], []))).Tracks[1];
        var lyrics = track.Where(e => e.IsMeta(0x05)).ToArray();
        Assert.Equal(["sa ", "", "", "ga \r"], lyrics.Select(e => e.Text));
        Assert.Equal(track.Where(e => e.IsNoteOn).Select(e => e.Tick), lyrics.Select(e => e.Tick));

        // A melisma at the end of a line is empty but for the end of the line.
        notes = line.Notes.Select((n, i) => n with { Sung = i == 0 ? "sa" : "" }).ToValueList();
        track = RawFile.Of(drill.ToScore(new Expansion([new Line(notes)], []))).Tracks[1];
        Assert.Equal(["sa ", "", "", "\r"], track.Where(e => e.IsMeta(0x05)).Select(e => e.Text));
    }

    [Theory]
    [InlineData("a[b")]
    [InlineData("]")]
    [InlineData("{#x}")]
    [InlineData("a}")]
    [InlineData("a\\b")]
    public void The_characters_that_RP_026_reserves_are_refused_in_a_lyric_and_kept_in_names(string text)
    {
        // RP-026 gives \ [ ] { } commands in lyrics and in lyrics alone; RP-017 says to avoid them.
        var score = (Files.Drill(pattern: "ladder.take(2)") with { Syllables = Syllables.Vowel(text), Title = text }).ToScore();
        foreach (var options in (MidiOptions[])[new(), new() { Text = MidiTextEncoding.Utf8 }])
        {
            var refused = Assert.Throws<ExportException>(() => Files.Bytes(score, options));
            Assert.StartsWith($"line 1, note 1: the syllable '{text}' holds '", refused.Message, StringComparison.Ordinal);
            Assert.Equal(text, RawFile.Of(score, options with { HasLyrics = false }).Tracks[0][0].Text);
        }
    }

    [Fact]
    public void Clicks_are_on_channel_10_and_nothing_else_is()
    {
        var score = (Files.Drill() with { Tuning = Tuning.Just, CountIn = 1 }).ToScore();
        var file = RawFile.Of(score, new MidiOptions { Click = MidiClick.Throughout });
        Assert.Equal(4, file.Tracks.Count);
        Assert.All(file.Tracks[3].Where(e => e.IsNoteOn || e.IsNoteOff), e => Assert.Equal(10 - 1, e.Channel));
        Assert.DoesNotContain(file.Tracks.Take(3).SelectMany(t => t), e => e.Status < 0xF0 && e.Channel == 10 - 1);
        Assert.DoesNotContain(file.Tracks[3], e => e.Kind is 0xE0 or 0xB0 or 0xC0);
    }

    [Fact]
    public void The_voice_and_the_drone_have_separate_channels_and_tracks()
    {
        var file = RawFile.Of((Files.Drill() with { Tuning = Tuning.Just }).ToScore());
        int[] Channels(int track) => [.. file.Tracks[track].Where(e => e.Status < 0xF0).Select(e => e.Channel).Distinct().Order()];
        Assert.Equal([0], Channels(1));
        Assert.Equal([1, 2, 3], Channels(2));
        Assert.Empty(Channels(0));
    }

    [Fact]
    public void A_tempo_and_a_meter_stand_at_the_beginning_of_every_section()
    {
        var score = Files.Joined(Files.Drill(pattern: "ladder.take(2)"), Files.Drill(pattern: "ladder.take(1)") with { Tempo = 120, Meter = Meter.Free });
        var track = RawFile.Of(score).Tracks[0];
        Assert.Equal([0L, 8 * 480], track.Where(e => e.IsMeta(0x51)).Select(e => e.Tick));
        Assert.Equal([0L, 8 * 480], track.Where(e => e.IsMeta(0x58)).Select(e => e.Tick));
        Assert.Equal([2, 2, 24, 8], track.Last(e => e.IsMeta(0x58)).Data);
        Assert.Equal(2, track.Count(e => e.IsMeta(0x01)));
    }

    [Fact]
    public void Free_rhythm_has_the_time_signature_of_each_bar()
    {
        // Lines of 2, 3 and 4 units of a quarter of an akshara end on sixteenths: 2/4 of an akshara is an eighth note.
        var drill = Files.Drill(pattern: "ladder.take(3)") with { Meter = Meter.Free, Speeds = [Speed.Third] };
        var signatures = RawFile.Of(drill.ToScore()).Tracks[0].Where(e => e.IsMeta(0x58)).ToArray();
        Assert.Equal([0L, 240, 600], signatures.Select(e => e.Tick));
        Assert.Equal([(1, 3, 12), (3, 4, 6), (1, 2, 24)], signatures.Select(e => ((int)e.Data[0], (int)e.Data[1], (int)e.Data[2])));
    }

    [Property(Arbitrary = [typeof(Drills)])]
    public void The_measures_of_the_time_signatures_are_the_scores(Sung sung)
    {
        var file = RawFile.Of(sung.Score);
        var signatures = file.Tracks[0].Where(e => e.IsMeta(0x58)).ToArray();
        var start = Rational.Zero;
        foreach (var section in sung.Score.Sections)
        {
            var quarters = 4 * section.Meter.BeatValue;
            foreach (var measure in section.Measures)
            {
                var last = signatures.Last(e => new Rational(e.Tick, file.TicksPerQuarter) <= start + (measure.Onset * quarters));
                Assert.Equal(measure.Length * quarters, new Rational(4 * last.Data[0], 1L << last.Data[1]));
            }

            start += section.Length * quarters;
        }
    }

    [Fact]
    public void A_marker_stands_at_the_beginning_of_each_line()
    {
        var score = (Files.Drill(pattern: "ladder.take(3)") with { Delivery = Delivery.LineByLine }).ToScore();
        var markers = RawFile.Of(score).Tracks[0].Where(e => e.IsMeta(0x06)).ToArray();
        Assert.Equal(["Line 1", "Line 2", "Line 3"], markers.Select(e => e.Text));
        Assert.Equal([0L, 8 * 480, 16 * 480], markers.Select(e => e.Tick));
        Assert.Equal(
            ["Section 1, line 1", "Section 2, line 1"],
            RawFile.Of(Files.Joined(Files.Drill(pattern: "ladder.take(1)"), Files.Drill(pattern: "ladder.take(1)"))).Tracks[0]
                .Where(e => e.IsMeta(0x06)).Select(e => e.Text));
    }

    [Fact]
    public void The_bend_range_is_set_by_RPN_0_to_two_whole_semitones_on_every_channel_in_use()
    {
        var file = RawFile.Of((Files.Drill() with { Tuning = Tuning.Just }).ToScore());
        var all = file.Tracks.SelectMany(t => t).ToArray();
        foreach (var channel in all.Where(e => e.IsNoteOn).Select(e => e.Channel).Distinct())
        {
            var controls = all.Where(e => e.Kind == 0xB0 && e.Channel == channel).Select(e => ((int)e.Data[0], (int)e.Data[1]));
            Assert.Equal([(7, 100), (101, 0), (100, 0), (6, 2), (38, 0), (101, 127), (100, 127)], controls);
            Assert.All(all.Where(e => e.Kind == 0xB0), e => Assert.Equal(0, e.Tick));
        }
    }

    [Fact]
    public void General_MIDI_programs_are_54_for_the_voice_and_105_for_the_drone_counted_from_1()
    {
        var file = RawFile.Of(Files.Drill().ToScore());
        Assert.Equal([54 - 1], file.Tracks[1].Where(e => e.Kind == 0xC0).Select(e => (int)e.Data[0]));
        Assert.All(file.Tracks[2].Where(e => e.Kind == 0xC0), e => Assert.Equal(105 - 1, e.Data[0]));
        var chosen = RawFile.Of(Files.Drill().ToScore(), new MidiOptions { VoiceProgram = 53, DroneProgram = 21 });
        Assert.Equal([52, 20], chosen.Tracks.Skip(1).Select(t => (int)t.First(e => e.Kind == 0xC0).Data[0]));
    }

    [Fact]
    public void Every_channel_has_its_volume_by_controller_7()
    {
        var options = new MidiOptions { VoiceVolume = 90, DroneVolume = 80, HeldDroneVolume = 70 };
        var drill = Files.Drill();
        Assert.Equal([90, 80], Volumes(drill, options));
        Assert.Equal([90, 70], Volumes(drill with { DroneStyle = DroneStyle.SrutiBox }, options));
        foreach (var wrong in (int[])[-1, 128])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { VoiceVolume = wrong });
            Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { DroneVolume = wrong });
            Assert.Throws<ArgumentOutOfRangeException>(() => new MidiOptions { HeldDroneVolume = wrong });
        }

        static IEnumerable<int> Volumes(Drill drill, MidiOptions options) => RawFile.Of(drill.ToScore(), options).Tracks.Skip(1)
            .Select(t => t.Where(e => e.Kind == 0xB0 && e.Data[0] == 7).Select(e => (int)e.Data[1]).Distinct().Single());
    }

    [Fact]
    public void Without_running_status_every_event_has_its_status_and_with_it_notes_share_one()
    {
        var score = Files.Drill().ToScore();
        Assert.All(RawFile.Of(score).Tracks.SelectMany(t => t), e => Assert.True(e.HasStatus));
        var options = new MidiOptions { HasRunningStatus = true, HasLyrics = false };
        var notes = RawFile.Of(score, options).Tracks[1].Where(e => e.IsNoteOn || e.IsNoteOff).ToArray();
        Assert.Single(notes, e => e.HasStatus);
        Assert.True(Files.Bytes(score, options).Length < Files.Bytes(score, options with { HasRunningStatus = false }).Length);
    }

    [Theory]
    [InlineData(1, 4, 480)]
    [InlineData(3, 4, 480)]
    [InlineData(3, 7, 3360)] // a seventh of an akshara: the least common multiple of 7 and 480
    [InlineData(4, 9, 1440)] // 9 x 8 / 4 = 18 notes an akshara
    public void The_division_is_480_or_a_multiple_that_the_grid_divides(int kalam, int gati, int division) =>
        Assert.Equal(division, RawFile.Of((Files.Drill() with { Speeds = [new Speed(kalam, gati)] }).ToScore()).TicksPerQuarter);

    [Fact]
    public void A_grid_that_no_division_holds_is_refused_with_its_numbers()
    {
        // 4,093 and 4,091 are primes: together they need 4,093 x 4,091 ticks, about 17 million.
        var refused = Assert.Throws<ExportException>(() => Files.Bytes(Score.Join("fine", [Files.Fine(4_093), Files.Fine(4_091)])));
        Assert.Contains("4093, 4091", refused.Message, StringComparison.Ordinal);
        Assert.Contains("32767", refused.Message, StringComparison.Ordinal);
    }

    private static RawFile[] Both(Score score) => [RawFile.Of(score), RawFile.Of(score, new MidiOptions { IsSingleTrack = true, HasRunningStatus = true })];
}
