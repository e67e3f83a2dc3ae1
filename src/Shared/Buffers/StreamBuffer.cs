using System.Buffers;

namespace Warmup;

/// <summary>
/// A buffer in front of a stream, for formats that write to an <see cref="IBufferWriter{T}"/>. Its size does not depend on what is written,
/// and its memory is shared: dispose of it.
/// </summary>
/// <param name="stream">Where the bytes go; it is not closed.</param>
/// <remarks>Nothing reaches the stream before the buffer is full or <see cref="Flush"/> is called. Not for several threads at once.</remarks>
internal sealed class StreamBuffer(Stream stream) : IBufferWriter<byte>, IDisposable
{
    private const int Size = 16 * 1024;

    private readonly Stream _stream = stream ?? throw new ArgumentNullException(nameof(stream));
    private byte[] _buffer = ArrayPool<byte>.Shared.Rent(Size);
    private int _used;

    /// <inheritdoc/>
    /// <exception cref="ArgumentOutOfRangeException">More than was given, or less than nothing.</exception>
    public void Advance(int count)
    {
        if (count < 0 || count > _buffer.Length - _used)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, $"count must be between 0 and {_buffer.Length - _used}, not {count}");
        }

        _used += count;
    }

    /// <inheritdoc/>
    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        Reserve(sizeHint);
        return _buffer.AsMemory(_used);
    }

    /// <inheritdoc/>
    public Span<byte> GetSpan(int sizeHint = 0)
    {
        Reserve(sizeHint);
        return _buffer.AsSpan(_used);
    }

    /// <summary>Hands what was written to the stream.</summary>
    public void Flush()
    {
        _stream.Write(_buffer, 0, _used);
        _used = 0;
    }

    /// <summary>Gives the memory back. What was not flushed is lost.</summary>
    public void Dispose()
    {
        if (_buffer.Length > 0)
        {
            ArrayPool<byte>.Shared.Return(_buffer);
            (_buffer, _used) = ([], 0);
        }
    }

    private void Reserve(int size)
    {
        ObjectDisposedException.ThrowIf(_buffer.Length == 0, this);
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
