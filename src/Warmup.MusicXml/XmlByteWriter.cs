using System.Buffers;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace Warmup.MusicXml;

/// <summary>Markup that is kept to be written again; none by default.</summary>
/// <param name="Start">Where it begins among all that is kept.</param>
/// <param name="Length">Its bytes.</param>
internal readonly record struct KeptMarkup(int Start, int Length);

/// <summary>
/// Writes XML as UTF-8 into the destination's own memory where that is an array, else into shared memory that it hands on in large pieces; it
/// allocates nothing for a note (decision 14).
/// </summary>
internal sealed class XmlByteWriter : IDisposable
{
    private const int BufferSize = 32_768;
    private const int KeptSize = 16_384;
    private const int LongestKept = 1_024;

    // A character takes at most six bytes as an entity (&quot;) and three as UTF-8.
    private const int MostBytesACharacter = 6;
    private const int MostBytesANumber = 40;

    private readonly IBufferWriter<byte> _destination;
    private readonly byte[] _kept = ArrayPool<byte>.Shared.Rent(KeptSize);

    // Where the destination gives no array.
    private byte[]? _shared;
    private byte[] _buffer = [];
    private int _start;
    private int _at;
    private int _end;
    private int _keptBytes;

    /// <summary>A writer to a destination.</summary>
    /// <param name="destination">Where the bytes go.</param>
    public XmlByteWriter(IBufferWriter<byte> destination)
    {
        _destination = destination;
        TakeBlock();
    }

    /// <summary>Writes markup as it is. Inlined, a copy of known length takes a few instructions.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public XmlByteWriter Raw(ReadOnlySpan<byte> markup)
    {
        Reserve(markup.Length);
        markup.CopyTo(_buffer.AsSpan(_at));
        _at += markup.Length;
        return this;
    }

    /// <summary>Writes a whole number.</summary>
    public XmlByteWriter Number(long number)
    {
        Reserve(MostBytesANumber);
        if (number is >= 0 and <= 9)
        {
            _buffer[_at++] = (byte)('0' + number);
            return this;
        }

        number.TryFormat(_buffer.AsSpan(_at), out var written, default, CultureInfo.InvariantCulture);
        _at += written;
        return this;
    }

    /// <summary>Writes a decimal number without an exponent or trailing zeros.</summary>
    public XmlByteWriter Number(decimal number)
    {
        Reserve(MostBytesANumber);
        number.TryFormat(_buffer.AsSpan(_at), out var written, "0.############", CultureInfo.InvariantCulture);
        _at += written;
        return this;
    }

    /// <summary>Writes text, and escapes the characters that XML uses itself.</summary>
    public XmlByteWriter Text(ReadOnlySpan<char> text)
    {
        if (text.Length == 1 && char.IsAsciiLetterOrDigit(text[0]))
        {
            Reserve(1);
            _buffer[_at++] = (byte)text[0];
            return this;
        }

        while (!text.IsEmpty)
        {
            var special = text.IndexOfAny("&<>\"");
            var plain = special < 0 ? text : text[..special];
            Plain(plain);
            if (special < 0)
            {
                break;
            }

            Raw(text[special] switch { '&' => "&amp;"u8, '<' => "&lt;"u8, '>' => "&gt;"u8, _ => "&quot;"u8 });
            text = text[(special + 1)..];
        }

        return this;
    }

    /// <summary>Begins markup that may be kept.</summary>
    /// <returns>Where it begins, for <see cref="Keep"/>.</returns>
    public int Begin()
    {
        Reserve(LongestKept);
        return _at;
    }

    /// <summary>Keeps what was written since <see cref="Begin"/>; what is long, or more than there is room for, is not kept.</summary>
    public KeptMarkup Keep(int begin)
    {
        var length = _at - begin;
        if (length is <= 0 or > LongestKept || length > _kept.Length - _keptBytes)
        {
            return default;
        }

        _buffer.AsSpan(begin, length).CopyTo(_kept.AsSpan(_keptBytes));
        _keptBytes += length;
        return new KeptMarkup(_keptBytes - length, length);
    }

    /// <summary>Writes what was kept.</summary>
    /// <returns>Whether something was.</returns>
    public bool Again(KeptMarkup markup)
    {
        Raw(_kept.AsSpan(markup.Start, markup.Length));
        return markup.Length > 0;
    }

    /// <summary>Keeps nothing any longer.</summary>
    public void Forget() => _keptBytes = 0;

    /// <summary>Hands on what is left; nothing can be written after it.</summary>
    public void Flush()
    {
        if (_shared is null)
        {
            _destination.Advance(_at - _start);
        }
        else
        {
            _destination.Write(_shared.AsSpan(_start, _at - _start));
        }

        _end = _start = _at;
    }

    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(_kept);
        if (_shared is not null)
        {
            ArrayPool<byte>.Shared.Return(_shared);
        }
    }

    private void Plain(ReadOnlySpan<char> text)
    {
        const int Most = BufferSize / MostBytesACharacter;
        while (!text.IsEmpty)
        {
            // A pair of surrogates is one character and must stay together.
            var length = Math.Min(text.Length, Most);
            length -= length < text.Length && char.IsHighSurrogate(text[length - 1]) ? 1 : 0;
            Reserve(length * MostBytesACharacter);
            _at += Encoding.UTF8.GetBytes(text[..length], _buffer.AsSpan(_at));
            text = text[length..];
        }
    }

    private void Reserve(int bytes)
    {
        if (_end - _at < bytes)
        {
            Flush();
            TakeBlock();
        }
    }

    private void TakeBlock()
    {
        if (_shared is null && MemoryMarshal.TryGetArray<byte>(_destination.GetMemory(BufferSize), out var block))
        {
            (_buffer, _start, _end) = (block.Array!, block.Offset, block.Offset + block.Count);
        }
        else
        {
            _buffer = _shared ??= ArrayPool<byte>.Shared.Rent(BufferSize);
            (_start, _end) = (0, _buffer.Length);
        }

        _at = _start;
    }
}
