using System.Buffers;

namespace Warmup.MusicXml;

/// <summary>Lets a stream be written to as a buffer: what is advanced over goes to the stream at once.</summary>
internal sealed class StreamBuffer(Stream stream) : IBufferWriter<byte>
{
    private byte[] _buffer = [];

    public void Advance(int count) => stream.Write(_buffer, 0, count);

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        if (_buffer.Length < Math.Max(sizeHint, 1))
        {
            _buffer = new byte[Math.Max(sizeHint, XmlBytes.BufferSize)];
        }

        return _buffer;
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;
}
