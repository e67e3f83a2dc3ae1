using System.Buffers.Binary;

namespace Warmup.Audio.Tests;

/// <summary>Takes a one-channel file as it comes, keeps only some windows of it, and can neither seek nor tell its length.</summary>
internal sealed class Windows(long[] starts, int frames, Action<long>? onWrite = null) : WriteOnlyStream
{
    private const int Head = 44;

    public short[][] Samples { get; } = [.. starts.Select(_ => new short[frames])];

    public override void Write(byte[] buffer, int offset, int count)
    {
        // Writes begin on even bytes: everything before the samples is even and each write is.
        for (var w = 0; w < starts.Length; w++)
        {
            var first = (Count - Head) / 2;
            var from = Math.Max(starts[w], first);
            var to = Math.Min(starts[w] + frames, first + (count / 2));
            for (var frame = from; frame < to; frame++)
            {
                Samples[w][frame - starts[w]] = BinaryPrimitives.ReadInt16LittleEndian(buffer.AsSpan(offset + (int)(Head + (2 * frame) - Count)));
            }
        }

        base.Write(buffer, offset, count);
        onWrite?.Invoke(Count);
    }
}
