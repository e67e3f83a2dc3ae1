using System.Buffers.Binary;
using System.Text;

namespace Warmup.Audio.Tests;

/// <summary>
/// A strict reader written from the RIFF and WAVE rules (Microsoft and IBM, Multimedia Programming Interface and Data Specifications
/// 1.0, 1991): it shares nothing with the writer and refuses what the rules forbid.
/// </summary>
internal sealed class WaveFile
{
    public WaveFile(byte[] bytes)
    {
        Assert.Equal("RIFF", Name(bytes, 0));
        Assert.Equal((uint)(bytes.Length - 8), Number(bytes, 4));
        Assert.Equal("WAVE", Name(bytes, 8));
        foreach (var (name, start, length) in Chunks(bytes, 12, bytes.Length))
        {
            ChunkNames.Add(name);
            switch (name)
            {
                case "fmt ":
                    ReadFormat(bytes.AsSpan(start, length));
                    break;
                case "data":
                    ReadData(bytes.AsSpan(start, length));
                    break;
                case "cue ":
                    ReadCues(bytes.AsSpan(start, length));
                    break;
                case "LIST":
                    Assert.Equal("adtl", Name(bytes, start));
                    foreach (var (kind, at, size) in Chunks(bytes, start + 4, start + length))
                    {
                        Assert.Equal("labl", kind);
                        var text = bytes.AsSpan(at + 4, size - 4);
                        Assert.Equal(size - 5, text.IndexOf((byte)0));
                        Labels.Add(Number(bytes, at), Encoding.ASCII.GetString(text[..^1]));
                    }

                    break;
                default:
                    Assert.Fail($"unknown chunk '{name}'");
                    break;
            }
        }

        Assert.Single(ChunkNames, "fmt ");
        Assert.Single(ChunkNames, "data");
        Assert.True(ChunkNames.IndexOf("fmt ") < ChunkNames.IndexOf("data"));
        Assert.Equal(ChunkNames.Distinct(), ChunkNames);
    }

    public List<string> ChunkNames { get; } = [];

    public int Channels { get; private set; }

    public int SampleRate { get; private set; }

    /// <summary>The samples of each channel as they stand.</summary>
    public short[][] Samples { get; private set; } = [];

    public short[] Left => Samples[0];

    public short[] Right => Samples[^1];

    public int Frames => Samples[0].Length;

    /// <summary>The frame of each cue point by its number.</summary>
    public Dictionary<uint, long> Cues { get; } = [];

    public Dictionary<uint, string> Labels { get; } = [];

    /// <summary>The labels with their frames in order.</summary>
    public (string Label, long Frame)[] Markers => [.. Cues.OrderBy(c => c.Key).Select(c => (Labels[c.Key], c.Value))];

    private static IEnumerable<(string Name, int Start, int Length)> Chunks(byte[] bytes, int start, int end)
    {
        while (start < end)
        {
            Assert.Equal(0, start % 2);
            Assert.True(end - start >= 8);
            var length = checked((int)Number(bytes, start + 4));
            Assert.True(start + 8 + length <= end, $"chunk '{Name(bytes, start)}' runs over its parent");
            yield return (Name(bytes, start), start + 8, length);
            start += 8 + length;
            if (length % 2 == 1)
            {
                Assert.Equal(0, bytes[start]);
                start++;
            }
        }

        Assert.Equal(end, start);
    }

    private static string Name(byte[] bytes, int at) => Encoding.ASCII.GetString(bytes, at, 4);

    private static uint Number(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt32LittleEndian(bytes[at..]);

    private void ReadFormat(ReadOnlySpan<byte> format)
    {
        Assert.Equal(16, format.Length);
        Assert.Equal(1, BinaryPrimitives.ReadUInt16LittleEndian(format));
        Channels = BinaryPrimitives.ReadUInt16LittleEndian(format[2..]);
        SampleRate = (int)Number(format, 4);
        Assert.Equal((uint)(SampleRate * Channels * 2), Number(format, 8));
        Assert.Equal(Channels * 2, BinaryPrimitives.ReadUInt16LittleEndian(format[12..]));
        Assert.Equal(16, BinaryPrimitives.ReadUInt16LittleEndian(format[14..]));
    }

    private void ReadData(ReadOnlySpan<byte> data)
    {
        Assert.Equal(0, data.Length % (Channels * 2));
        Samples = new short[Channels][];
        for (var c = 0; c < Channels; c++)
        {
            Samples[c] = new short[data.Length / (Channels * 2)];
            for (var i = 0; i < Samples[c].Length; i++)
            {
                Samples[c][i] = BinaryPrimitives.ReadInt16LittleEndian(data[(((i * Channels) + c) * 2)..]);
            }
        }
    }

    private void ReadCues(ReadOnlySpan<byte> cues)
    {
        var count = (int)Number(cues, 0);
        Assert.Equal(4 + (24 * count), cues.Length);
        for (var i = 0; i < count; i++)
        {
            var point = cues.Slice(4 + (24 * i), 24);
            Assert.Equal("data", Encoding.ASCII.GetString(point.Slice(8, 4)));
            Assert.Equal((0u, 0u), (Number(point, 12), Number(point, 16)));
            Assert.Equal(Number(point, 4), Number(point, 20));
            Cues.Add(Number(point, 0), Number(point, 20));
        }
    }
}
