using System.Buffers.Binary;
using System.Globalization;
using NAudio.Wave;

namespace Warmup.Takes;

/// <summary>A WAV file: NAudio reads its chunks, and the samples are turned into numbers here.</summary>
internal sealed class WavSource : SoundSource
{
    /// <summary>Turns the bytes of a sample into a number.</summary>
    private delegate float ToNumber(ReadOnlySpan<byte> bytes);

    private readonly WaveFileReader _reader;
    private readonly ToNumber _sample;
    private readonly int _bytes;
    private byte[] _block = [];

    private WavSource(WaveFileReader reader, ToNumber sample)
        : base(reader.WaveFormat.SampleRate, reader.WaveFormat.Channels)
    {
        _reader = reader;
        _sample = sample;
        _bytes = reader.WaveFormat.BitsPerSample / 8;
        if (reader.WaveFormat.BlockAlign != _bytes * Channels)
        {
            throw new SoundException($"the WAV file names {reader.WaveFormat.BlockAlign} bytes for {Channels} samples of {_bytes}; record or convert it again");
        }
    }

    public static WavSource Open(Stream stream)
    {
        var head = new byte[8];
        stream.ReadExactly(head);
        stream.Position -= head.Length;
        var reader = new WaveFileReader(stream);
        var format = reader.WaveFormat;

        // A program that wrote to a pipe could not know the length, and says 0 or the most.
        var named = BinaryPrimitives.ReadUInt32LittleEndian(head.AsSpan(4));
        if (named is > 0 and < uint.MaxValue - 0xFFFF && named + 8L > stream.Length + 1 && head[3] == (byte)'F')
        {
            var (there, all) = (stream.Length / (double)format.AverageBytesPerSecond, (named + 8.0) / format.AverageBytesPerSecond);
            throw new SoundException(string.Create(
                CultureInfo.InvariantCulture, $"the WAV file is cut: it ends after {there:0.0} s of the {all:0.0} s that it names; record or copy it again"));
        }

        // The kind of an extensible file follows six bytes of its further data.
        var isFloat = format.Encoding == WaveFormatEncoding.IeeeFloat
            || format is WaveFormatExtensible { SubFormat: var kind } && kind.ToByteArray()[0] == (byte)WaveFormatEncoding.IeeeFloat
            || format is WaveFormatExtraData { Encoding: WaveFormatEncoding.Extensible, ExtraData: [_, _, _, _, _, _, (byte)WaveFormatEncoding.IeeeFloat, ..] };
        var isPcm = format.Encoding == WaveFormatEncoding.Pcm || (format.Encoding == WaveFormatEncoding.Extensible && !isFloat);
        ToNumber? sample = (isFloat, isPcm, format.BitsPerSample) switch
        {
            (true, _, 32) => b => Finite(BinaryPrimitives.ReadSingleLittleEndian(b)),
            (true, _, 64) => b => Finite((float)BinaryPrimitives.ReadDoubleLittleEndian(b)),
            (_, true, 8) => b => (b[0] - 128) / 128f,
            (_, true, 16) => b => BinaryPrimitives.ReadInt16LittleEndian(b) / 32768f,
            (_, true, 24) => b => ((b[0] << 8) | (b[1] << 16) | unchecked((int)((uint)b[2] << 24))) / 2147483648f,
            (_, true, 32) => b => BinaryPrimitives.ReadInt32LittleEndian(b) / 2147483648f,
            _ => null,
        };
        return sample is null
            ? throw new SoundException($"the WAV file holds {format.Encoding} of {format.BitsPerSample} bits; 8 to 32 bits and floating point can be read")
            : new WavSource(reader, sample);
    }

    public override int Read(Span<float> buffer)
    {
        var wanted = buffer.Length / Channels * Channels * _bytes;
        if (_block.Length < wanted)
        {
            _block = new byte[wanted];
        }

        var count = 0;
        while (count < wanted && _reader.Read(_block, count, wanted - count) is var more and > 0)
        {
            count += more;
        }

        var align = Channels * _bytes;
        count = count / align * _bytes * Channels;
        for (var i = 0; i < count / _bytes; i++)
        {
            buffer[i] = _sample(_block.AsSpan(i * _bytes));
        }

        return count / _bytes;
    }

    protected override void Dispose(bool disposing)
    {
        _reader.Dispose();
        base.Dispose(disposing);
    }

    private static float Finite(float value) => float.IsFinite(value) ? value : 0;
}
