using System.Buffers.Binary;

namespace Warmup.Audio;

/// <summary>A buffer of fixed size in front of a stream, little-endian.</summary>
internal sealed class WavOutput(Stream stream)
{
    private readonly byte[] _buffer = new byte[32 * 1024];
    private int _used;

    /// <summary>The beginning of a chunk: its name of four characters and the bytes in it.</summary>
    public void Chunk(ReadOnlySpan<byte> name, long bytes)
    {
        Text(name);
        Number(bytes);
    }

    public void Text(ReadOnlySpan<byte> text) => text.CopyTo(Take(text.Length));

    /// <summary>A number of 32 bits without sign.</summary>
    public void Number(long number) => BinaryPrimitives.WriteUInt32LittleEndian(Take(4), (uint)number);

    /// <summary>A number of 16 bits without sign.</summary>
    public void Short(int number) => BinaryPrimitives.WriteUInt16LittleEndian(Take(2), (ushort)number);

    /// <summary>Room for a number of bytes, which the caller fills.</summary>
    public Span<byte> Take(int bytes)
    {
        if (_buffer.Length - _used < bytes)
        {
            Flush();
        }

        var room = _buffer.AsSpan(_used, bytes);
        _used += bytes;
        return room;
    }

    public void Flush()
    {
        stream.Write(_buffer, 0, _used);
        _used = 0;
    }
}
