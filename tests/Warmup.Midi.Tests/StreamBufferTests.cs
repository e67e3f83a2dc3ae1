using System.Buffers;
using FsCheck.Xunit;

namespace Warmup.Midi.Tests;

/// <summary>The buffer that exporters compile for themselves. Source: the contract of <see cref="IBufferWriter{T}"/>, and the documented promise about when bytes reach the stream.</summary>
public class StreamBufferTests
{
    [Property]
    public void Every_byte_arrives_once_and_in_order(int[] sizes)
    {
        var stream = new MemoryStream();
        var expected = new List<byte>();
        using (var buffer = new StreamBuffer(stream))
        {
            foreach (var size in sizes.Select(s => Math.Abs(s % 40_000)))
            {
                var bytes = Enumerable.Range(expected.Count, size).Select(i => (byte)(i % 251)).ToArray();
                expected.AddRange(bytes);
                buffer.Write(bytes);
            }

            buffer.Flush();
        }

        Assert.Equal(expected, stream.ToArray());
        Assert.True(stream.CanWrite);
    }

    [Fact]
    public void Nothing_arrives_before_it_is_flushed_and_what_is_not_flushed_is_lost()
    {
        var stream = new MemoryStream();
        using (var buffer = new StreamBuffer(stream))
        {
            buffer.Write("abc"u8);
            Assert.Equal(0, stream.Length);
            buffer.Flush();
            Assert.Equal(3, stream.Length);
            buffer.Write("def"u8);
        }

        Assert.Equal("abc"u8, stream.ToArray());
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(100_000)]
    public void At_least_as_much_is_given_as_is_asked_for(int wanted)
    {
        using var buffer = new StreamBuffer(Stream.Null);
        Assert.True(buffer.GetSpan(wanted).Length >= Math.Max(1, wanted));
        Assert.True(buffer.GetMemory(wanted).Length >= Math.Max(1, wanted));
    }

    [Fact]
    public void More_than_was_given_is_refused_and_so_is_less_than_nothing()
    {
        using var buffer = new StreamBuffer(Stream.Null);
        var given = buffer.GetSpan().Length;
        Assert.Throws<ArgumentOutOfRangeException>(() => buffer.Advance(given + 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => buffer.Advance(-1));
    }

    [Fact]
    public void A_disposed_buffer_gives_nothing()
    {
        var buffer = new StreamBuffer(Stream.Null);
        buffer.Dispose();
        buffer.Dispose();
        Assert.Throws<ObjectDisposedException>(() => buffer.GetMemory());
    }
}
