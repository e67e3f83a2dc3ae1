using System.Buffers;

namespace Warmup.MusicXml.Tests;

/// <summary>
/// Writing to a buffer that is used again allocates no more for ten or a thousand times as many notes. The bounds
/// leave room for what the runtime allocates by itself; a byte a note would break the wider one.
/// </summary>
public class AllocationTests
{
    private const int Slack = 16 * 1024;

    [Theory]
    [InlineData("S R2 G3 M1 P D2 N3 S'", 2, 4)]
    [InlineData("S R1 G1 M2 P D1 N1 S'", 2, 3)]
    [InlineData("S R2 G3 P D2 S'", 1, 4)]
    public void Nothing_is_allocated_a_note(string scale, int kalam, int gati)
    {
        var once = Drill(scale, new Speed(kalam, gati), 1);
        var often = Drill(scale, new Speed(kalam, gati), 1_000);
        Assert.Equal(1_000 * once.NoteCount, often.NoteCount);
        foreach (var options in (MusicXmlOptions[])[new(), new() { Beat = MusicXmlBeat.Gestures, SecondVoiceSemitones = -12, HasDrone = true }])
        {
            var (few, many) = (Allocated(once, options), Allocated(often, options));
            Assert.True(many - few < Slack, $"{few} bytes for {once.NoteCount} notes, {many} for {often.NoteCount}");
        }
    }

    [Fact]
    public void Ten_times_the_notes_of_the_benchmark_allocate_no_more()
    {
        var drill = JobDrills.Drill(15, Tonic.FromMidi(60), 60);
        var (few, many) = (
            Allocated(drill.ToScore(), new()),
            Allocated((drill with { Pattern = drill.Pattern.Repeat(10) }).ToScore(), new()));
        Assert.True(many - few < Slack, $"{few} bytes for 84 notes, {many} for 840");
    }

    private static Score Drill(string scale, Speed speed, int times) => new Drill
    {
        Scale = Scale.Parse(scale),
        Pattern = Pattern.Ladder.Repeat(times),
        Tonic = Tonic.FromMidi(60),
        Speeds = [speed],
        Title = "A drill",
    }.ToScore();

    private static long Allocated(Score score, MusicXmlOptions options)
    {
        var format = new MusicXmlFormat(options);
        var buffer = new ArrayBufferWriter<byte>(1 << 26);
        return Allocation.LeastOf(() =>
        {
            buffer.ResetWrittenCount();
            format.Write(score, buffer);
        });
    }
}
