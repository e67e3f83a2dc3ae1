using NAudio.Midi;

namespace Warmup.Midi.Tests;

/// <summary>The format's bytes are those of a plain writer of the Standard MIDI Files specification, which shares no code with it.</summary>
public class PlainBytesTests
{
    [Fact]
    public void The_plain_writer_gives_the_same_bytes_for_every_drill_of_the_benchmark()
    {
        foreach (var drill in JobDrills.All)
        {
            Same(drill);
            Same(drill with { HasDrone = true, DroneStyle = DroneStyle.Tanpura with { StringCount = 5 } });
        }
    }

    [Theory]
    [InlineData("60", "ladder.there-and-back")]
    [InlineData("61.3", "figure(1 2 3 4 3 2 1)")]
    [InlineData("237.7", "ladder.mirrored + ladder.ends")]
    public void Other_scales_tunings_speeds_and_deliveries_give_the_same_bytes_too(string tempo, string pattern)
    {
        Assert.True(Rational.TryParse(tempo, out var aksharas, out _));
        foreach (var scale in Files.Scales)
        {
            foreach (var tuning in (Tuning[])[Tuning.Equal, Tuning.Just, Tuning.Pythagorean])
            {
                foreach (var speed in (Speed[])[Speed.First, new(2, 3), new(3, 5), new(1, 7)])
                {
                    var drill = Files.Drill(scale, pattern) with { Tuning = tuning, Speeds = [speed], Tempo = aksharas, Tonic = Tonic.FromHz(147.3) };
                    Same(drill with { Delivery = Delivery.LineByLine });
                    Same(drill with { HasDrone = false });
                }
            }
        }
    }

    [Fact]
    public void NAudio_reads_the_events_and_writes_them_so_that_they_read_the_same()
    {
        // Its order of events at one tick is its own, so its bytes differ; the events themselves do not.
        foreach (var drill in JobDrills.All.Where((_, i) => i % 97 == 0))
        {
            var read = Read(Files.Bytes(drill.ToScore()));
            var written = new MemoryStream();
            MidiFile.Export(written, read);
            var again = Read(written.ToArray());
            Assert.Equal(read.Tracks, again.Tracks);
            for (var t = 0; t < read.Tracks; t++)
            {
                Assert.Equal(Sorted(read[t]), Sorted(again[t]));
            }
        }
    }

    private static MidiEventCollection Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        return new MidiFile(stream, strictChecking: true).Events;
    }

    private static IEnumerable<string> Sorted(IList<MidiEvent> events) => events.Select(e => e.ToString()!).Order(StringComparer.Ordinal);

    private static void Same(Drill drill)
    {
        var score = drill.ToScore();
        Assert.Equal(PlainMidi.Write(score), Files.Bytes(score));
    }
}
