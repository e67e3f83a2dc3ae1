using System.Text;

namespace Warmup.Takes.Tests;

/// <summary>WAV files in every form, written from the format's rules (RIFF; WAVE_FORMAT_EXTENSIBLE as Microsoft documents it; from memory).</summary>
internal static class WavFiles
{
    /// <summary>A file.</summary>
    /// <param name="frames">The samples, channel by channel at each time.</param>
    /// <param name="rate">Samples a second.</param>
    /// <param name="bits">Bits a sample.</param>
    /// <param name="isFloat">Whether the samples are floating point.</param>
    /// <param name="isExtensible">Whether the long form of the format chunk is written.</param>
    public static byte[] Of(float[][] frames, int rate, int bits, bool isFloat = false, bool isExtensible = false)
    {
        var channels = frames[0].Length;
        using var file = new MemoryStream();
        using var writer = new BinaryWriter(file);
        var bytes = bits / 8;
        var data = frames.Length * channels * bytes;
        var head = isExtensible ? 40 : 16;
        writer.Write(Encoding.ASCII.GetBytes("RIFF"));
        writer.Write(4 + 8 + head + 8 + data);
        writer.Write(Encoding.ASCII.GetBytes("WAVEfmt "));
        writer.Write(head);
        var tag = isFloat ? 3 : 1;
        writer.Write((short)(isExtensible ? -2 : tag));
        writer.Write((short)channels);
        writer.Write(rate);
        writer.Write(rate * channels * bytes);
        writer.Write((short)(channels * bytes));
        writer.Write((short)bits);
        if (isExtensible)
        {
            writer.Write((short)22);
            writer.Write((short)bits);
            writer.Write(0);
            writer.Write(tag);
            writer.Write(new byte[] { 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71 });
        }

        writer.Write(Encoding.ASCII.GetBytes("data"));
        writer.Write(data);
        foreach (var sample in frames.SelectMany(f => f))
        {
            switch (bits, isFloat)
            {
                case (64, _):
                    writer.Write((double)sample);
                    break;
                case (32, true):
                    writer.Write(sample);
                    break;
                case (32, false):
                    writer.Write((int)(sample * 2_147_483_000.0));
                    break;
                case (24, _):
                    var value = (int)(sample * 8_388_607.0);
                    writer.Write(new[] { unchecked((byte)value), unchecked((byte)(value >> 8)), unchecked((byte)(value >> 16)) });
                    break;
                case (16, _):
                    writer.Write((short)(sample * 32_767.0));
                    break;
                default:
                    writer.Write((byte)(128 + (int)(sample * 127.0)));
                    break;
            }
        }

        return file.ToArray();
    }

    /// <summary>A tone of a sine with two harmonics.</summary>
    public static float[] Tone(double hz, double seconds, int rate) =>
    [
        .. Enumerable.Range(0, (int)(seconds * rate)).Select(i => 2 * Math.PI * hz * i / rate)
            .Select(x => (float)((0.3 * Math.Sin(x)) + (0.15 * Math.Sin(2 * x)) + (0.1 * Math.Sin(3 * x)))),
    ];
}
