using System.Buffers;

namespace Warmup.Midi;

/// <summary>A buffer in front of a stream, of a size that does not depend on what is written.</summary>
internal sealed class StreamBuffer(Stream stream) : IBufferWriter<byte>, IDisposable
{
    private const int Size = 16 * 1024;

    private byte[] _buffer = ArrayPool<byte>.Shared.Rent(Size);
    private int _used;

    public void Advance(int count) => _used += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        Reserve(sizeHint);
        return _buffer.AsMemory(_used);
    }

    public Span<byte> GetSpan(int sizeHint = 0)
    {
        Reserve(sizeHint);
        return _buffer.AsSpan(_used);
    }

    public void Flush()
    {
        stream.Write(_buffer, 0, _used);
        _used = 0;
    }

    public void Dispose() => ArrayPool<byte>.Shared.Return(_buffer);

    private void Reserve(int size)
    {
        if (_buffer.Length - _used >= Math.Max(1, size))
        {
            return;
        }

        Flush();
        if (_buffer.Length < size)
        {
            ArrayPool<byte>.Shared.Return(_buffer);
            _buffer = ArrayPool<byte>.Shared.Rent(size);
        }
    }
}
