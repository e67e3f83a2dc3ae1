using System.Buffers.Binary;
using Concentus;

namespace Warmup.Takes;

/// <summary>An Ogg Opus file (RFC 7845), decoded by Concentus.</summary>
internal sealed class OpusSource : SoundSource
{
    private const int Rate = 48_000;
    private const int LongestPacket = 5_760;

    private readonly Stream _stream;
    private readonly OggPackets _packets;
    private readonly IOpusDecoder _decoder;
    private readonly float[] _decoded;
    private readonly int _preSkip;
    private long _position;
    private int _skip;
    private int _from;
    private int _count;

    private OpusSource(Stream stream, OggPackets packets, int channels, int preSkip)
        : base(Rate, channels)
    {
        (_stream, _packets, _preSkip, _skip) = (stream, packets, preSkip, preSkip);
        _decoder = OpusCodecFactory.CreateDecoder(Rate, channels);
        _decoded = new float[LongestPacket * channels];
    }

    public static OpusSource Open(Stream stream)
    {
        var packets = new OggPackets(stream);
        var head = packets.Next();
        if (head is not { Length: >= 19 } || !head.AsSpan(0, 8).SequenceEqual("OpusHead"u8) || head[9] is 0)
        {
            throw new SoundException("the Opus file is broken: it does not begin with its head; record or copy it again");
        }

        if (head[9] > 2 || head[18] != 0)
        {
            throw new SoundException($"the Opus file has {head[9]} channels; 1 or 2 can be read");
        }

        // The second packet holds tags.
        _ = packets.Next();
        return new OpusSource(stream, packets, head[9], BinaryPrimitives.ReadUInt16LittleEndian(head.AsSpan(10)));
    }

    public override int Read(Span<float> buffer)
    {
        try
        {
            while (_count == 0)
            {
                if (_packets.Next() is not { } packet)
                {
                    return 0;
                }

                Decode(packet);
            }
        }
        catch (Exception broken) when (broken is not (SoundException or OutOfMemoryException))
        {
            throw SoundFile.Broken(broken);
        }

        var count = Math.Min(_count, buffer.Length / Channels);
        _decoded.AsSpan(_from * Channels, count * Channels).CopyTo(buffer);
        _from += count;
        _count -= count;
        return count * Channels;
    }

    protected override void Dispose(bool disposing)
    {
        _decoder.Dispose();
        _stream.Dispose();
        base.Dispose(disposing);
    }

    private void Decode(byte[] packet)
    {
        var count = _decoder.Decode(packet, _decoded, LongestPacket, false);
        _position += count;
        _from = Math.Min(_skip, count);
        _skip -= _from;

        // The last page may end before its last packet does.
        var beyond = _packets.IsLast && _packets.Position >= _preSkip ? _position - _packets.Position : 0;
        _count = (int)Math.Max(0, count - _from - Math.Max(0, beyond));
    }
}
