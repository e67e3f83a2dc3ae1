namespace Warmup.Midi.Tests;

/// <summary>
/// The ends of what a Standard MIDI File can hold, from the specification's own tables: quantities of variable length, tempi of 24 bits,
/// divisions of 15 bits, keys and bends of 7 and 14 bits.
/// </summary>
public class SmallestAndLargestTests
{
    private static readonly MidiOptions NoLyrics = new() { HasLyrics = false };

    /// <summary>The table of the specification: a number and its bytes. A whole note is 1,920 ticks; a note can be this long.</summary>
    [Theory]
    [InlineData(0x40, "40")]
    [InlineData(0x7F, "7F")]
    [InlineData(0x80, "8100")]
    [InlineData(0x2000, "C000")]
    [InlineData(0x3FFF, "FF7F")]
    [InlineData(0x4000, "818000")]
    [InlineData(0x100000, "C08000")]
    [InlineData(0x1FFFFF, "FFFF7F")]
    [InlineData(0x200000, "81808000")]
    public void A_quantity_of_variable_length_has_the_bytes_of_the_specification(int ticks, string bytes)
    {
        var score = (Files.Drill() with
        {
            Meter = Meter.Parse("1/1"),
            HasDrone = false,
            Expansion = new([new Line([default(LineNote) with { Length = new Rational(ticks, 1_920) }])]),
        }).ToScore();
        foreach (var options in (MidiOptions[])[NoLyrics, NoLyrics with { HasRunningStatus = true }, NoLyrics with { IsSingleTrack = true }])
        {
            Assert.Equal(480, RawFile.Of(score, options).TicksPerQuarter);

            // After its quantity the note on C4 ends: with a status of its own, or by a velocity of 0 where the status runs on.
            var off = bytes + (options.HasRunningStatus ? "3C00" : "803C40");
            Assert.Contains(off, Convert.ToHexString(Files.Bytes(score, options)), StringComparison.Ordinal);
            var track = RawFile.Of(score, options).Tracks[^1];
            Assert.Equal(ticks, track.Single(e => e.IsNoteOff).Tick - track.Single(e => e.IsNoteOn).Tick);
        }
    }

    [Theory]
    [InlineData("5/32", 29, 16_551_724)] // 29 thirty-seconds a minute are 3.625 quarters
    [InlineData("1/16", 15, 16_000_000)]
    public void The_slowest_tempi_take_24_bits(string meter, int tempo, int microseconds) =>
        Assert.Equal(microseconds, Tempo((Files.Drill() with { Meter = Meter.Parse(meter), Tempo = tempo }).ToScore()));

    [Fact]
    public void A_tempo_that_24_bits_do_not_hold_is_refused_with_its_place()
    {
        // 28 thirty-seconds a minute are 3.5 quarters; 60,000,000 divided by 0xFFFFFF is 3.576.
        var slow = Files.Drill() with { Meter = Meter.Parse("5/32"), Tempo = 28 };
        const string Bounds = "the tempo must be between 3.576 and 60000000 quarter notes a minute, not 7/2";
        Assert.Equal(Bounds, Refused(slow.ToScore()));
        Assert.Equal($"section 2: {Bounds}", Refused(Files.Joined(Files.Drill(), slow)));
    }

    [Theory]
    [InlineData(67, 32_160)] // the least common multiple of 67 and 480
    [InlineData(97, 485)] // that of 97 and 480 is 46,560 and too large: the multiple of 97 that comes next to 480
    [InlineData(4_093, 4_093)]
    [InlineData(4_096, 4_096)]
    [InlineData(15, 480)]
    public void The_division_is_the_least_that_holds_the_grid_and_is_480_where_it_can_be(int resolution, int division)
    {
        var file = RawFile.Of(Files.Fine(resolution), NoLyrics);
        Assert.Equal(division, file.TicksPerQuarter);
        Assert.Equal(division / resolution, file.Tracks[1].Single(e => e.IsNoteOff).Tick);
    }

