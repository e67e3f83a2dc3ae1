using System.Text;

namespace Warmup.Takes;

/// <summary>
/// Opens recordings: WAV (8 to 32 bits, floating point, extensible), MP3, Ogg Vorbis and Ogg Opus; what phones and browsers record (M4A,
/// WebM) through the program ffmpeg where it is installed.
/// </summary>
public static class SoundFile
{
    private const string Known = "WAV, MP3, Ogg Vorbis and Ogg Opus can be read; convert it with: ffmpeg -i FILE -ac 1 take.wav";

    /// <summary>Opens a recording.</summary>
    /// <param name="path">The file.</param>
    /// <param name="ffmpeg">The program that decodes M4A and WebM; <see langword="null"/> never starts one.</param>
    /// <exception cref="SoundException">The file holds no sound that can be read; the message says how to convert it.</exception>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static SoundSource Open(string path, string? ffmpeg = "ffmpeg")
    {
        ArgumentNullException.ThrowIfNull(path);
        var stream = File.OpenRead(path);
        try
        {
            var head = Head(stream);
            if (IsForFfmpeg(head))
            {
                stream.Dispose();
                return FfmpegSource.Open(path, ffmpeg);
            }

            return Open(stream, head);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>Opens a recording that is read from a stream: WAV, MP3, Ogg Vorbis or Ogg Opus.</summary>
    /// <param name="stream">A stream that can seek; the source closes it.</param>
    /// <exception cref="SoundException">It holds no sound that can be read.</exception>
    public static SoundSource Open(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var head = Head(stream);
        return IsForFfmpeg(head) ? throw new SoundException($"the recording is M4A or WebM, which is read from files only; {Known}") : Open(stream, head);
    }

    private static SoundSource Open(Stream stream, byte[] head)
    {
        try
        {
            return head switch
            {
                [] => throw new SoundException("the recording is empty; record again"),
                [(byte)'R', (byte)'I', (byte)'F', (byte)'F' or (byte)'X', ..] or [(byte)'R', (byte)'F', (byte)'6', (byte)'4', ..] => WavSource.Open(stream),
                [(byte)'O', (byte)'g', (byte)'g', (byte)'S', ..] when Holds(head, "OpusHead") => OpusSource.Open(stream),
                [(byte)'O', (byte)'g', (byte)'g', (byte)'S', ..] when Holds(head, "vorbis") => VorbisSource.Open(stream),
                [(byte)'I', (byte)'D', (byte)'3', ..] or [0xFF, >= 0xE0, ..] => Mp3Source.Open(stream),
                _ => throw new SoundException($"the recording is in no known format; {Known}"),
            };
        }
        catch (Exception broken) when (broken is not (SoundException or IOException { InnerException: null } or OutOfMemoryException) || broken is EndOfStreamException)
        {
            throw Broken(broken);
        }
    }

    /// <summary>What is said where a decoder gives up.</summary>
    internal static SoundException Broken(Exception why) => new($"the recording is broken ({OneLine.Of(why.Message)}); record or convert it again", why);

    private static bool Holds(byte[] head, string word) => head.AsSpan().IndexOf(Encoding.ASCII.GetBytes(word)) >= 0;

    private static bool IsForFfmpeg(byte[] head) => head is [_, _, _, _, (byte)'f', (byte)'t', (byte)'y', (byte)'p', ..] or [0x1A, 0x45, 0xDF, 0xA3, ..];

    private static byte[] Head(Stream stream)
    {
        var head = new byte[64];
        var count = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        stream.Position -= count;
        return head[..count];
    }
}
