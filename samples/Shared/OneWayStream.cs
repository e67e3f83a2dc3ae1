namespace Warmup.Samples;

/// <summary>A stream that can only be written to, from the beginning to the end.</summary>
internal abstract class OneWayStream : Stream
{
    public sealed override bool CanRead => false;

    public sealed override bool CanSeek => false;

    public sealed override bool CanWrite => true;

    public sealed override long Length => throw new NotSupportedException();

    public sealed override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Flush()
    {
    }

    public sealed override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public sealed override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public sealed override void SetLength(long value) => throw new NotSupportedException();

    public sealed override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public abstract override void Write(ReadOnlySpan<byte> buffer);
}
