using System.Buffers.Binary;

namespace Warmup.Takes;

/// <summary>The packets of an Ogg file's first stream (RFC 3533), for decoders that bring no reader of their own.</summary>
internal sealed class OggPackets(Stream stream)
{
    private readonly byte[] _header = new byte[27];
    private readonly Queue<byte[]> _ready = new();
    private readonly List<byte> _open = [];
    private uint? _serial;
    private bool _ended;

    /// <summary>The position that the page of the last packet names, in samples at 48 kHz; -1 where no packet ends on the page.</summary>
    public long Position { get; private set; } = -1;

    /// <summary>Whether no page follows, and no packet after this one.</summary>
    public bool IsLast => _ready.Count == 0 && _ended;

    /// <summary>The next packet; <see langword="null"/> at the end.</summary>
    public byte[]? Next()
    {
        while (_ready.Count == 0)
        {
            if (_ended || !ReadPage())
            {
                _ended = true;
                return _open.Count > 0 ? throw new SoundException("the Ogg file is cut in the middle of a packet; record or copy it again") : null;
            }
        }

        return _ready.Dequeue();
    }

    private bool ReadPage()
    {
        var count = stream.ReadAtLeast(_header, _header.Length, throwOnEndOfStream: false);
        if (count == 0)
        {
            return false;
        }

        if (count < _header.Length || !_header.AsSpan(0, 4).SequenceEqual("OggS"u8))
        {
            throw new SoundException("the Ogg file is broken: a page does not begin as it must; record or copy it again");
        }

        var lacing = new byte[_header[26]];
        ReadExactly(lacing);
        var serial = BinaryPrimitives.ReadUInt32LittleEndian(_header.AsSpan(14));
        _serial ??= serial;
        foreach (var size in lacing)
        {
            var part = new byte[size];
            ReadExactly(part);
            if (serial == _serial)
            {
                _open.AddRange(part);
                if (size < 255)
                {
                    _ready.Enqueue([.. _open]);
                    _open.Clear();
                }
            }
        }

        if (serial == _serial)
        {
            Position = BinaryPrimitives.ReadInt64LittleEndian(_header.AsSpan(6));
            _ended = (_header[5] & 4) != 0;
        }

        return true;
    }

    private void ReadExactly(byte[] part)
    {
        if (stream.ReadAtLeast(part, part.Length, throwOnEndOfStream: false) < part.Length)
        {
            throw new SoundException("the Ogg file is cut in the middle of a page; record or copy it again");
        }
    }
}
