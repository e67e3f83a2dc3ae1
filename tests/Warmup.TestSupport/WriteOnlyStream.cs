namespace Warmup.TestSupport;

/// <summary>A stream that can neither go back nor be read, as a network's: it only counts what is written.</summary>
public class WriteOnlyStream : Stream
{
    public Action? AtFirstWrite { get; init; }

    /// <summary>How many bytes were written.</summary>
    public long Count { get; protected set; }

    public bool WasClosed { get; private set; }

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
        if (Count == 0)
        {
            AtFirstWrite?.Invoke();
        }

        Count += count;
    }

    protected override void Dispose(bool disposing)
    {
        WasClosed = true;
        base.Dispose(disposing);
    }
}
