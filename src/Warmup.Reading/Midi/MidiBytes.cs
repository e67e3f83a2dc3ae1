using System.Buffers.Binary;

namespace Warmup.Reading;

/// <summary>The bytes of a MIDI file, read forward; an error names the byte.</summary>
internal ref struct MidiBytes(ReadOnlySpan<byte> bytes, int start, int end)
{
    private readonly ReadOnlySpan<byte> _bytes = bytes;

    public int Position { get; private set; } = start;

    public readonly bool IsAtEnd => Position >= end;

    public readonly int Left => end - Position;

    public byte Byte() => Position < end ? _bytes[Position++] : throw Error("the file ends inside an event");

    public readonly byte Peek() => Position < end ? _bytes[Position] : throw Error("the file ends inside an event");

    public ReadOnlySpan<byte> Take(int count)
    {
        if (count > Left)
        {
            throw Error("an event is longer than its track");
        }

        Position += count;
        return _bytes.Slice(Position - count, count);
    }

    public int UInt16() => BinaryPrimitives.ReadUInt16BigEndian(Take(2));

    public uint UInt32() => BinaryPrimitives.ReadUInt32BigEndian(Take(4));

    /// <summary>A variable-length quantity: at most four bytes.</summary>
    public int Quantity()
    {
        var value = 0;
        for (var i = 0; i < 4; i++)
        {
            var next = Byte();
            value = (value << 7) | (next & 0x7F);
            if (next < 0x80)
            {
                return value;
            }
        }

        throw Error("a variable-length quantity has more than four bytes");
    }

    /// <summary>The data byte of a channel message.</summary>
    public int Data()
    {
        var data = Byte();
        return data < 0x80 ? data : throw new ReadingException("a data byte is missing in an event: a status byte stands in its place", new PiecePlace(PlaceKind.Byte, Position - 1));
    }

    public readonly ReadingException Error(string message) => new(message, new PiecePlace(PlaceKind.Byte, Position));
}
