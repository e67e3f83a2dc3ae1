namespace Warmup.Plans;

/// <summary>Passes on what is written to it without carriage returns, so that a text has the same bytes on every system.</summary>
/// <remarks>For texts in UTF-8 in which a carriage return never means anything: in JSON one inside a string is written as an escape.</remarks>
internal sealed class WithoutReturns(Stream destination) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        while (buffer.IndexOf((byte)'\r') is var at and >= 0)
        {
            destination.Write(buffer[..at]);
            buffer = buffer[(at + 1)..];
        }

        destination.Write(buffer);
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush() => destination.Flush();

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();
}
