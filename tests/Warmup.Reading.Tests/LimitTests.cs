using System.Buffers.Binary;
using System.Diagnostics;
using System.Text;

namespace Warmup.Reading.Tests;

/// <summary>Files that are too large, or small ones that ask for much: refused or read in bounded time and memory.</summary>
public class LimitTests
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);

    [Theory]
    [InlineData("MThd")]
    [InlineData("PK\u0003\u0004")]
    [InlineData("<score-partwise>")]
    [InlineData("S R G M ")]
    public void A_hundred_megabytes_are_refused_at_once(string begins)
    {
        var bytes = new byte[100 << 20];
        Encoding.ASCII.GetBytes(begins, bytes);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("longer than", Assert.Throws<ReadingException>(() => MusicReader.Read(bytes)).Message, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 1 << 20);
    }

    [Fact]
    public void A_stream_without_end_is_refused_at_the_limit()
    {
        using var stream = new Endless();
        Assert.Contains("longer than", Assert.Throws<ReadingException>(() => MusicReader.ReadStream(stream)).Message, StringComparison.Ordinal);
        Assert.InRange(stream.Given, ReadingLimits.Bytes, ReadingLimits.Bytes + (1 << 17));
    }

    [Fact]
    public void Long_documents_of_one_element_take_bounded_time()
    {
        const int Long = 2 << 20;
        foreach (var part in (string[])["<note/>", "<note><rest/><duration>1</duration></note>", "<sound tempo='61.4142135'/>", "<direction><direction-type><words>S = C4</words></direction-type></direction>", "<barline><ending number='1' type='start'/></barline>"])
        {
            var text = new StringBuilder("<score-partwise><part id='A'><measure>");
            while (text.Length < Long)
            {
                text.Append(part);
            }

            Bounded(Encoding.UTF8.GetBytes(text.Append("</measure></part></score-partwise>").ToString()));
        }
    }

    [Fact]
    public void A_text_has_as_many_notes_as_a_drill()
    {
        var text = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(string.Concat(Enumerable.Repeat("S R ", 2_000)) + "\n", 100)));
        var fault = Bounded(text);
        Assert.Equal(26, fault!.Place.Number);
        Assert.Contains("100000", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_has_as_many_notes_as_a_drill()
    {
        byte[] two = [1, 0x90, 60, 90, 1, 60, 0];
        byte[] track = [.. Enumerable.Repeat(two, 100_001).SelectMany(n => n), 0, 0xFF, 0x2F, 0];
        var file = new byte[22 + track.Length];
        "MThd\0\0\0\u0006\0\0\0\u0001\0\u0060MTrk"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(18), track.Length);
        track.CopyTo(file, 22);
        Assert.Contains("100001 notes", Bounded(file)!.Message, StringComparison.Ordinal);
    }

    private static ReadingException? Bounded(byte[] file)
    {
        var clock = Stopwatch.StartNew();
        var fault = Record.Exception(() => MusicReader.Read(file));
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, Longest);
        return fault is null ? null : Assert.IsType<ReadingException>(fault);
    }

    private sealed class Endless : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Given; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Fill(buffer, (byte)'S', offset, count);
            Given += count;
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
