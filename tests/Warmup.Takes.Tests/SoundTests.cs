using System.Diagnostics;

namespace Warmup.Takes.Tests;

/// <summary>What can be read: a tone of known pitch comes out of every form of file at that pitch.</summary>
public class SoundTests
{
    private const double Hz = 221.3;

    public static TheoryData<int, int, bool, bool> Forms() => new(
        from rate in (int[])[8_000, 11_025, 16_000, 22_050, 44_100, 48_000, 96_000, 192_000]
        from form in ((int Bits, bool IsFloat, bool IsExtensible)[])[(8, false, false), (16, false, false), (24, false, true), (32, false, true), (32, true, false), (32, true, true), (64, true, true)]
        where form.Bits == 16 || rate is 8_000 or 44_100
        select (rate, form.Bits, form.IsFloat, form.IsExtensible));

    [Theory]
    [MemberData(nameof(Forms))]
    public void Every_form_of_WAV_is_read_at_its_pitch_and_length(int rate, int bits, bool isFloat, bool isExtensible)
    {
        var tone = WavFiles.Tone(Hz, 0.6, rate);
        var track = Track(WavFiles.Of([.. tone.Select(s => new[] { s })], rate, bits, isFloat, isExtensible));
        Assert.InRange(track.Seconds, 0.599, 0.66);
        Assert.All(Enumerable.Range(10, 40), f => Assert.InRange(track.At(f)[0].Cents, Pitches.Cents(Hz) - 1, Pitches.Cents(Hz) + 1));
    }

    [Fact]
    public void Of_two_channels_the_louder_is_heard_and_antiphase_does_not_cancel()
    {
        var tone = WavFiles.Tone(Hz, 0.6, 44_100);
        foreach (var frames in new[] { tone.Select(s => new[] { 0f, s }), tone.Select(s => new[] { s, 0f }), tone.Select(s => new[] { s, -s }), tone.Select(s => new[] { 0f, 0f, 0f, 0f, 0f, s }) })
        {
            var track = Track(WavFiles.Of([.. frames], 44_100, 16));
            Assert.InRange(track.At(30)[0].Cents, Pitches.Cents(Hz) - 1, Pitches.Cents(Hz) + 1);
            Assert.InRange(track.Level(30), -13, -11);
        }
    }

    [Fact]
    public void A_softer_channel_that_sounds_first_is_not_heard_in_place_of_the_louder()
    {
        // A drone has one channel from the beginning, the voice the other after three seconds, 3 dB louder.
        const int Rate = 16_000;
        var voice = WavFiles.Tone(Hz, 5, Rate);
        var drone = WavFiles.Tone(1.5 * Hz, 8, Rate);
        var track = Track(WavFiles.Of([.. drone.Select((d, i) => new[] { i < 3 * Rate ? 0 : voice[i - (3 * Rate)], 0.7f * d })], Rate, 16));
        Assert.All(Enumerable.Range(10, 280), f => Assert.InRange(track.Level(f), -200, -70));
        Assert.All(Enumerable.Range(310, 480), f => Assert.InRange(track.At(f)[0].Cents, Pitches.Cents(Hz) - 1, Pitches.Cents(Hz) + 1));
    }

    [Fact]
    public void A_cut_file_is_refused_with_how_much_of_it_is_there()
    {
        var file = WavFiles.Of([.. WavFiles.Tone(Hz, 2, 16_000).Select(s => new[] { s })], 16_000, 16);
        var refused = Assert.Throws<SoundException>(() => Track(file[..(file.Length / 2)]));
        Assert.Contains("cut", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("RIFF")]
    [InlineData("OggS................OpusHead")]
    [InlineData("OggS................vorbis")]
    [InlineData("ID3 is not all that a file of sound needs")]
    [InlineData("fLaC")]
    [InlineData("a letter to the studio in Lantern Lane")]
    public void What_is_no_sound_is_refused_in_words(string text)
    {
        var refused = Assert.Throws<SoundException>(() => Track(System.Text.Encoding.ASCII.GetBytes(text)));
        Assert.Matches("record|convert", refused.Message);
    }

    [Fact]
    [Trait("Run", "whole")]
    public void More_than_half_an_hour_is_refused()
    {
        using var endless = new Endless();
        var refused = Assert.Throws<SoundException>(() => PitchTracker.Track(endless, TestContext.Current.CancellationToken));
        Assert.Contains("30 minutes", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("mp3", "libmp3lame")]
    [InlineData("ogg", "libvorbis")]
    [InlineData("opus", "libopus")]
    [InlineData("m4a", "aac")]
    [InlineData("webm", "libopus")]
    public void What_other_programs_compress_is_read_in_time_and_pitch(string ending, string codec)
    {
        var folder = Directory.CreateTempSubdirectory("takes-");
        try
        {
            var (wav, other) = (Path.Combine(folder.FullName, "take.wav"), Path.Combine(folder.FullName, "take." + ending));
            float[] sound = [.. new float[24_000], .. WavFiles.Tone(Hz, 1, 48_000), .. new float[24_000]];
            File.WriteAllBytes(wav, WavFiles.Of([.. sound.Select(s => new[] { s })], 48_000, 16));
            Encode(wav, other, codec);
            using var source = SoundFile.Open(other);
            var track = PitchTracker.Track(source, TestContext.Current.CancellationToken);
            Assert.InRange(track.At(100)[0].Cents, Pitches.Cents(Hz) - 1, Pitches.Cents(Hz) + 1);
            var begins = Enumerable.Range(0, track.LowCount).First(i => track.Low(i) > -25) / (double)PitchTrack.LowASecond;
            Assert.InRange(begins, 0.485, 0.515);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static void Encode(string from, string to, string codec)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("ffmpeg") { ArgumentList = { "-v", "error", "-y", "-i", from, "-c:a", codec, to } })!;
            process.WaitForExit();
            Assert.Equal(0, process.ExitCode);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("ffmpeg is not installed");
        }
    }

    private static PitchTrack Track(byte[] file)
    {
        using var source = SoundFile.Open(new MemoryStream(file));
        return PitchTracker.Track(source, TestContext.Current.CancellationToken);
    }

    /// <summary>Silence without end.</summary>
    private sealed class Endless() : SoundSource(8_000, 1)
    {
        public override int Read(Span<float> buffer)
        {
            buffer.Clear();
            return buffer.Length;
        }
    }
}
