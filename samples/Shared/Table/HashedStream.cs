using System.Security.Cryptography;

namespace Warmup.Samples;

/// <summary>A stream that counts and hashes what goes through it.</summary>
internal sealed class HashedStream(Stream inner) : OneWayStream
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    /// <summary>The bytes that have gone through.</summary>
    public long Bytes { get; private set; }

    /// <summary>Their hash, in small hexadecimal digits.</summary>
    public string Sha256() => Convert.ToHexStringLower(_hash.GetCurrentHash());

    public override void Flush() => inner.Flush();

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        inner.Write(buffer);
        _hash.AppendData(buffer);
        Bytes += buffer.Length;
    }

    protected override void Dispose(bool disposing)
    {
        _hash.Dispose();
        base.Dispose(disposing);
    }
}
