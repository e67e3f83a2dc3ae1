namespace Warmup.Audio.Tests;

/// <summary>Writing an hour as easily as a minute: memory, streams that cannot seek, stopping, and what no file can hold.</summary>
public class StreamingTests
{
    [Theory]
    [Trait("Run", "whole")]
    [InlineData(DroneSound.Plucked, false)]
    [InlineData(DroneSound.Held, true)]
    public void Ten_minutes_need_no_more_memory_than_one(DroneSound kind, bool answers)
    {
        // Lines of 4 aksharas at 60 a minute, filled up to whole avartanas of 8: the same pitches, ten times as long.
        var one = Sounds.Drill("ladder.drop(2).take(1).repeat(15)").ToScore();
        var ten = Sounds.Drill("ladder.drop(2).take(1).repeat(150)").ToScore();
        Assert.Equal((64, 600), ((int)one.Seconds.ToDouble(), (int)ten.Seconds.ToDouble()));
        if (answers)
        {
            (one, ten) = (one.WithAnswers(), ten.WithAnswers());
        }

        var format = new WavFormat(new WavOptions { DroneSound = kind });

        // The first run compiles.
        format.Write(one, Stream.Null);
        var (a, b) = (Allocated(format, one), Allocated(format, ten));
        Assert.True(a < 1_500_000, $"{a} bytes for a minute");

        // The runtime counts a thread's memory in blocks of some kilobytes; the frames of nine minutes more are 95 MB.
        Assert.True(b - a < 64 * 1024, $"{a} bytes for a minute, {b} for ten");
    }

    [Fact]
    public void A_stream_that_cannot_seek_gets_the_same_bytes()
    {
        var score = Sounds.Drill("ladder.take(2)").ToScore();
        var options = Sounds.VoiceOnly with { Channels = WavChannels.Mono };
        using var windows = new Windows([Second], Second);
        new WavFormat(options).Write(score, windows);
        var bytes = Sounds.Bytes(score, options);
        Assert.Equal(bytes.Length, windows.Count);
        Assert.Equal(new WaveFile(bytes).Left[Second..(2 * Second)], windows.Samples[0]);
        Assert.False(Sounds.IsSilent(windows.Samples[0]));
    }

    [Fact]
    public void Writing_stops_half_way_when_asked_to()
    {
        var score = Sounds.Drill("ladder.repeat(3)").ToScore();
        using var source = new CancellationTokenSource();
        using var stream = new Windows([], 0, written => StopAt(written, source));
        var whole = Sounds.Bytes(score).Length;
        Assert.Throws<OperationCanceledException>(() => new WavFormat().Write(score, stream, source.Token));

        // The buffer in front of the stream may have been full once more.
        Assert.InRange(stream.Count, 500_000, 600_000);
        Assert.True(stream.Count < whole);

        static void StopAt(long written, CancellationTokenSource source)
        {
            if (written >= 500_000)
            {
                source.Cancel();
            }
        }
    }

    [Fact]
    public void Writing_that_was_stopped_before_writes_nothing()
    {
        using var stream = new MemoryStream();
        Assert.Throws<OperationCanceledException>(
            () => new WavFormat().Write(Sounds.Drill().ToScore(), stream, new CancellationToken(canceled: true)));
        Assert.Equal(0, stream.Length);
    }

    [Fact]
    public void What_a_file_stops_at_is_passed_on()
    {
        using var full = new Windows([], 0, written => throw new IOException("no space left"));
        var refused = Assert.Throws<IOException>(() => new WavFormat().Write(Sounds.Drill().ToScore(), full));
        Assert.Equal("no space left", refused.Message);
    }

    [Fact]
    public void A_sound_of_more_than_4_GiB_is_refused_before_anything_is_written()
    {
        // 10 aksharas a minute: 7 hours are 4,200. Two channels of 16 bits at 44,100 frames: 4.4e9 bytes; one channel is half of it.
        var score = (Sounds.Drill("figure(1).take(1).repeat(4200)") with { Tempo = 10 }).ToScore();
        Assert.Equal(7 * 3600, score.Seconds);
        var message = Refusal(score, new WavOptions { CountInBeats = 0, HasMarkers = false });
        Assert.Contains($"{(7L * 3600 * 44_100 * 4) + 44}", message, StringComparison.Ordinal);
        Assert.Contains("4294967303", message, StringComparison.Ordinal);

        using var source = new CancellationTokenSource();
        using var stream = new Windows([], 0, written => source.Cancel());
        Assert.Throws<OperationCanceledException>(() => new WavFormat(new WavOptions { Channels = WavChannels.Mono }).Write(score, stream, source.Token));
    }

    [Fact]
    public void Times_that_do_not_fit_exact_fractions_are_refused()
    {
        var tempo = new Rational(long.MaxValue / 4, (long.MaxValue / 240) - 1);
        Assert.Contains("64 bits", Refusal(Sounds.Joined(Sounds.Drill() with { Tempo = tempo }, Sounds.Drill() with { Tempo = 61 })), StringComparison.Ordinal);
    }

    [Fact]
    public void Null_is_refused()
    {
        Assert.Throws<ArgumentNullException>(() => new WavFormat(null!));
        Assert.Throws<ArgumentNullException>(() => new WavFormat().Write(null!, Stream.Null));
        Assert.Throws<ArgumentNullException>(() => new WavFormat().Write(Sounds.Drill().ToScore(), null!));
    }

    private const int Second = 44_100;

    private static string Refusal(Score score, WavOptions? options = null)
    {
        using var stream = new MemoryStream();
        var refused = Assert.Throws<ExportException>(() => new WavFormat(options ?? WavOptions.Default).Write(score, stream));
        Assert.Equal(0, stream.Length);
        return refused.Message;
    }

    private static long Allocated(WavFormat format, Score score) => Allocation.Of(() => format.Write(score, Stream.Null));
}
