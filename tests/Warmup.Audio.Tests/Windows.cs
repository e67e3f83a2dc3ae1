using System.Buffers.Binary;

namespace Warmup.Audio.Tests;

/// <summary>Takes a one-channel file as it comes, keeps only some windows of it, and can neither seek nor tell its length.</summary>
internal sealed class Windows(long[] starts, int frames, Action<long>? onWrite = null) : Stream
{
    private const int Head = 44;

    public short[][] Samples { get; } = [.. starts.Select(_ => new short[frames])];

    public long Written { get; private set; }

    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count)
    {
        // Writes begin on even bytes: everything before the samples is even and each write is.
        for (var w = 0; w < starts.Length; w++)
        {
            var first = (Written - Head) / 2;
            var from = Math.Max(starts[w], first);
            var to = Math.Min(starts[w] + frames, first + (count / 2));
            for (var frame = from; frame < to; frame++)
            {
                Samples[w][frame - starts[w]] = BinaryPrimitives.ReadInt16LittleEndian(buffer.AsSpan(offset + (int)(Head + (2 * frame) - Written)));
            }
        }

        Written += count;
        onWrite?.Invoke(Written);
    }
}
