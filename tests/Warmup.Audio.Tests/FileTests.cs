using FsCheck.Xunit;

namespace Warmup.Audio.Tests;

/// <summary>The file: chunks, sizes, markers. The expectations are the RIFF and WAVE rules, which <see cref="WaveFile"/> checks.</summary>
public class FileTests
{
    [Theory]
    [InlineData(WavChannels.Mono, 44_100)]
    [InlineData(WavChannels.Mono, 48_000)]
    [InlineData(WavChannels.Stereo, 44_100)]
    [InlineData(WavChannels.Stereo, 48_000)]
    public void A_file_is_plain_16_bit_PCM_with_chunks_that_fit(WavChannels channels, int rate)
    {
        var score = Sounds.Drill("ladder.take(2)").ToScore();
        var file = Sounds.File(score, new WavOptions { Channels = channels, SampleRate = rate });
        Assert.Equal((channels == WavChannels.Mono ? 1 : 2, rate), (file.Channels, file.SampleRate));
        Assert.Equal(["fmt ", "data", "cue ", "LIST"], file.ChunkNames);

        // Four beats of count-in and an avartana of Adi, at one akshara a second.
        Assert.Equal(rate * (4 + 8), file.Frames);
    }

    [Property(MaxTest = 15, Arbitrary = [typeof(Sounds)])]
    public void Every_line_has_a_marker_on_its_first_frame(Drill drill)
    {
        var section = drill.ToScore().Sections[0];
        var file = Sounds.File(drill.ToScore(), Sounds.BeatOnly with { CountInBeats = 3 });
        var expected = section.Lines
            .Select((line, i) => ($"Line {i + 1}", Sounds.Frame(line.Onset + 3, section.Tempo, 44_100)));
        Assert.Equal(expected, file.Markers);
        Assert.Equal(Sounds.Frame(section.Length + 3, section.Tempo, 44_100), file.Frames);
    }

    [Fact]
    public void Markers_name_the_section_where_there_are_several()
    {
        // Ten lines and more give labels of even and of odd length, so that some need a byte of padding.
        var score = Sounds.Joined(Sounds.Drill("ladder.repeat(3)"), Sounds.Drill("ladder.take(1)"));
        var markers = Sounds.File(score, Sounds.VoiceOnly).Markers;
        Assert.Equal(16, markers.Length);
        Assert.Equal("Section 1, line 15", markers[14].Label);

        // Three times 2 + 3 + 4 + 5 + 6 aksharas are 60, filled up to 64.
        Assert.Equal(("Section 2, line 1", 64 * 44_100L), markers[15]);
    }

    [Fact]
    public void Without_markers_there_are_only_format_and_data()
    {
        var file = Sounds.File(Sounds.Drill("ladder.take(2)").ToScore(), new WavOptions { HasMarkers = false });
        Assert.Equal(["fmt ", "data"], file.ChunkNames);
    }

    [Property(MaxTest = 5, Arbitrary = [typeof(Sounds)])]
    public void Equal_scores_give_equal_bytes(Drill drill)
    {
        var again = drill with { Scale = Scale.Parse(drill.Scale.ToText()), Pattern = Pattern.Parse(drill.Pattern.ToString()) };
        Assert.Equal(Sounds.Bytes(drill.ToScore()), Sounds.Bytes(again.ToScore()));
    }

    [Fact]
    public void One_channel_is_the_sum_of_two()
    {
        var score = Sounds.Drill("ladder.take(2)").ToScore();
        var (mono, stereo) = (Sounds.File(score, new WavOptions { Channels = WavChannels.Mono }), Sounds.File(score));
        for (var i = 0; i < mono.Frames; i++)
        {
            // Each of the three was rounded by itself.
            Assert.InRange(mono.Left[i] - stereo.Left[i] - stereo.Right[i], -1, 1);
        }
    }

    [Fact]
    public void The_name_and_the_ending()
    {
        var format = new WavFormat();
        Assert.Equal([".wav"], (IEnumerable<string>)format.Extensions);
        Assert.Equal(WavOptions.Default, format.Options);
        Assert.NotEmpty(format.Name);
    }

    [Fact]
    public void Options_outside_their_range_are_refused_with_value_and_range()
    {
        Refused(() => new WavOptions { SampleRate = 22_050 }, "44100", "48000", "22050");
        Refused(() => new WavOptions { CountInBeats = -1 }, "between 0 and 64", "-1");
        Refused(() => new WavOptions { CountInBeats = 65 }, "between 0 and 64", "65");
        Refused(() => new WavOptions { VoiceDecibels = 0.1 }, "VoiceDecibels", "between -60 and 0", "0.1");
        Refused(() => new WavOptions { DroneDecibels = -61 }, "DroneDecibels", "between -60 and 0", "-61");
        Refused(() => new WavOptions { BeatDecibels = double.NaN }, "BeatDecibels", "NaN");
        Assert.Equal(new WavOptions { CountInBeats = 2, DroneSound = DroneSound.Held }, new WavOptions { CountInBeats = 2, DroneSound = DroneSound.Held });
    }

    private static void Refused(Func<WavOptions> make, params string[] parts)
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(make);
        Assert.All(parts, p => Assert.Contains(p, refused.Message, StringComparison.Ordinal));
    }
}
