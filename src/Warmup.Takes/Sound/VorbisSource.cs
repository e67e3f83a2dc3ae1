using NVorbis;

namespace Warmup.Takes;

/// <summary>An Ogg Vorbis file, decoded by NVorbis.</summary>
internal sealed class VorbisSource : SoundSource
{
    private readonly VorbisReader _reader;
    private float[] _block = [];

    private VorbisSource(VorbisReader reader)
        : base(reader.SampleRate, reader.Channels) => _reader = reader;

    public static VorbisSource Open(Stream stream) => new(new VorbisReader(stream, closeOnDispose: true));

    public override int Read(Span<float> buffer)
    {
        try
        {
            var wanted = buffer.Length / Channels * Channels;
            if (_block.Length < wanted)
            {
                _block = new float[wanted];
            }

            var count = _reader.ReadSamples(_block, 0, wanted);
            _block.AsSpan(0, count).CopyTo(buffer);
            return count;
        }
        catch (Exception broken) when (broken is not (SoundException or OutOfMemoryException))
        {
            throw SoundFile.Broken(broken);
        }
    }

    protected override void Dispose(bool disposing)
    {
        _reader.Dispose();
        base.Dispose(disposing);
    }
}
