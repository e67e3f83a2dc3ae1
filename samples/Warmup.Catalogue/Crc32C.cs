using System.Buffers.Binary;
using System.Numerics;

namespace Warmup.WholeCatalogue;

/// <summary>The CRC-32C (Castagnoli) of RFC 3720, appendix B.4, by the processor's instruction where it has one.</summary>
internal static class Crc32C
{
    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        for (; bytes.Length >= sizeof(ulong); bytes = bytes[sizeof(ulong)..])
        {
            crc = BitOperations.Crc32C(crc, BinaryPrimitives.ReadUInt64LittleEndian(bytes));
        }

        foreach (var one in bytes)
        {
            crc = BitOperations.Crc32C(crc, one);
        }

        return ~crc;
    }
}
