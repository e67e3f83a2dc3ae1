namespace Warmup.Midi.Tests;

/// <summary>Each track can be left out or written alone, and a call and response leaves time to answer while drone and beat go on.</summary>
public class TracksTests
{
    private static readonly MidiOptions All = new() { Click = MidiClick.Throughout };

    private static readonly MidiOptions None = new() { HasVoice = false, HasDrone = false, Click = MidiClick.None };

    public static TheoryData<string, MidiOptions> Some => new()
    {
        { "Voice Drone Beat", All },
        { "Drone Beat", All with { HasVoice = false } },
        { "Voice Beat", All with { HasDrone = false } },
        { "Voice Drone", All with { Click = MidiClick.None } },
        { "Voice", None with { HasVoice = true } },
        { "Drone", None with { HasDrone = true } },
        { "Beat", None with { Click = MidiClick.Throughout } },
        { "", None },
    };

    [Theory]
    [MemberData(nameof(Some), DisableDiscoveryEnumeration = true)]
    public void Each_track_can_be_left_out_or_written_alone_and_stays_as_it_is(string names, MidiOptions options)
    {
        var score = (Files.Drill() with { Tuning = Tuning.Just }).ToScore();
        var whole = RawFile.Of(score, All);
        var file = RawFile.Of(score, options);
        Assert.Equal(names.Split(' ', StringSplitOptions.RemoveEmptyEntries).Prepend("A drill"), file.Tracks.Select(t => t[0].Text));
        foreach (var track in file.Tracks)
        {
            var same = whole.Tracks.Single(t => t[0].Text == track[0].Text);
            Assert.Equal(same.Select(Shown), track.Select(Shown));
        }

        // In one track, too, nothing is there but what was asked for.
        var single = RawFile.Of(score, options with { IsSingleTrack = true });
        Assert.Equal(file.Tracks.Sum(t => t.Count(e => e.IsNoteOn)), Assert.Single(single.Tracks).Count(e => e.IsNoteOn));
    }

    [Fact]
    public void In_a_call_and_response_the_voice_waits_while_drone_and_beat_go_on()
    {
        // Adi at 60, line by line: lines of 8 aksharas with as many to answer, 32 in all.
        var drill = Files.Drill(pattern: "ladder.take(2)") with { Delivery = Delivery.LineByLine };
        var heard = Heard.From(drill.ToScore().WithAnswers(), All);
        Assert.Equal([0L, 1, 16, 17, 18], heard.Voice.Select(n => n.Tick / 480));
        Assert.Equal(Enumerable.Range(0, 32).Select(b => (long)b), heard.Clicks.Select(n => n.Tick / 480));

        // The tanpura's strokes at 0, 1, 2, 3 of every 5 seconds, into the last answer.
        Assert.Equal(Enumerable.Range(0, 32).Where(s => s % 5 != 4).Select(s => (long)s), heard.Drone.Select(n => n.Tick / 480));
    }

    [Fact]
    public void A_marker_stands_at_the_beginning_of_each_answer()
    {
        var score = Files.Drill(pattern: "ladder.take(2)").ToScore().WithAnswers();
        var markers = RawFile.Of(score).Tracks[0].Where(e => e.IsMeta(0x06)).Select(e => (e.Tick / 480, e.Text));
        Assert.Equal([(0L, "Line 1"), (2L, "Line 1, answer"), (4L, "Line 2"), (7L, "Line 2, answer")], markers);
        var two = Score.Join(score.Title, [score, score]);
        Assert.Equal(
            ["Section 1, line 1", "Section 1, line 1, answer", "Section 1, line 2", "Section 1, line 2, answer", "Section 2, line 1"],
            RawFile.Of(two).Tracks[0].Where(e => e.IsMeta(0x06)).Select(e => e.Text).Take(5));
    }

    private static string Shown(RawEvent e) => $"{e.Tick} {e.Status:X2} {e.Type} {Convert.ToHexString(e.Data)}";
}
