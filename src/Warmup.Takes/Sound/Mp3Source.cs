using NLayer;

namespace Warmup.Takes;

/// <summary>An MP3 file, decoded by NLayer, without the silence that encoders and decoders put before it.</summary>
internal sealed class Mp3Source : SoundSource
{
    // The decoder's own delay; a file without the encoder's tag also has the encoder's (576 samples, measured on files of lame and ffmpeg).
    private const int DecoderDelay = 529;
    private const int EncoderDelay = 576;

    private readonly MpegFile _file;
    private float[] _block = [];
    private int _drop;

    private Mp3Source(MpegFile file, int drop)
        : base(file.SampleRate, file.Channels) => (_file, _drop) = (file, drop * file.Channels);

    public static Mp3Source Open(Stream stream)
    {
        var start = new byte[4096];
        var count = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        stream.Position -= count;
        var hasTag = start.AsSpan(0, count).IndexOf("LAME"u8) >= 0 || start.AsSpan(0, count).IndexOf("Lavc"u8) >= 0;
        var file = new MpegFile(stream);
        return new Mp3Source(file, hasTag ? DecoderDelay : DecoderDelay + EncoderDelay);
    }

    public override int Read(Span<float> buffer)
    {
        try
        {
            if (_block.Length < buffer.Length)
            {
                _block = new float[buffer.Length];
            }

            while (true)
            {
                var count = _file.ReadSamples(_block, 0, buffer.Length / Channels * Channels);
                var dropped = Math.Min(_drop, count);
                _drop -= dropped;
                if (count == 0 || count > dropped)
                {
                    _block.AsSpan(dropped, count - dropped).CopyTo(buffer);
                    return (count - dropped) / Channels * Channels;
                }
            }
        }
        catch (Exception broken) when (broken is not (SoundException or OutOfMemoryException))
        {
            throw SoundFile.Broken(broken);
        }
    }

    protected override void Dispose(bool disposing)
    {
        _file.Dispose();
        base.Dispose(disposing);
    }
}
