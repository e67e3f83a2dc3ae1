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
    public void Every_line_and_every_answer_has_a_marker_on_its_first_frame(Sung sung)
    {
        var file = Sounds.File(sung.Score, Sounds.BeatOnly with { CountInBeats = 3 });
        var several = sung.Score.Sections.Count > 1;
        var placed = Sounds.Placed(sung.Score, 3).ToList();
        var expected = placed.SelectMany((p, s) => p.Section.Lines.SelectMany((line, l) =>
        {
            var label = several ? $"Section {s + 1}, line {l + 1}" : $"Line {l + 1}";
            var begins = (label, Sounds.Frame(p.Before + p.Section.SecondsAt(line.Onset)));
            return line.Answer > 0 ? [begins, (label + ", answer", Sounds.Frame(p.Before + p.Section.SecondsAt(line.Onset + line.Length - line.Answer)))] : (IEnumerable<(string Label, int Frame)>)[begins];
        })).ToList();
        Assert.Equal(expected.Select(e => e.Label), file.Markers.Select(m => m.Label));
        var edge = sung.Score.Sections.All(s => s.TempoChanges.IsEmpty) ? 0 : 1;
        Assert.All(expected.Zip(file.Markers), pair => Assert.InRange(pair.Second.Frame, pair.First.Frame - edge, pair.First.Frame + edge));
        Assert.InRange(file.Frames, Sounds.Frame(placed[^1].Before + placed[^1].Section.Seconds) - edge, Sounds.Frame(placed[^1].Before + placed[^1].Section.Seconds) + edge);
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

    [Fact]
    public void Generated_scores_have_several_sections_and_all_that_time_can_bring() =>
        ScoreShares.AssertEnough(Sounds.Scores, 200, seed: 1, line => TestContext.Current.TestOutputHelper?.WriteLine(line));

    [Property(MaxTest = 5, Arbitrary = [typeof(Sounds)])]
    public void Equal_scores_give_equal_bytes(Sung sung)
    {
        var again = sung.Drills.Select(d => d with { Scale = Scale.Parse(d.Scale.ToText()), Pattern = Pattern.Parse(d.Pattern.ToString()) });
        Assert.Equal(Sounds.Bytes(ScoreGenerators.Join(sung.Drills.Select(d => d.ToScore()))), Sounds.Bytes(ScoreGenerators.Join(again.Select(d => d.ToScore()))));
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