    [Theory]
    [InlineData(91, 3, 0, MidiTuning.EqualOnly, true)] // G9, key 127
    [InlineData(91, 3, 99.99, MidiTuning.TuningStandard, true)] // 7F 7F 7E, the highest; the three bytes above it mean "no change"
    [InlineData(91, 3, 100, MidiTuning.TuningStandard, false)]
    [InlineData(91, 3, 199, MidiTuning.PitchBend, true)]
    [InlineData(91, 3, 200, MidiTuning.PitchBend, false)] // a step beyond the bend
    [InlineData(24, -2, -200, MidiTuning.PitchBend, true)] // C-1, key 0, and the whole bend down
    [InlineData(24, -2, -201, MidiTuning.PitchBend, false)]
    [InlineData(24, -2, 0, MidiTuning.TuningStandard, true)]
    [InlineData(24, -2, -1, MidiTuning.TuningStandard, false)]
    [InlineData(24, -2, -201, MidiTuning.EqualOnly, true)]
    public void Pitches_are_written_as_far_as_keys_bends_and_retuned_keys_reach(int tonic, int octave, double cents, MidiTuning tuning, bool isWritten)
    {
        var score = (Files.Drill() with
        {
            Tonic = Tonic.FromMidi(tonic, 440 * Math.Pow(2, cents / 1200)),
            HasDrone = false,
            Expansion = new([new Line([default(LineNote) with { Tone = new ScaleTone(default, octave) }])]),
        }).ToScore();
        var options = NoLyrics with { Tuning = tuning };
        if (isWritten)
        {
            Assert.Equal(tonic + (12 * octave), RawFile.Of(score, options).Tracks[1].Single(e => e.IsNoteOn).Data[0]);
        }
        else
        {
            Assert.Contains("outside 0 to 127", Assert.Throws<ExportException>(() => Files.Bytes(score, options)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Options_outside_their_ranges_are_refused_and_their_ends_are_kept()
    {
        foreach (var refused in (Func<MidiOptions>[])[
            () => new() { HeldDroneProgram = 0 }, () => new() { HeldDroneProgram = 129 }, () => new() { VoiceVelocity = 128 }, () => new() { DroneVelocity = 0 }, () => new() { VoiceVolume = 128 },
            () => new() { Tuning = (MidiTuning)3 }, () => new() { Tuning = (MidiTuning)(-1) }, () => new() { Text = (MidiTextEncoding)2 }, () => new() { Click = (MidiClick)3 }])
        {
            Assert.Throws<ArgumentOutOfRangeException>(refused);
        }

        var least = new MidiOptions { VoiceProgram = 1, DroneProgram = 1, HeldDroneProgram = 1, VoiceVelocity = 1, DroneVelocity = 1, VoiceVolume = 0, DroneVolume = 0, HeldDroneVolume = 0, AvartanaAccent = 0 };
        var most = new MidiOptions { VoiceProgram = 128, DroneProgram = 128, HeldDroneProgram = 128, VoiceVelocity = 127, DroneVelocity = 127, VoiceVolume = 127, DroneVolume = 127, AngaAccent = 126 };
        Assert.Equal((0, 1, 1), (RawFile.Of(Files.Drill().ToScore(), least).Tracks[1].First(e => e.Kind == 0xC0).Data[0], least.VoiceVelocity, least.HeldDroneProgram));
        Assert.Equal((127, 127), (RawFile.Of(Files.Drill().ToScore(), most).Tracks[1].First(e => e.Kind == 0xC0).Data[0], most.DroneVelocity));
    }

    private static int Tempo(Score score) => RawFile.Of(score).Tracks[0].Single(e => e.IsMeta(0x51)).Data is var d ? (d[0] << 16) | (d[1] << 8) | d[2] : 0;

    private static string Refused(Score score) => Assert.Throws<ExportException>(() => Files.Bytes(score)).Message;
}
